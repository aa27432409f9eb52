import { type RunReport, sentencesWritten, type Written } from '@furrow/engine';
import { remainingBlocks } from '@furrow/papers';
import type { VNode } from 'preact';
import { JobHeader, RestoredNotice } from '../../job/page/index.ts';
import { ResultStatus } from '../../job/result/index.ts';
import { isOutdated, useBenchState } from '../../job/state/index.ts';
import { BlockList } from '../../ui/block/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { EventTable } from './event-table.tsx';
import { KeptTable } from './kept-table.tsx';
import { LiveRun } from './live-view.tsx';
import { LogSource } from './log-source.tsx';
import { ReadingPanel } from './reading-panel.tsx';
import { useRun } from './run-context.ts';
import { RunFigures } from './run-figures.tsx';
import { RunSection } from './run-section.tsx';
import type { ShownRun } from './run-state.ts';
import { RunStrip } from './run-strip.tsx';
import { StretchTable } from './stretch-table.tsx';
import { useStripView } from './use-strip-view.ts';

/** The run: where its log comes from, the verdict in words, the strip, events, and how the log was read. */
export function RunView(): VNode {
  const shown = useRun((state) => state.shown);
  const current = useBenchState((state) => state.planned) === shown?.planned;
  const outdated = useBenchState(isOutdated) || !current;
  return (
    <>
      <JobHeader />
      <main class="wide-page run-page" id="result" tabIndex={-1}>
        <div class="run-state">
          <RestoredNotice />
          <ResultStatus />
        </div>
        <LiveRun />
        <LogSource />
        {shown === undefined ? null : (
          <div class={`run-report${outdated ? ' outdated' : ''}`}>
            <Report shown={shown} />
          </div>
        )}
        <KeptTable />
      </main>
    </>
  );
}

/** The stop from which the passes that remain are set, with its table. */
function Remaining({ report }: { readonly report: Written<RunReport> }): VNode | null {
  const [heading, ...blocks] = remainingBlocks(report, useUnits());
  if (heading?.kind !== 'heading') return null;
  return (
    <section class="panel" aria-labelledby="run-remaining-title">
      <h2 id="run-remaining-title">{heading.text}</h2>
      <BlockList blocks={blocks} />
    </section>
  );
}

function Report({ shown }: { readonly shown: ShownRun }): VNode {
  const units = useUnits();
  const report = sentencesWritten(shown.report, units);
  const view = useStripView(shown);
  const live = useRun((state) => state.log?.live === true);
  return (
    <>
      <section class="panel run-verdict" aria-labelledby="run-verdict-title">
        <h2 id="run-verdict-title">{live ? 'Verdict so far' : 'Verdict'}</h2>
        {live ? (
          <p class="run-so-far">The run is under way: what is not cut yet stands here as not run.</p>
        ) : null}
        <ul>
          {report.verdict.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </section>
      <RunFigures report={report} />
      <RunStrip report={report} trace={shown.trace} view={view} />
      <RunSection shown={shown} report={report} view={view} />
      <StretchTable report={report} show={view.show} />
      <Remaining report={report} />
      <EventTable report={report} show={view.show} />
      <section class="panel run-untold" aria-labelledby="run-untold-title">
        <h2 id="run-untold-title">What this log cannot tell</h2>
        <ul>
          {[...report.cannot_tell, ...report.reading.remarks].map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </section>
      <ReadingPanel report={report} logger={shown.logger} />
    </>
  );
}
