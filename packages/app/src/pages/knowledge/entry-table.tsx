import { formatAmount, formatBand, readTrials, type Trials } from '@furrow/engine';
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

interface EntryTableProps {
  readonly text: string;
  /** Whether the entries are the shop's own and can be changed. */
  readonly own: boolean;
  readonly onCorrect: (id: string) => void;
  readonly onTakeOut: (id: string) => void;
  readonly onPutBack: (id: string) => void;
}

type Entry = Trials['entries'][number];

/** Everything that was tried and gauged, the latest first; what was taken out is struck through. */
export function EntryTable({ text, own, onCorrect, onTakeOut, onPutBack }: EntryTableProps): VNode {
  const units = useUnits();
  const entries = useMemo(() => entriesOf(text), [text]);
  return (
    <ScrollTable
      id="entries"
      title="What was tried and gauged"
      note={own ? undefined : 'invented; enter a trial to begin your own'}
    >
      <ColumnHeads names={['Entry', 'Day', 'Work', 'Setting', 'Depth read', ...(own ? ['Do'] : [])]} />
      <tbody>
        {entries.map((entry) => {
          const { id, kind, date, taken_out: out, corrected = [] } = entry;
          return (
            <tr key={id} class={out === undefined ? '' : 'taken-out'}>
              <th scope="row">
                <span class="entry-name">
                  {id} <span class="aside">{kind}</span>
                </span>
                {out === undefined ? null : (
                  <span class="entry-note">
                    taken out {out.date}: {out.reason}
                  </span>
                )}
                {corrected.map(({ date: day, reason }) => (
                  <span key={`${day} ${reason}`} class="entry-note">
                    corrected {day}: {reason}
                  </span>
                ))}
              </th>
              <td>{date}</td>
              <td>{workText(entry, units)}</td>
              <td>{settingText(entry, units)}</td>
              <td>{depthText(entry, units)}</td>
              {own ? (
                <td class="row-actions">
                  {out === undefined ? (
                    <>
                      <button type="button" aria-label={`Correct ${id}`} onClick={() => onCorrect(id)}>
                        Correct
                      </button>
                      <button type="button" aria-label={`Take ${id} out`} onClick={() => onTakeOut(id)}>
                        Take out
                      </button>
                    </>
                  ) : (
                    <button type="button" aria-label={`Count ${id} again`} onClick={() => onPutBack(id)}>
                      Count again
                    </button>
                  )}
                </td>
              ) : null}
            </tr>
          );
        })}
      </tbody>
    </ScrollTable>
  );
}

function entriesOf(text: string): readonly Entry[] {
  const read = readTrials(text);
  if (!read.ok) return [];
  return [...read.value.trials.entries].sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0));
}

function workText({ material, position, electrode, torch }: Entry, units: 'metric' | 'inch'): string {
  const size = formatAmount(electrode.diameter, 'length', units);
  const where = position === 'flat' ? '' : `, ${position.replace('_', ' ')}`;
  return `${material.replaceAll('_', ' ')}${where}, ${electrode.kind} ${size}${torch === undefined ? '' : `, ${torch}`}`;
}

function settingText({ passes }: Entry, units: 'metric' | 'inch'): string {
  return passes
    .map(
      ({ current, travel }) =>
        `${formatAmount(current, 'current', units)}, ${formatAmount(travel, 'speed', units)}`,
    )
    .join('; ');
}

function depthText({ passes }: Entry, units: 'metric' | 'inch'): string {
  return passes
    .map(({ stations }) => {
      const depths = stations.map(({ depth }) => depth);
      const [least, most] = [Math.min(...depths), Math.max(...depths)];
      const read =
        least === most ? formatAmount(least, 'depth', units) : formatBand(least, most, 'depth', units);
      return `${read} (${depths.length})`;
    })
    .join('; ');
}
