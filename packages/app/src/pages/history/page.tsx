import type { HistoryEntry } from '@furrow/contract';
import type { VNode } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';
import { fetchHistory } from '../../api/index.ts';
import { useSession } from '../../ui/session/index.ts';
import { SiteHeader } from '../../ui/site/index.ts';
import { ScrollBox } from '../../ui/table/index.ts';
import { entryWords } from './entry-words.ts';

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'medium' });

/** Who changed what in the shop; an administrator sees that of people and shops too. */
export function HistoryPage(): VNode {
  const administers = useSession().signed_in?.role === 'administrator';
  return (
    <>
      <SiteHeader />
      <main class="wide-page" id="result" tabIndex={-1}>
        <HistoryTable of="shop" title="Of this shop" />
        {administers ? <HistoryTable of="company" title="Of people, shops and loggers" /> : null}
      </main>
    </>
  );
}

function HistoryTable({ of, title }: { readonly of: 'shop' | 'company'; readonly title: string }): VNode {
  const [entries, setEntries] = useState<readonly HistoryEntry[]>([]);
  const [told, setTold] = useState('Reading the history.');
  const more = useCallback(
    async (before?: number): Promise<void> => {
      const reply = await fetchHistory(of, before);
      if (!reply.ok) setTold(reply.failure.message);
      else {
        setTold('');
        setEntries((known) => [...(before === undefined ? [] : known), ...reply.value]);
      }
    },
    [of],
  );
  useEffect(() => void more(), [more]);
  const last = entries.at(-1)?.number ?? 1;
  return (
    <section class="panel" aria-labelledby={`history-of-${of}`}>
      <header class="panel-head">
        <h2 id={`history-of-${of}`}>{title}</h2>
        <p class="caption">nothing is changed here; each entry holds the one before it</p>
      </header>
      <p class="status" role="status">
        {told}
      </p>
      <ScrollBox name={`${title}, table`}>
        <table>
          <thead>
            <tr>
              <th scope="col">No.</th>
              <th scope="col">When</th>
              <th scope="col">Who</th>
              <th scope="col">What</th>
              <th scope="col">Which</th>
            </tr>
          </thead>
          <tbody>
            {entries.map((entry) => (
              <tr key={entry.number}>
                <td class="number">{entry.number}</td>
                <td>{WHEN.format(new Date(entry.at))}</td>
                <td>{entry.who ?? 'the program'}</td>
                <td>{entryWords(entry)}</td>
                <td class="aside">{entry.thing}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
      {last > 1 ? (
        <p>
          <button type="button" onClick={() => void more(last)}>
            Show earlier entries of {of === 'shop' ? 'this shop' : 'the company'}
          </button>
        </p>
      ) : null}
    </section>
  );
}
