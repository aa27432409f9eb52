import { otherPlanWords } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { JobHeader, JobPage, RestoredNotice } from '../../job/page/index.ts';
import { ReadingsOfJob, ReadingsStatus, useReadings, useReadingsDesk } from '../../job/readings/index.ts';
import { useBenchState } from '../../job/state/index.ts';
import { FormView } from '../../sheet/form/index.ts';
import { UndoButton } from '../../sheet/index.ts';
import { download } from '../../ui/hand-out/index.ts';
import { OpenFileButton } from '../../ui/take-in/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { recordTemplate } from './record-template.ts';
import { RevisionPanel } from './revision-panel.tsx';
import './style.css';

interface RecordPageProps {
  readonly id: string | undefined;
  readonly demo: string;
}

/** What a crew fills in at the rig, in the order of the work. */
const WORK = ['passes', 'layers', 'electrode_changes', 'events', 'stations', 'crew'];

/** The record of the work, filled in at the rig: passes, readings on the way, electrode changes, events, who, stations. */
export function RecordPage({ id, demo }: RecordPageProps): VNode {
  return (
    <JobPage>
      <JobHeader />
      <main class="wide-page record-page" id="result" tabIndex={-1}>
        <RestoredNotice />
        <ReadingsOfJob demo={id === undefined ? demo : undefined}>
          <RecordView />
        </ReadingsOfJob>
      </main>
    </JobPage>
  );
}

function RecordView(): VNode {
  const desk = useReadingsDesk();
  const planned = useBenchState((state) => state.planned);
  const empty = useReadings((state) => state.file.text.trim() === '');
  const id = useBenchState((state) => state.saved?.id);
  const [trouble, setTrouble] = useState<string>();
  const plan = planned?.answer.plan;
  const hand = (): void =>
    download(new Blob([desk.store.get().file.text], { type: 'application/yaml' }), 'readings.yaml');
  return (
    <>
      <ReadingsStatus />
      <section class="panel" aria-labelledby="record-title">
        <header class="panel-head">
          <h2 id="record-title">Record of the work</h2>
          <p class="caption">
            Run record and groove report are filled from this. Whoever measures and signs does so by hand.
          </p>
        </header>
        <p class="record-actions">
          {empty && planned !== undefined && plan !== undefined ? (
            <button
              type="button"
              class="primary"
              onClick={() => desk.setText(recordTemplate(plan, planned.read.revision))}
            >
              Begin with the passes of the plan
            </button>
          ) : null}
          <UndoButton />
          <OpenFileButton noun="readings" onText={desk.setText} onTrouble={setTrouble} />
          <button type="button" disabled={empty} onClick={hand}>
            Export
          </button>
          {plan === undefined || planned === undefined ? null : (
            <button
              type="button"
              onClick={() =>
                download(
                  new Blob([recordTemplate(plan, planned.read.revision)], { type: 'application/yaml' }),
                  'readings-template.yaml',
                )
              }
            >
              Template of the file
            </button>
          )}
        </p>
        {trouble === undefined ? null : (
          <p class="notice" role="alert">
            {trouble}
          </p>
        )}
        <OtherPlan />
        <FormView first={WORK} />
      </section>
      {id === undefined ? null : <RevisionPanel id={id} />}
    </>
  );
}

/** Says so where what was run belongs to another plan than the one that stands here. */
function OtherPlan(): VNode | null {
  const units = useUnits();
  const readings = useReadings((state) => state.read?.readings);
  const answer = useBenchState((state) => state.planned?.answer);
  const words = readings === undefined || answer === undefined ? [] : otherPlanWords(readings, answer, units);
  return words.length === 0 ? null : (
    <ul class="notice" aria-label="Against the plan">
      {words.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  );
}
