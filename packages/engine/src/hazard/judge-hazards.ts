import { hazardBreaches } from './breaches.ts';
import { noiseOfCrews } from './crew-noise.ts';
import { fireZoneOfJob } from './fire-zone-of-job.ts';
import { fumeOf } from './fume.ts';
import { fumeSection } from './fume-section.ts';
import type { HazardOutcome, HazardSettingOutcome } from './outcome.ts';
import type { HazardQuestion } from './question.ts';
import { airSection, fieldOf, fieldSection, shockSection, spaceSection } from './rig-sections.ts';
import { eyesSection, fireSection, heatSection, noiseSection } from './sections.ts';

/**
 * Holds what a job asks of the people around it against the figures that sources name: noise by crew, shade, fire zone,
 * fume, shock, field, air, space, stored heat.
 *
 * Values stand in one of four wordings beside the figure; what is missing is not covered. Nothing here permits work.
 *
 * @param question - the job, the setting where there is a plan, and what a kit tells [record], from a job and a kit as read
 * @returns figures, rows, crews, zone and breaches in SI [record]
 * @source none: composition; every figure carries its own
 * @example
 * judgeHazards({ job: demoJob.job }).sections.map(({ id }) => id) // => ["noise", "eyes", "fire", "fume", "shock", "field", "air", "space", "heat"]
 */
export function judgeHazards(question: HazardQuestion): HazardOutcome {
  const { job, arcTime, gas = null } = question;
  const setting = settingOf(question);
  const fireZone = fireZoneOfJob(job, question.baySeam);
  const noise = noiseOfCrews(job, arcTime ?? null);
  const fume = fumeOf(job);
  const sections = [
    noiseSection(setting),
    eyesSection(job, setting),
    fireSection(job, fireZone),
    fumeSection(job, gas),
    shockSection(question.sources),
    fieldSection(job, setting),
    airSection(job, question.hoseBores),
    spaceSection(job),
    heatSection(job),
  ];
  return {
    setting,
    breaches: hazardBreaches(noise, sections, fume),
    noise,
    fume,
    field: fieldOf(job, setting),
    fireZone,
    sections,
  };
}

function settingOf({ job: { kit, site }, current, arcTime }: HazardQuestion): HazardSettingOutcome {
  return {
    current: current ?? kit.current.most,
    of: current === undefined ? 'source' : 'plan',
    pushAngle: kit.push_angle,
    arcTime: arcTime ?? null,
    torches: site.torches,
    place: site.place,
  };
}
