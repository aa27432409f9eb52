import {
  type ElectrodeGas,
  electrodeGas,
  hazardLimits,
  STANDING_CAUTIONS,
  STOP_WORK,
} from '../hazard/index.ts';
import type { Job, ReadJob } from '../job/index.ts';
import type { Kit, ReadKit } from '../kit/index.ts';
import type { Limit } from '../limit/index.ts';
import { metalOf } from '../material/index.ts';
import { predictWear, publishedBelief } from '../removal/index.ts';
import type { Answer, HazardReport, HazardSetting, Plan } from '../result/index.ts';
import { hazardBreaches } from './hazard-breaches.ts';
import { fumeSection } from './hazard-fume-section.ts';
import { airSection, fieldSection, reportField, shockSection, spaceSection } from './hazard-rig-sections.ts';
import { eyesSection, fireSection, heatSection, noiseSection } from './hazard-sections.ts';
import { reportFireZone } from './report-fire-zone.ts';
import { reportFume } from './report-fume.ts';
import { reportNoise } from './report-noise.ts';
import { candidateOfPlan } from './setting-of-plan.ts';

const DEFERS =
  'Planning figures, shown beside the figure that a source names. Nothing here permits work: local codes, the site’s own rules and licensed practice govern, and they come first.';

/**
 * Tells what a job asks of the people around it: noise by crew, shade, fire zone, fume, shock, field, air, space.
 *
 * Values stand beside the figure that a source names, in one of four wordings; what is missing is not covered.
 *
 * @param read - the job as read [record], from `readJob`
 * @param answer - what came of planning it [record], from `answerJob`
 * @param kit - the shop's kit as read [record], from `readKit`, or left out
 * @returns figures, rows, lists and the fire zone [record]
 * @source none: composition; every figure carries its own
 * @example
 * typeof answerHazard // => "function"
 */
export function answerHazard(read: ReadJob, answer: Answer, kit?: ReadKit): HazardReport {
  const { job } = read;
  const { plan } = answer;
  const setting = settingOf(job, plan);
  const arcTime = plan === undefined ? null : plan.arc_time_s.p90;
  const zone = reportFireZone(job, kit?.kit);
  const noise = reportNoise(job, arcTime);
  const fume = reportFume(job);
  const sections = sectionsOf(job, setting, zone, gasOf(job, plan), kit?.kit);
  return {
    setting,
    breaches: hazardBreaches(noise, sections, fume),
    noise,
    fume,
    field: reportField(job, setting),
    fire_zone: zone,
    sections,
    limits: plan === undefined ? [] : ownLimits(plan, job),
    cautions: STANDING_CAUTIONS,
    stop_work: STOP_WORK,
    defers: DEFERS,
  };
}

function settingOf({ kit, site }: Job, plan: Plan | undefined): HazardSetting {
  return {
    current_A:
      plan === undefined ? kit.current.most : Math.max(...plan.passes.map(({ current_A }) => current_A)),
    of: plan === undefined ? 'source' : 'plan',
    push_angle_deg: (kit.push_angle * 180) / Math.PI,
    arc_time_min: plan === undefined ? null : plan.arc_time_s.p90 / 60,
    torches: site.torches,
    place: site.place,
  };
}

/** Gas of the electrode at the greatest current of the plan, by the published rows, whose band is the wider one; without a plan nothing is known of the electrode. */
function gasOf(job: Job, plan: Plan | undefined): ElectrodeGas | null {
  if (plan === undefined) return null;
  const { electrode, current } = candidateOfPlan(plan, job);
  const belief = publishedBelief(metalOf(job.plate.material), job.seam.position);
  return electrodeGas(predictWear(belief, electrode.diameter, current).p95, electrode.diameter);
}

function sectionsOf(
  job: Job,
  setting: HazardSetting,
  zone: HazardReport['fire_zone'],
  gas: ElectrodeGas | null,
  kit: Kit | undefined,
): HazardReport['sections'] {
  return [
    noiseSection(setting),
    eyesSection(job, setting),
    fireSection(job, zone),
    fumeSection(job, gas),
    shockSection(kit),
    fieldSection(job, setting),
    airSection(job, kit),
    spaceSection(job),
    heatSection(job),
  ];
}

/** Margins of the hazards as they stand among the plan's limits. */
function ownLimits(plan: Plan, job: Job): readonly Limit[] {
  const own = new Set(hazardLimits()(candidateOfPlan(plan, job), job).map(({ id }) => id));
  return plan.limits.filter(({ id }) => own.has(id));
}
