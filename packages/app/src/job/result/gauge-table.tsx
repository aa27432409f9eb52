import {
  deepenText,
  formatAmount,
  formatStated,
  formatStatedBand,
  type GaugeStop,
  type Plan,
  tryoutText,
} from '@furrow/engine';
import { actionText, fineUnit, RISK_HEADS, readingText, riskTexts } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** What to do for each reading at one stop, and what more stations would buy. */
export function GaugeTable({ stop, plan }: { readonly stop: GaugeStop; readonly plan: Plan }): VNode {
  const units = useUnits();
  const stations = stop.station_positions_mm
    .map((place) => formatStated(place, 'mm', units, 'length'))
    .join(', ');
  const lead = (
    <p class="panel-lead">
      {stop.after_layer === 0 ? `${tryoutText(plan, units)} ` : ''}Gauge each track at {stop.stations}{' '}
      {stop.stations === 1 ? 'station' : 'stations'} ({stations}) and take the mean. One reading is good to{' '}
      {formatStated(stop.reading_sd_mm, 'mm', units)} (standard deviation).
    </p>
  );
  return (
    <>
      <ScrollTable
        id={`gauge-${stop.after_layer}`}
        title={stop.after_layer === 0 ? 'First cut' : `Gauge after layer ${stop.after_layer}`}
        lead={lead}
      >
        <thead>
          <tr>
            {[`Mean reading, ${fineUnit(units)}`, 'Do this', 'Depth to expect, 5 to 95 %', ...RISK_HEADS].map(
              (name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ),
            )}
          </tr>
        </thead>
        <tbody>
          {stop.table.map((row) => (
            <tr key={row.reading_from_mm} class={`gauge-${row.action}`}>
              <th scope="row">{readingText(row, units)}</th>
              <td>{`${actionText(row, units)}${deepenText(row, units)}`}</td>
              <td>{formatStatedBand(row.expected_depth_mm.p05, row.expected_depth_mm.p95, 'mm', units)}</td>
              {riskTexts(row).map((text, index) => (
                <td key={RISK_HEADS[index]}>{row.action === 'ask' ? '–' : text}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </ScrollTable>
      {stop.stations_choice.length < 2 ? null : <StationsTable stop={stop} />}
    </>
  );
}

function StationsTable({ stop }: { readonly stop: GaugeStop }): VNode {
  return (
    <ScrollTable
      id={`stations-${stop.after_layer}`}
      title={`What stations buy after layer ${stop.after_layer}`}
      note="the same plan with fewer or more readings per track"
    >
      <thead>
        <tr>
          <th scope="col">Stations</th>
          <th scope="col">Deep enough</th>
          <th scope="col">Not too deep</th>
        </tr>
      </thead>
      <tbody>
        {stop.stations_choice.map((choice) => (
          <tr key={choice.stations} class={choice.stations === stop.stations ? 'chosen' : ''}>
            <th scope="row">
              {choice.stations}
              {choice.stations === stop.stations ? <span class="aside"> planned</span> : null}
            </th>
            <td>{formatAmount(choice.depth_reached, 'share', 'metric')}</td>
            <td>{formatAmount(choice.not_too_deep, 'share', 'metric')}</td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
