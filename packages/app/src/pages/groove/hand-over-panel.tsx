import type { SurveyReport } from '@furrow/engine';
import { type SurveyFile, surveyFiles } from '@furrow/papers';
import type { VNode } from 'preact';
import { useBench, useBenchState } from '../../job/state/index.ts';
import { download } from '../../ui/hand-out/index.ts';
import { jobPath, PageLink } from '../../ui/route/index.ts';

const TYPES: Readonly<Record<string, string>> = {
  csv: 'text/csv',
  dxf: 'image/vnd.dxf',
  svg: 'image/svg+xml',
};

/** Drawings of sections that are shown at once; more are folded away [-]. */
const DRAWINGS_SHOWN = 6;

/** Sections and depth curve as files, and the papers that are filled from all this. */
export function HandOverPanel({ report }: { readonly report: SurveyReport }): VNode {
  const bench = useBench();
  const id = useBenchState((state) => state.saved?.id);
  const files = surveyFiles(report);
  const drawings = files.filter(({ section }) => section !== undefined);
  const folded = drawings.length > DRAWINGS_SHOWN;
  return (
    <section class="panel groove-hand-over" aria-labelledby="hand-over-title">
      <h2 id="hand-over-title">Hand it over</h2>
      <p>
        {id === undefined ? (
          bench.isDemo() ? (
            'Save the job, and its groove report and run record are filled from what is entered here.'
          ) : (
            'Groove report and run record are filled from what is entered here once the job is saved.'
          )
        ) : (
          <>
            Groove report and run record are filled from what is entered here:{' '}
            <PageLink to={`${jobPath(id)}/papers`}>look at the papers</PageLink>. People sign them by hand.
          </>
        )}
      </p>
      <FileList files={folded ? files.filter((file) => !drawings.includes(file)) : files} />
      {folded ? (
        <details>
          <summary>Drawings of {report.sections.length} sections</summary>
          <FileList files={drawings} />
        </details>
      ) : null}
    </section>
  );
}

/** Files to take away, each by its name. */
function FileList({ files }: { readonly files: readonly SurveyFile[] }): VNode {
  return (
    <ul class="groove-files">
      {files.map(({ name, content }) => (
        <li key={name}>
          <button
            type="button"
            onClick={() =>
              download(new Blob([content()], { type: TYPES[name.split('.').at(-1) ?? ''] ?? '' }), name)
            }
          >
            {name}
          </button>
        </li>
      ))}
    </ul>
  );
}
