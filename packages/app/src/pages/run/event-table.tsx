import type { RunReport, Written } from '@furrow/engine';
import { elapsedWords, eventName, placeWords } from '@furrow/papers';
import type { VNode } from 'preact';
import { ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import type { ShowStretch } from './use-strip-view.ts';

interface EventTableProps {
  readonly report: Written<RunReport>;
  readonly show: ShowStretch;
}

/** Rows of the table at most: more cannot be looked through by eye. */
const ROWS_MOST = 300;

/** Every event with time, place, words, likely cause and the next check. */
export function EventTable({ report, show }: EventTableProps): VNode | null {
  const units = useUnits();
  const { events } = report;
  if (events.length === 0) return null;
  const left = events.length - ROWS_MOST + report.events_not_listed;
  const note = left > 0 && events.length > ROWS_MOST ? `The first ${ROWS_MOST}; ${left} more.` : undefined;
  return (
    <ScrollTable id="run-events" title="Events" note={note}>
      <thead>
        <tr>
          <th scope="col">Time</th>
          <th scope="col">Place</th>
          <th scope="col">Event</th>
          <th scope="col">What the log shows</th>
          <th scope="col">Most likely</th>
          <th scope="col">Next check</th>
        </tr>
      </thead>
      <tbody>
        {events.slice(0, ROWS_MOST).map((each) => (
          <tr key={`${each.kind}${each.start_s}${each.says}`}>
            <th scope="row">
              <button type="button" class="plain" onClick={() => show.time(each.start_s, each.end_s)}>
                {elapsedWords(each.start_s)}
              </button>
            </th>
            <td class="words">
              {each.from_mm === null || each.to_mm === null
                ? 'not told'
                : `${placeWords(each.from_mm, each.to_mm, units)}${each.pass === null ? '' : `, pass ${each.pass}`}`}
            </td>
            <td class="words">{eventName(each.kind)}</td>
            <td class="words">{each.says}</td>
            <td class="words">
              {each.causes.length === 0
                ? ''
                : `${each.causes[0]!.title} (${Math.round(100 * each.causes[0]!.probability)} %)`}
            </td>
            <td class="words">{each.next_check?.ask ?? ''}</td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
