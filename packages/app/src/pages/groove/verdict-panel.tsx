import { gaugeCheckWords, otherPlanWords, seamVerdictWords } from '@furrow/papers';
import type { VNode } from 'preact';
import { useReadings } from '../../job/readings/index.ts';
import { useBenchState } from '../../job/state/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { useGroove } from './groove-context.ts';
import type { GrooveState } from './groove-state.ts';

/** The verdict on the groove in words, and what is to be known before it is believed. */
export function VerdictPanel(): VNode {
  const units = useUnits();
  const state = useGroove((each) => each);
  const { shown } = state;
  const read = useReadings((each) => each.read);
  const planned = useBenchState((each) => each.planned);
  const seam = shown?.report.seam;
  const readings = read?.readings;
  const remarks = [
    ...(readings?.invented === 'yes' ? ['These readings are invented, to try the page with.'] : []),
    ...(readings === undefined || planned === undefined
      ? []
      : otherPlanWords(readings, planned.answer, units)),
    ...(readings?.gauge_check === undefined ? [] : [gaugeCheckWords(readings.gauge_check, units)]),
    ...(seam?.remarks ?? []),
    ...(shown?.report.remarks.filter((text) => seam !== null || !text.startsWith('Whoever')) ?? []),
  ];
  return (
    <section
      class={`panel groove-verdict verdict-${seam?.verdict ?? 'none'}`}
      aria-labelledby="verdict-title"
    >
      <h2 id="verdict-title">Verdict</h2>
      <p class="groove-words" aria-live="polite">
        {seam === null || seam === undefined ? waitingWords(state) : seamVerdictWords(seam, units)}
      </p>
      <p class={`status status-${state.survey.is}`} role="status" aria-label="Survey">
        {statusWords(state)}
      </p>
      {state.survey.is === 'running' ? (
        <progress aria-label="Share measured" max={100} value={Math.round(100 * state.survey.share)} />
      ) : null}
      <ul>
        {remarks.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
}

function waitingWords({ shown }: GrooveState): string {
  return shown === undefined
    ? 'Nothing is judged yet.'
    : 'The job has no plan, so nothing is said of its seam.';
}

function statusWords({ survey, missing }: GrooveState): string {
  const gone = missing.length === 0 ? '' : ` Not found: ${missing.join(', ')}.`;
  switch (survey.is) {
    case 'waiting':
      return 'Waiting for the plan of the job.';
    case 'running':
      return `Measuring, ${Math.round(100 * survey.share)} %`;
    case 'done':
      return `Measured.${gone}`;
    case 'unread':
      return survey.why.join(' ');
    case 'failed':
      return `Measuring failed: ${survey.why}`;
  }
}
