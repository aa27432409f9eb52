import type { ListedPaper } from '@furrow/contract';
import type { VNode } from 'preact';
import { changesOf } from './printed-words.ts';

/** What has changed since papers were printed, in words; nothing where all of them are still good. */
export function ChangesPanel({ papers }: { readonly papers: readonly ListedPaper[] }): VNode | null {
  const changed = changesOf(papers);
  if (changed.length === 0) return null;
  return (
    <section class="panel" aria-labelledby="changes-title">
      <header class="panel-head">
        <h2 id="changes-title">Superseded prints</h2>
        <p class="caption">take them back and print these papers again</p>
      </header>
      {changed.map(({ revision, papers: names, changes }) => (
        <div key={`${revision} ${names.join()}`}>
          <p>
            {names.join(', ')}, printed at revision {revision}. Since then:
          </p>
          <ul class="paper-changes">
            {changes.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
