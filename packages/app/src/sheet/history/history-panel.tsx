import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Reply } from '../../api/index.ts';
import { EraseDialog } from '../../ui/dialog/index.ts';
import './style.css';

/** Where the revisions of a file come from, and in what two of them differ. */
export interface HistorySource {
  /** Every revision, newest first. */
  readonly revisions: () => Promise<Reply<readonly SavedWhen[]>>;
  readonly revision: (number: number) => Promise<Reply<{ readonly text: string }>>;
  /** Erases every revision but the newest for good; left out where they stay. */
  readonly eraseEarlier?: () => Promise<Reply<unknown>>;
  /** In what two texts differ, in words. */
  readonly difference: (before: string, after: string) => readonly string[];
}

interface SavedWhen {
  /** From 1 [-]. */
  readonly revision_number: number;
  /** ISO 8601, UTC. */
  readonly saved_at: string;
  /** Name of the account that saved it; null where nobody signed in. */
  readonly saved_by: string | null;
}

interface HistoryPanelProps {
  /** Made anew only where the file is another one. */
  readonly source: HistorySource;
  /** Number of the newest revision [-]. */
  readonly newest: number;
  /** Where an earlier text is put, such as `back on the bench`. */
  readonly where: string;
  /** What is erased, as a sentence. */
  readonly erases?: string;
  /** Whether a change is saved by itself. */
  readonly savesItself?: boolean;
  /** Puts an earlier text in place of the newest, unsaved. */
  readonly onPutBack: (text: string) => void;
}

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** In what an earlier revision differs from the newest one, in words; any can be looked at and put back. */
export function HistoryPanel({
  source,
  newest,
  where,
  erases,
  savesItself = false,
  onPutBack,
}: HistoryPanelProps): VNode | null {
  const [revisions, setRevisions] = useState<readonly SavedWhen[]>([]);
  const [chosen, setChosen] = useState(newest - 1);
  const [words, setWords] = useState<readonly string[]>();
  const [earlier, setEarlier] = useState<string>();
  const [asked, setAsked] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const erase = async (): Promise<void> => {
    setAsked(false);
    const reply = await source.eraseEarlier?.();
    if (reply === undefined) return;
    if (reply.ok) setRevisions([]);
    setTrouble(reply.ok ? undefined : reply.failure.message);
  };
  useEffect(() => {
    let left = false;
    setChosen(newest - 1);
    void source.revisions().then((reply) => {
      if (!left && reply.ok) setRevisions(reply.value.filter(({ revision_number: n }) => n < newest));
    });
    return () => {
      left = true;
    };
  }, [source, newest]);
  useEffect(() => {
    if (chosen < 1) return undefined;
    let left = false;
    setWords(undefined);
    setEarlier(undefined);
    void Promise.all([source.revision(chosen), source.revision(newest)]).then(([before, after]) => {
      if (left) return;
      if (!before.ok) setWords([before.failure.message]);
      else if (!after.ok) setWords([after.failure.message]);
      else {
        setWords(source.difference(before.value.text, after.value.text));
        setEarlier(before.value.text);
      }
    });
    return () => {
      left = true;
    };
  }, [source, chosen, newest]);
  if (revisions.length === 0) return null;
  return (
    <section class="panel" aria-labelledby="history-title">
      <header class="panel-head">
        <h2 id="history-title">What changed</h2>
      </header>
      <label>
        From revision{' '}
        <select value={String(chosen)} onChange={(event) => setChosen(Number(event.currentTarget.value))}>
          {revisions.map(({ revision_number, saved_at, saved_by }) => (
            <option key={revision_number} value={String(revision_number)}>
              {revision_number}, saved {WHEN.format(new Date(saved_at))}
              {saved_by === null ? '' : ` by ${saved_by}`}
            </option>
          ))}
        </select>{' '}
        to {newest}
      </label>
      <div role="status" aria-label="Differences">
        {words === undefined ? null : (
          <ul class="difference-words">
            {words.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        )}
      </div>
      {earlier === undefined ? null : (
        <>
          <details>
            <summary>Text of revision {chosen}</summary>
            <pre class="revision-text">{earlier}</pre>
          </details>
          <p>
            <button type="button" onClick={() => onPutBack(earlier)}>
              Put revision {chosen} {where}
            </button>{' '}
            <span class="aside">
              {savesItself ? 'It becomes a new revision' : 'Nothing is saved before you press Save'}; revision{' '}
              {newest} stays.
            </span>
          </p>
        </>
      )}
      {source.eraseEarlier === undefined ? null : (
        <p>
          <button type="button" class="quiet" onClick={() => setAsked(true)}>
            Erase earlier revisions for good
          </button>
        </p>
      )}
      {trouble === undefined ? null : (
        <p class="notice" role="alert">
          {trouble}
        </p>
      )}
      {asked && erases !== undefined ? (
        <EraseDialog what={erases} onErase={() => void erase()} onClose={() => setAsked(false)} />
      ) : null}
    </section>
  );
}
