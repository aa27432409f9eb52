import type { SavedRun } from '@furrow/contract';
import type { SurveySeam } from '@furrow/engine';
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchOriginal, fetchRuns } from '../../api/index.ts';
import { useReadings, useReadingsDesk } from '../../job/readings/index.ts';
import { useBenchState } from '../../job/state/index.ts';
import { jobPath, PageLink } from '../../ui/route/index.ts';
import { useGrooveDesk } from './groove-context.ts';

/** By what the depth is predicted before anything is measured: the plan, or the log of a kept run. */
export function PredictionPanel({ seam }: { readonly seam: SurveySeam | undefined }): VNode {
  const id = useBenchState((state) => state.saved?.id);
  const groove = useGrooveDesk();
  const desk = useReadingsDesk();
  const chosen = useReadings((state) => state.read?.readings.run);
  const [runs, setRuns] = useState<readonly SavedRun[]>([]);
  const [trouble, setTrouble] = useState<string>();
  useEffect(() => {
    if (id === undefined) return;
    void fetchRuns(id).then((reply) => {
      if (reply.ok) setRuns(reply.value.filter(({ sha256 }) => sha256 !== null));
      else setTrouble(`The runs of this job could not be looked up: ${reply.failure.message}`);
    });
  }, [id]);
  const choose = async (sha256: string): Promise<void> => {
    setTrouble(undefined);
    const run = runs.find((each) => each.sha256 === sha256);
    if (run === undefined) {
      desk.change([{ do: 'remove', path: ['run'] }]);
      return;
    }
    const file = await fetchOriginal(run.id);
    if (!file.ok) {
      setTrouble(`The log could not be fetched: ${file.failure.message}`);
      return;
    }
    groove.hold(sha256, file.value);
    desk.change([
      ...(chosen === undefined ? [] : [{ do: 'remove', path: ['run'] } as const]),
      { do: 'set', path: ['run', 'name'], value: run.name },
      { do: 'set', path: ['run', 'sha256'], value: sha256 },
      ...(run.logger === null
        ? []
        : [{ do: 'set', path: ['run', 'description'], value: run.logger } as const]),
    ]);
  };
  const known = chosen === undefined || runs.some(({ sha256 }) => sha256 === chosen.sha256);
  return (
    <section class="panel groove-prediction" aria-labelledby="prediction-title">
      <header class="panel-head">
        <h2 id="prediction-title">Predicted by</h2>
        {seam === undefined ? null : (
          <p class="caption">
            Now: {seam.prediction === 'run' ? 'the log of the run' : 'the plan'}, then every reading.
          </p>
        )}
      </header>
      {id !== undefined && (runs.length > 0 || chosen !== undefined) ? (
        <label>
          Depth before it is measured{' '}
          <select value={chosen?.sha256 ?? ''} onChange={(event) => void choose(event.currentTarget.value)}>
            <option value="">by the plan</option>
            {known ? null : <option value={chosen?.sha256}>by the log {chosen?.name}</option>}
            {runs.map(({ id: run, name, sha256, rehearsal }) => (
              <option key={run} value={sha256 ?? ''}>
                by the log {name}
                {rehearsal ? ' (a rehearsal: no rig was run)' : ''}
              </option>
            ))}
          </select>
        </label>
      ) : (
        <p>
          No run of this job is kept yet.{' '}
          {id === undefined ? (
            'Once the job is saved and a log is kept with it on the page Run, the log predicts in place of the plan.'
          ) : (
            <>
              A log that is kept on the page <PageLink to={`${jobPath(id)}/run`}>Run</PageLink> can predict in
              place of the plan.
            </>
          )}
        </p>
      )}
      {trouble === undefined ? null : (
        <p class="notice" role="alert">
          {trouble}
        </p>
      )}
    </section>
  );
}
