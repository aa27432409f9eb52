import type { PaperChoices, PaperList } from '@furrow/contract';
import type { VNode } from 'preact';
import { type PapersOf, paperPage } from '../../api/index.ts';

interface PreviewProps {
  readonly of: PapersOf;
  readonly page: string;
  readonly choices: PaperChoices;
  readonly list: PaperList;
}

/** The paper as it will be printed; made anew when the job or the kit has changed. */
export function Preview({ of, page, choices, list }: PreviewProps): VNode {
  const paper = list.papers.find((each) => each.page === page);
  const src = paperPage(of, page, choices);
  return (
    <section id="paper-preview" class="panel paper-preview" aria-labelledby="preview-title">
      <header class="panel-head">
        <h2 id="preview-title">{paper?.title ?? 'Paper'}</h2>
      </header>
      {paper === undefined || paper.wanting !== null ? (
        <p class="empty">{paper?.wanting ?? 'There is no such paper.'}</p>
      ) : (
        <iframe
          key={`${src} ${list.revision} ${list.kit_revision} ${list.knowledge_id}`}
          src={src}
          title={`${paper.title}, preview`}
        />
      )}
    </section>
  );
}
