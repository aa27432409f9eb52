import type { Job, ReadJob } from '../../job/index.ts';
import {
  type JobAhead,
  type Knowledge,
  type NextTrial,
  nextTrial,
  sizeBand,
  type TrialWindow,
} from '../../learn/index.ts';
import { metalOf } from '../../material/index.ts';
import { inUnit } from '../../quantity/index.ts';
import { currentRangeOf } from '../../removal/index.ts';
import type { Answer, NextTrialReport } from '../../result/index.ts';

/** Part of an electrode's greatest current that a trial keeps to, as plans do [-]. */
const CURRENT_SHARE = 0.95;

/** A job at hand with what was answered to it; without a plan its setting is taken from the middle of the kit's ranges. */
export interface JobAtHand {
  readonly read: ReadJob;
  readonly basis: Answer['basis'];
}

/**
 * Proposes the trial that teaches most per minute for the jobs at hand, cut with the kit of the first of them.
 *
 * @param knowledge - what the shop knows [record], from `knowledgeOf`
 * @param jobs - the jobs with their plans [list], at least one
 * @returns the trial with what it takes and teaches, or undefined where no electrode of the kit has a current range [record]
 * @source none: composition
 * @example
 * const nothing = learnFrom({ shop: 'yard', id: 'x', observations: [] });
 * answerNextTrial(nothing, [{ read: demoJob, basis: demoAnswer.basis }]).current_A // => 570
 */
export function answerNextTrial(
  knowledge: Knowledge,
  jobs: readonly JobAtHand[],
): NextTrialReport | undefined {
  const [first] = jobs as readonly [JobAtHand, ...JobAtHand[]];
  const window = windowOf(first.read.job);
  if (window.electrodes.length === 0) return undefined;
  return stated(
    nextTrial(
      knowledge,
      jobs.map((each) => aheadOf(each, window)),
      window,
    ),
  );
}

function windowOf({ kit, rates }: Job): TrialWindow {
  return {
    electrodes: kit.electrodes.flatMap((electrode) => {
      const range = currentRangeOf(electrode);
      const least = Math.max(range?.least ?? 0, kit.current.least);
      const most = Math.min(CURRENT_SHARE * (range?.most ?? 0), kit.current.most);
      return most < least ? [] : [{ diameter: electrode.diameter, kind: electrode.kind, least, most }];
    }),
    travel: kit.travel,
    voltage: kit.arc_voltage.set,
    pushAngle: kit.push_angle,
    length: kit.trial.length_most,
    stationsMost: kit.gauge.stations_most,
    gaugeSd: kit.gauge.reading_sd,
    times: { layOut: rates.trial_time, start: rates.start_time, gauge: rates.gauge_time },
  };
}

function aheadOf({ read: { job }, basis }: JobAtHand, window: TrialWindow): JobAhead {
  const metal = metalOf(job.plate.material, job.plate.composition);
  const [spare] = window.electrodes as readonly [TrialWindow['electrodes'][number]];
  const plan = basis?.plan;
  const pass = plan?.passes[0];
  const setting = {
    diameter: plan?.electrode.diameter ?? spare.diameter,
    current: pass?.current ?? spare.most,
    voltage: job.kit.arc_voltage.set,
    travel: pass?.travel ?? Math.sqrt(window.travel.least * window.travel.most),
    pushAngle: job.kit.push_angle,
  };
  return {
    family: {
      metal: metal.family,
      position: job.seam.position,
      electrode: plan?.electrode.kind ?? spare.kind,
      band: sizeBand(setting.diameter),
      ...(job.kit.torch !== undefined && { torch: job.kit.torch }),
    },
    meltingEnergy: metal.meltingEnergy.value,
    setting,
  };
}

function stated({
  family,
  setting,
  length,
  stations,
  depth,
  time,
  doubt,
  leavesWindow,
}: NextTrial): NextTrialReport {
  return {
    metal: family.metal,
    position: family.position,
    torch: family.torch ?? null,
    electrode_diameter_mm: inUnit(setting.diameter, 'mm'),
    electrode_kind: family.electrode,
    current_A: setting.current,
    arc_voltage_V: setting.voltage,
    travel_mm_per_min: inUnit(setting.travel, 'mm/min'),
    push_angle_deg: inUnit(setting.pushAngle, 'deg'),
    length_mm: inUnit(length, 'mm'),
    stations,
    depth_mm: { p05: inUnit(depth.p05, 'mm'), p50: inUnit(depth.p50, 'mm'), p95: inUnit(depth.p95, 'mm') },
    time_s: time,
    doubt_before: doubt.before,
    doubt_after: doubt.after,
    takes_off_per_min: (60 * (doubt.before ** 2 - doubt.after ** 2)) / time,
    leaves_window: leavesWindow,
  };
}
