import { formatAmount, fromUnit, judgeStation } from '@furrow/engine';
import { setAsideWords } from '@furrow/papers';
import type { VNode } from 'preact';
import { useReadings, useReadingsDesk } from '../../job/readings/index.ts';
import { useBenchState } from '../../job/state/index.ts';
import { VerdictMark } from '../../ui/margins/index.ts';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { useGroove } from './groove-context.ts';

/** What was gauged by hand, each held against what is wanted; what does not count says why. */
export function GaugedPanel(): VNode | null {
  const units = useUnits();
  const desk = useReadingsDesk();
  const stations = useReadings((state) => state.read?.readings.stations) ?? [];
  const job = useBenchState((state) => state.planned?.read.job);
  const report = useGroove((state) => state.shown?.report);
  const seam = report?.seam;
  const stated = report?.inputs.gauge_u_mm ?? undefined;
  const u = stated === undefined ? undefined : fromUnit(stated, 'mm');
  if (stations.length === 0 || job === undefined) return null;
  const fine = (metres: number | undefined): string =>
    metres === undefined ? '' : formatAmount(metres, 'reading', units);
  return (
    <ScrollTable id="groove-gauged" title="What was gauged">
      <ColumnHeads
        names={[
          'Place',
          'Depth',
          'Width',
          'Root radius',
          'Against what is wanted',
          'By and when',
          'Remark',
          '',
        ]}
      />
      <tbody>
        {stations.map((station, index) => {
          const judged = judgeStation(station, job, units, u);
          const aside = seam?.readings.find(
            ({ from, row, used }) => from === 'gauge' && row === index + 1 && !used,
          );
          return (
            <tr key={`${index}${station.at}`}>
              <th scope="row">{formatAmount(station.at, 'length', units)}</th>
              <td>{fine(station.depth)}</td>
              <td>{fine(station.width)}</td>
              <td>{fine(station.root_radius)}</td>
              <td class="words">
                {aside !== undefined ? (
                  setAsideWords(aside, units)
                ) : (
                  <>
                    {judged.verdict === null ? null : <VerdictMark verdict={judged.verdict} />}{' '}
                    {judged.words.length === 0 ? 'holds' : judged.words.join('; ')}
                  </>
                )}
              </td>
              <td class="words">{[station.by, station.when].filter(Boolean).join(', ')}</td>
              <td class="words">{station.note ?? ''}</td>
              <td>
                <button
                  type="button"
                  class="quiet"
                  aria-label={`Remove the reading at ${formatAmount(station.at, 'length', units)}`}
                  onClick={() =>
                    desk.change([
                      { do: 'remove', path: stations.length === 1 ? ['stations'] : ['stations', index] },
                    ])
                  }
                >
                  remove
                </button>
              </td>
            </tr>
          );
        })}
      </tbody>
    </ScrollTable>
  );
}
