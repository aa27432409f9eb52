import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchGauge, fetchGaugeExamples } from '../../api/index.ts';
import { JobHeader, JobPage, RestoredNotice } from '../../job/page/index.ts';
import { ReadingsOfJob, useReadingsDesk } from '../../job/readings/index.ts';
import { ResultStatus } from '../../job/result/index.ts';
import { useBench, useBenchState } from '../../job/state/index.ts';
import { startSurveyWorker } from '../../work/index.ts';
import { GrooveContext } from './groove-context.ts';
import { type GrooveDesk, openGrooveDesk } from './groove-desk.ts';
import { GrooveView } from './groove-view.tsx';
import { originalsOf } from './originals.ts';
import './style.css';

interface GroovePageProps {
  readonly id: string | undefined;
  readonly demo: string;
}

/** The groove that was cut: measured, judged, mended, handed over. */
export function GroovePage({ id, demo }: GroovePageProps): VNode {
  return (
    <JobPage>
      <JobHeader />
      <main class="wide-page groove-page" id="result" tabIndex={-1}>
        <div class="groove-state">
          <RestoredNotice />
          <ResultStatus />
        </div>
        <ReadingsOfJob demo={id === undefined ? demo : undefined}>
          <GrooveOfJob>
            <GrooveView />
          </GrooveOfJob>
        </ReadingsOfJob>
      </main>
    </JobPage>
  );
}

/** Keeps what was measured in step with plan and readings as long as the page is open. */
function GrooveOfJob({ children }: { readonly children: ComponentChildren }): VNode | null {
  const bench = useBench();
  const readings = useReadingsDesk();
  const id = useBenchState((state) => state.saved?.id);
  const [desk, setDesk] = useState<GrooveDesk>();
  const [gauge, setGauge] = useState<string>();
  useEffect(() => {
    // without the shop's gauge the spread that the job states counts, and the page says so
    void gaugeOf(id).then(setGauge);
  }, [id]);
  useEffect(() => {
    if (gauge === undefined) return undefined;
    const opened = openGrooveDesk({
      bench,
      readings,
      startWorker: startSurveyWorker,
      originals: originalsOf(id),
      gauge,
      id,
    });
    setDesk(opened);
    return opened.close;
  }, [bench, readings, gauge, id]);
  if (desk === undefined) return null;
  return <GrooveContext.Provider value={desk}>{children}</GrooveContext.Provider>;
}

/** Text of the gauge that the shop keeps; beside a demo job, in a shop that keeps none, of the demo's; empty for none. */
async function gaugeOf(id: string | undefined): Promise<string> {
  const kept = await fetchGauge();
  if (kept.ok && kept.value.text.trim() !== '') return kept.value.text;
  if (id !== undefined) return '';
  const demo = await fetchGaugeExamples();
  return demo.ok ? (demo.value[0]?.text ?? '') : '';
}
