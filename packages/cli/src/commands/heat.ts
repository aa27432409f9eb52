import {
  answerHeat,
  formatAmount,
  parseAmount,
  sentencesWritten,
  sentenceText,
  type UnitSystem,
} from '@furrow/engine';
import { renderHeatText } from '@furrow/papers';
import { EXIT } from '../frame/exit-code.ts';
import { type JobOptions, onJob, printed } from '../frame/on-job.ts';

interface HeatOptions extends JobOptions {
  /** Place of the section from the start of the seam, as people write it; the middle if left out. */
  readonly station?: string;
  readonly quick: boolean;
  readonly json: boolean;
}

/** Tells what a job's plan does to the plate, and what it asks for before and after. */
export const run = onJob<HeatOptions>(
  ({ job, knowledge }, answer, { station, quick, json, units }, streams) => {
    const place = stationOn(job.job.seam.length, station, units);
    const steps = answerHeat(job, answer, {
      station: place.ok ? place.value : undefined,
      quality: quick ? 'quick' : 'refined',
      knowledge,
    });
    let step = steps.next();
    while (step.done !== true) {
      streams.progress?.(`heat ${Math.floor(100 * step.value)} %`);
      step = steps.next();
    }
    streams.progress?.('');
    if (step.value === null) {
      const why = sentenceText(answer.refusal?.summary ?? 'the job is refused.', units);
      return { exit: EXIT.refusal, problem: [`No plan, so no heat to follow: ${why}`] };
    }
    const { report } = step.value;
    return {
      exit: EXIT.plan,
      print: printed(json, { inputs: answer.inputs, heat: sentencesWritten(report, 'metric') }, () =>
        renderHeatText(report, job.job.title, units),
      ),
    };
  },
  ({ job }, { station, units }) => {
    const place = stationOn(job.job.seam.length, station, units);
    return place.ok ? [] : [place.why];
  },
);

type Station =
  | { readonly ok: true; readonly value: number | undefined }
  | { readonly ok: false; readonly why: string };

/** A place on a seam [m], or why it is none. */
function stationOn(length: number, text: string | undefined, units: UnitSystem): Station {
  if (text === undefined) return { ok: true, value: undefined };
  const read = parseAmount(text, 'length');
  if (!read.ok) return { ok: false, why: `--station: ${read.issues[0]?.message ?? 'not a length'}` };
  if (read.value >= 0 && read.value <= length) return { ok: true, value: read.value };
  const seam = formatAmount(length, 'length', units);
  return { ok: false, why: `--station: ${text} is not on the seam, which is ${seam} long.` };
}
