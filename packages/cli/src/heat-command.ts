import { PROGRAM_VERSION } from '@furrow/contract';
import { answerHeat, answerJob, formatAmount, parseAmount, type UnitSystem } from '@furrow/engine';
import { renderHeatText } from '@furrow/papers';
import { EXIT } from './exit-code.ts';
import { loadJobWithKit } from './load-document.ts';
import type { Streams } from './streams.ts';

/** Options of `furrow heat`. */
export interface HeatOptions {
  /** Kit file whose margins the plan keeps; none if left out. */
  readonly kit: string | undefined;
  /** Place of the section from the start of the seam, as people write it; the middle if left out. */
  readonly station: string | undefined;
  readonly quick: boolean;
  readonly json: boolean;
  readonly units: UnitSystem;
}

/** Tells what a job's plan does to the plate, and what it asks for before and after. */
export async function heatCommand(file: string, options: HeatOptions, streams: Streams): Promise<number> {
  const loaded = await loadJobWithKit(file, options.kit);
  if (!loaded.ok) {
    streams.problem(loaded.lines);
    return EXIT.badInput;
  }
  const { job, kit } = loaded.read;
  const station = stationOf(options.station, job.job.seam.length, options.units);
  if (!station.ok) {
    streams.problem([station.why]);
    return EXIT.badInput;
  }
  const answer = answerJob(job, PROGRAM_VERSION, kit, options.units);
  const steps = answerHeat(job, answer, {
    station: station.metres,
    quality: options.quick ? 'quick' : 'refined',
  });
  let step = steps.next();
  while (step.done !== true) {
    streams.progress?.(`heat ${Math.floor(100 * step.value)} %`);
    step = steps.next();
  }
  streams.progress?.('');
  if (step.value === null) {
    streams.problem([`No plan, so no heat to follow: ${answer.refusal?.summary ?? 'the job is refused.'}`]);
    return EXIT.refusal;
  }
  const { report } = step.value;
  streams.print(
    options.json
      ? JSON.stringify({ inputs: answer.inputs, heat: report }, null, 2)
      : renderHeatText(report, job.job.title, options.units),
  );
  return EXIT.plan;
}

type Station =
  | { readonly ok: true; readonly metres: number | undefined }
  | { readonly ok: false; readonly why: string };

/** A place on the seam, or why it is none. */
function stationOf(text: string | undefined, length: number, units: UnitSystem): Station {
  if (text === undefined) return { ok: true, metres: undefined };
  const read = parseAmount(text, 'length');
  if (!read.ok) return { ok: false, why: `--station: ${read.issues[0]?.message ?? 'not a length'}` };
  if (read.value < 0 || read.value > length) {
    return {
      ok: false,
      why: `--station: ${text} is not on the seam, which is ${formatAmount(length, 'length', units)} long.`,
    };
  }
  return { ok: true, metres: read.value };
}
