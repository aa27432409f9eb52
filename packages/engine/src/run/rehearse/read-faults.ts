import type { Outcome } from '../../issue/index.ts';
import type { Job } from '../../job/index.ts';
import { drawStream } from '../../numeric/index.ts';
import type { PlanOutcome } from '../../plan/index.ts';
import { parseAmount } from '../../quantity/index.ts';
import type { RehearsalFault, RehearsalFaultKind } from './rehearse.ts';

/** Usual length and size of each fault: judgement, no source. */
const USUAL: Readonly<Record<RehearsalFaultKind, { readonly duration: number; readonly size: number }>> = {
  arc_out: { duration: 0.9, size: 0 },
  short: { duration: 0.4, size: 0 },
  stall: { duration: 1.5, size: 0 },
  slip: { duration: 4, size: 0.5 },
  low_air: { duration: 4, size: 0.3 },
  feed_stop: { duration: 2, size: 0 },
  voltage_drift: { duration: 20, size: 0.12 },
  current_drift: { duration: 20, size: -0.15 },
  gap: { duration: 1.5, size: 0 },
  stale_reading: { duration: 3, size: 0 },
  spike: { duration: 0.1, size: 2 },
  clock_step: { duration: 0.1, size: -3 },
};

const KINDS = Object.keys(USUAL) as RehearsalFaultKind[];

/**
 * Reads which faults a rehearsal is to show: kinds with commas between, each with pass, place and duration if wanted, such
 * as `arc_out/2@1.2 m:0.9 s, stall`; `all` for one of each. What is left open is drawn by the seed; a place without a pass is
 * on the first.
 *
 * @param text - the faults as written [text], may be empty
 * @param job - the job [record], from `readJob`
 * @param plan - its plan [record], from `planJob`
 * @param seed - the seed [-], a whole number from 0 to 2^31 - 1
 * @returns the faults, or what is wrong [record]
 * @source judgement, no source: usual durations
 * @example
 * readFaults('arc_out@90 mm:1 s', demoJob.job, demoAnswer.basis.plan, 1).value // => [{"kind":"arc_out","pass":1,"at":0.09,"duration":1,"size":0}]
 */
export function readFaults(
  text: string,
  job: Job,
  plan: PlanOutcome,
  seed: number,
): Outcome<readonly RehearsalFault[]> {
  const names = text.trim() === 'all' ? KINDS : text.split(',').map((part) => part.trim());
  const wanted = names.filter((name) => name !== '');
  const stream = drawStream(seed);
  const faults: RehearsalFault[] = [];
  const passes = plan.passes.length;
  for (const [index, written] of wanted.entries()) {
    const [, kind = '', pass, place, lasts] =
      /^([a-z_]+)(?:\/(\d{1,3}))?(?:@([^:]+))?(?::(.+))?$/u.exec(written) ?? [];
    if (!KINDS.includes(kind as RehearsalFaultKind)) return wrong(written, `one of ${KINDS.join(', ')}`);
    const usual = USUAL[kind as RehearsalFaultKind];
    const at = place === undefined ? undefined : parseAmount(place, 'length');
    const duration = lasts === undefined ? undefined : parseAmount(lasts, 'time');
    if (at !== undefined && (!at.ok || at.value < 0 || at.value > job.seam.length))
      return wrong(written, 'a place on the seam behind @, such as 1.2 m');
    if (duration !== undefined && (!duration.ok || duration.value <= 0))
      return wrong(written, 'a duration behind :, such as 0.9 s');
    const numbered = plan.passes.find(({ number }) => number === Number(pass));
    if (pass !== undefined && numbered === undefined)
      return wrong(written, `a pass of the plan behind /, from 1 to ${passes}`);
    // even along the passes, so that faults drawn by chance can be told apart
    const drawn = ((index + 0.3 + 0.4 * stream.uniform()) / wanted.length) * passes;
    faults.push({
      kind: kind as RehearsalFaultKind,
      pass: (numbered ?? plan.passes[at === undefined ? Math.floor(drawn) : 0])?.number ?? 1,
      at: at?.ok === true ? at.value : (0.06 + 0.88 * (drawn % 1)) * job.seam.length,
      duration: duration?.ok === true ? duration.value : usual.duration,
      size: usual.size,
    });
  }
  return { ok: true, value: faults };
}

function wrong(read: string, accepted: string): Outcome<never> {
  return {
    ok: false,
    issues: [
      {
        code: 'REHEARSAL_FAULTS',
        message: `"${read}" is no fault that a rehearsal can show; wanted: ${accepted}.`,
        path: 'faults',
        read,
        accepted,
      },
    ],
  };
}
