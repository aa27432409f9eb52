import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchHandbook, type HandbookRoom } from '../../api/index.ts';
import { SiteHeader } from '../../ui/site/index.ts';
import { EntryText } from '../../ui/why/index.ts';
import './style.css';

/** The handbook: what each part of the engine answers, by which formula and source, with worked numbers. */
export function HandbookPage(): VNode {
  const [rooms, setRooms] = useState<readonly HandbookRoom[] | string>();
  const [sought, setSought] = useState('');
  useEffect(() => {
    void fetchHandbook().then((reply) => setRooms(reply.ok ? reply.value : reply.failure.message));
  }, []);
  const words = sought.trim().toLowerCase();
  const isSought = (text: string): boolean => words === '' || text.toLowerCase().includes(words);
  const shown =
    typeof rooms === 'object'
      ? rooms
          .map((room) => ({
            ...room,
            entries: room.entries.filter(({ name, summary, source }) =>
              isSought(`${room.room} ${room.answers} ${name} ${summary} ${source}`),
            ),
          }))
          .filter(({ entries }) => entries.length > 0)
      : [];
  return (
    <>
      <SiteHeader />
      <main class="plain-page handbook" id="result" tabIndex={-1}>
        <p>
          Made from the program’s own code: what each part answers, its inputs with unit and range, its
          source, and worked numbers that run as tests. Where a source says memory or judgement, it was not
          confirmed in a text at hand.
        </p>
        {typeof rooms === 'string' ? <p role="alert">{rooms}</p> : null}
        {rooms === undefined ? <p role="status">Opening the handbook.</p> : null}
        <label class="handbook-search">
          Search{' '}
          <input type="search" value={sought} onInput={(event) => setSought(event.currentTarget.value)} />
        </label>
        {shown.map(({ room, answers, entries }) => (
          <section key={room} class="panel" aria-labelledby={`room-${room}`}>
            <header class="panel-head">
              <h2 id={`room-${room}`}>{room}</h2>
              <p class="caption">{answers.replaceAll('`', '')}</p>
            </header>
            {entries.map((entry) => (
              <details key={entry.name} class="handbook-entry">
                <summary>
                  <strong>{entry.name}</strong> <span class="aside">{entry.summary.split('\n\n')[0]}</span>
                </summary>
                <EntryText entry={entry} />
              </details>
            ))}
          </section>
        ))}
      </main>
    </>
  );
}
