import { type ElectricPoint, formatStated } from '@furrow/engine';
import { leadTable, lossTable, senseList, sourceTable } from '@furrow/papers/blocks';
import type { VNode } from 'preact';
import { BlockList, BlockPanel } from '../../ui/block/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** The electric loop: what each source gives, where its volts and its heat go, and the sense wires. */
export function LoopPanel({ loop }: { readonly loop: ElectricPoint }): VNode {
  const units = useUnits();
  const input = loop.input_kVA;
  return (
    <>
      <BlockPanel
        id="sources"
        table={sourceTable(loop, units)}
        note={input === null ? undefined : `${formatStated(input, 'kVA', units)} from the mains`}
      />
      <BlockPanel id="leads" table={leadTable(loop, units)} />
      <BlockPanel id="losses" table={lossTable(loop, units)} />
      {loop.sense.length === 0 ? null : (
        <section class="panel" aria-labelledby="sense-title">
          <header class="panel-head">
            <h2 id="sense-title">Sense wires landed wrong</h2>
          </header>
          <BlockList blocks={[senseList(loop)]} />
        </section>
      )}
    </>
  );
}
