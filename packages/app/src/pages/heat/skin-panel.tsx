import { formatStated, type HeatReport, type Written } from '@furrow/engine';
import { skinText } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { SourceText } from '../../ui/source/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** The carburised skin: what is ground away and what that adds to the refill. */
export function SkinPanel({ report }: { readonly report: Written<HeatReport> }): VNode {
  const units = useUnits();
  const { skin } = report;
  return (
    <section class="panel" aria-labelledby="skin-title">
      <header class="panel-head">
        <h2 id="skin-title">Carburised skin and refill</h2>
      </header>
      <p>
        Grind <b>{formatStated(skin.allowance_mm, 'mm', units)}</b> off all round the groove.{' '}
        <SourceText source={skin.source} />
      </p>
      <p>{skinText(report, units)}</p>
    </section>
  );
}
