import type { GaugeStop, Plan } from '@furrow/engine';
import { gaugeTable, stationTable } from '@furrow/papers/blocks';
import { gaugePlaces, tryoutText } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { BlockPanel } from '../../ui/block/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** What to do for each reading at one stop, and what more stations would buy. */
export function GaugeTable({ stop, plan }: { readonly stop: GaugeStop; readonly plan: Plan }): VNode {
  const units = useUnits();
  const { after_layer: after } = stop;
  return (
    <>
      <BlockPanel
        id={`gauge-${after}`}
        table={gaugeTable(stop, units)}
        lead={
          <p class="panel-lead">
            {after === 0 ? `${tryoutText(plan, units)} ` : ''}
            {gaugePlaces(stop, units)}
          </p>
        }
      />
      {stop.stations_choice.length < 2 ? null : (
        <BlockPanel
          id={`stations-${after}`}
          table={stationTable(stop)}
          note="the same plan with fewer or more readings per track"
        />
      )}
    </>
  );
}
