import { knowledgeWords } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { PageLink } from '../../ui/route/index.ts';
import { useBench, useBenchState } from '../state/index.ts';

/** What the plan's chances rest on, and the choice to leave the shop's history aside. */
export function HistoryBar(): VNode | null {
  const bench = useBench();
  const answer = useBenchState((state) => state.planned?.answer);
  const { trials, used, moreSince } = useBenchState((state) => state.history);
  if (answer === undefined) return null;
  const words = knowledgeWords(answer);
  return (
    <section class="history-bar" aria-label="What the plan rests on">
      <p>
        {words.charAt(0).toUpperCase()}
        {words.slice(1)}. <PageLink to="/knowledge">What this shop knows</PageLink>
      </p>
      {trials === undefined ? null : (
        <label class="history-choice">
          <input
            type="checkbox"
            checked={!used}
            onChange={(event) => bench.useHistory(!event.currentTarget.checked)}
          />{' '}
          as a shop without history
        </label>
      )}
      {moreSince ? (
        <p class="history-more">
          <span aria-hidden="true">△ </span>The shop has learned more since this job was saved; the plan shown
          is made with it. Papers printed before rest on less.
        </p>
      ) : null}
    </section>
  );
}
