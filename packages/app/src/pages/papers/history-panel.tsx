import type { RevisionSummary } from '@furrow/contract';
import type { UnitSystem } from '@furrow/engine';
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { eraseEarlierRevisions, fetchRevision, fetchRevisions } from '../../api/index.ts';
import { keepDraft } from '../../sheet/keep/index.ts';
import { EraseDialog } from '../../ui/dialog/index.ts';
import { goTo, jobPath } from '../../ui/route/index.ts';
import { differenceWords } from './difference-words.ts';

interface HistoryPanelProps {
  readonly id: string;
  /** Number of the newest revision [-]. */
  readonly newest: number;
  readonly units: UnitSystem;
}

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** Opens a job with an earlier text in place of the newest, unsaved. */
function putBack(id: string, text: string, newest: number): void {
  keepDraft(localStorage, id, { text, based_on: newest });
  goTo(jobPath(id), { anew: true });
}

/** In what an earlier revision of the job differs from the newest one, in words. */
export function HistoryPanel({ id, newest, units }: HistoryPanelProps): VNode | null {
  const [revisions, setRevisions] = useState<readonly RevisionSummary[]>([]);
  const [chosen, setChosen] = useState(newest - 1);
  const [words, setWords] = useState<readonly string[]>();
  const [earlier, setEarlier] = useState<string>();
  const [asked, setAsked] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const erase = async (): Promise<void> => {
    setAsked(false);
    const reply = await eraseEarlierRevisions(id);
    if (reply.ok) setRevisions([]);
    setTrouble(reply.ok ? undefined : reply.failure.message);
  };
  useEffect(() => {
    let left = false;
    setChosen(newest - 1);
    void fetchRevisions(id).then((reply) => {
      if (!left && reply.ok) setRevisions(reply.value.filter(({ revision_number: n }) => n < newest));
    });
    return () => {
      left = true;
    };
  }, [id, newest]);
  useEffect(() => {
    if (chosen < 1) return undefined;
    let left = false;
    setWords(undefined);
    setEarlier(undefined);
    void Promise.all([fetchRevision(id, chosen), fetchRevision(id, newest)]).then(([before, after]) => {
      if (left) return;
      if (!before.ok) setWords([before.failure.message]);
      else if (!after.ok) setWords([after.failure.message]);
      else {
        setWords(differenceWords(before.value.text, after.value.text, units));
        setEarlier(before.value.text);
      }
    });
    return () => {
      left = true;
    };
  }, [id, chosen, newest, units]);
  if (revisions.length === 0) return null;
  return (
    <section class="panel" aria-labelledby="history-title">
      <header class="panel-head">
        <h2 id="history-title">What changed</h2>
      </header>
      <label>
        From revision{' '}
        <select value={String(chosen)} onChange={(event) => setChosen(Number(event.currentTarget.value))}>
          {revisions.map(({ revision_number, saved_at }) => (
            <option key={revision_number} value={String(revision_number)}>
              {revision_number}, saved {WHEN.format(new Date(saved_at))}
            </option>
          ))}
        </select>{' '}
        to {newest}
      </label>
      <div role="status" aria-label="Differences">
        {words === undefined ? null : (
          <ul class="paper-changes">
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
            <button type="button" onClick={() => putBack(id, earlier, newest)}>
              Put revision {chosen} back on the bench
            </button>{' '}
            <span class="aside">Nothing is saved before you press Save there; revision {newest} stays.</span>
          </p>
        </>
      )}
      <p>
        <button type="button" class="quiet" onClick={() => setAsked(true)}>
          Erase earlier revisions for good
        </button>
      </p>
      {trouble === undefined ? null : (
        <p class="notice" role="alert">
          {trouble}
        </p>
      )}
      {asked ? (
        <EraseDialog
          what={`Every revision before ${newest} of this job goes, with the people and prices named in it.`}
          onErase={() => void erase()}
          onClose={() => setAsked(false)}
        />
      ) : null}
    </section>
  );
}
