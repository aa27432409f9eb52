import type { Job } from '../job/index.ts';
import { dailyExposureLevel, nioshAverage, nioshDose, nioshDuration } from './equal-energy-rule.ts';
import {
  OSHA_ACTION_THRESHOLD,
  OSHA_PEL_THRESHOLD,
  oshaAverage,
  oshaDose,
  oshaDuration,
} from './five-decibel-rule.ts';
import { STATED } from './hazard-row.ts';
import { type HearingProtection, hearingAttenuation } from './hearing-protection.ts';
import { noiseRows } from './noise-rows.ts';
import type { NoiseTask } from './noise-task.ts';
import type { CrewOutcome, DosesOutcome, RangeOutcome, TaskOutcome } from './outcome.ts';
import { GOUGING_NOISE_SOURCE, PROCESS_NOISE_SOURCE, processNoise } from './process-noise.ts';

type Crew = NonNullable<Job['site']['crews']>[number];
type Worn = NonNullable<Crew['worn']>;

const DAY = 86_400;
/** Level at the ear that protection is to reach [dBA]. */
const WANTED = 85;

/** Noise of every crew; where none is stated, of one that gouges for the arc time of the plan. */
export function noiseOfCrews({ site }: Job, arcTime: number | null): readonly CrewOutcome[] {
  if (site.crews !== undefined && site.crews.length > 0) {
    return site.crews.map((crew) => crewReport(crew, true, site));
  }
  if (arcTime === null) return [];
  const shift = Math.max(8 * 3600, arcTime);
  const crew: Crew = {
    name: 'Crew at the torch',
    shift,
    tasks: [{ name: 'Gouging, arc time of the plan', work: 'gouging', time: arcTime }],
  };
  return [crewReport(crew, false, site)];
}

function crewReport(crew: Crew, stated: boolean, site: Job['site']): CrewOutcome {
  const tasks = crew.tasks.map((task) => taskReport(task, site));
  const unknown = tasks.filter(({ level }) => level === null).map(({ name }) => `“${name}”`);
  const filled = crew.tasks.reduce((sum, { time }) => sum + time, 0);
  const missing =
    unknown.length > 0
      ? `No level is known of ${unknown.join(', ')}: measure it and state it.`
      : filled === 0
        ? 'The tasks of this crew take no time.'
        : null;
  const least = spells(tasks, 'least');
  const most = spells(tasks, 'most');
  const doses =
    missing === null
      ? {
          fiveDecibel: {
            pelDose: range(oshaDose(least, OSHA_PEL_THRESHOLD), oshaDose(most, OSHA_PEL_THRESHOLD)),
            pelAverage: averages(least, most, OSHA_PEL_THRESHOLD),
            actionDose: range(oshaDose(least, OSHA_ACTION_THRESHOLD), oshaDose(most, OSHA_ACTION_THRESHOLD)),
            actionAverage: averages(least, most, OSHA_ACTION_THRESHOLD),
          },
          threeDecibel: {
            dose: range(nioshDose(least), nioshDose(most)),
            average: { least: nioshAverage(nioshDose(least)), most: nioshAverage(nioshDose(most)) },
            exposureLevel: { least: dailyExposureLevel(least), most: dailyExposureLevel(most) },
          },
        }
      : { fiveDecibel: null, threeDecibel: null };
  const protection = protectionReport(crew.worn, site, doses, most);
  const report = {
    name: crew.name,
    stated,
    people: crew.people ?? null,
    shift: crew.shift,
    quiet: Math.max(0, crew.shift - filled),
    tasks,
    missing,
    ...doses,
    protection,
  };
  return { ...report, rows: noiseRows(report) };
}

function taskReport(task: Crew['tasks'][number], { noise, torches }: Job['site']): TaskOutcome {
  const { name, work, time, level_dBA: stated } = task;
  const measured = stated ?? (work === 'gouging' ? noise.at_ear_dBA : undefined);
  const base = { name, time, measured: measured !== undefined };
  if (measured === undefined && work === 'other') {
    return { ...base, level: null, oshaTime: null, nioshTime: null, source: STATED };
  }
  const level: RangeOutcome =
    measured !== undefined
      ? { least: measured, most: measured }
      : processNoise(work as Exclude<typeof work, 'other'>, torches);
  return {
    ...base,
    level,
    oshaTime: oshaDuration(level.most),
    nioshTime: nioshDuration(level.most),
    source:
      measured !== undefined ? STATED : work === 'gouging' ? GOUGING_NOISE_SOURCE : PROCESS_NOISE_SOURCE,
  };
}

function spells(tasks: readonly TaskOutcome[], end: 'least' | 'most'): readonly NoiseTask[] {
  return tasks.flatMap(({ level, time }) => (level === null ? [] : [{ level: level[end], time }]));
}

function range(least: number, most: number): RangeOutcome {
  return { least, most };
}

/** Averages of the doses; a dose of nothing has none. */
function averages(
  least: readonly NoiseTask[],
  most: readonly NoiseTask[],
  threshold: number,
): RangeOutcome | null {
  const [low, high] = [oshaDose(least, threshold), oshaDose(most, threshold)];
  return low > 0 && high > 0 ? { least: oshaAverage(low), most: oshaAverage(high) } : null;
}

function protectionReport(
  stated: Worn | undefined,
  { noise }: Job['site'],
  doses: DosesOutcome,
  most: readonly NoiseTask[],
): CrewOutcome['protection'] {
  const worn = stated ?? wornByRatings(noise);
  const attenuation = worn === undefined ? null : attenuationOf(worn, noise);
  const exposure = doses.threeDecibel?.exposureLevel.most;
  const average = doses.fiveDecibel?.actionAverage?.most;
  const loudest = Math.max(...most.map(({ level }) => level));
  return {
    worn: worn === undefined ? 'not stated' : WORN[worn],
    attenuation,
    fiveDecibelAverage: average === undefined || attenuation === null ? null : average - attenuation,
    exposureLevel: exposure === undefined || attenuation === null ? null : exposure - attenuation,
    gougingTime:
      attenuation === null || most.length === 0 ? null : Math.min(DAY, nioshDuration(loudest - attenuation)),
    says: protectionSays(worn, attenuation, exposure, noise),
    source:
      noise.derating === 'niosh'
        ? { text: 'NIOSH Publication 98-126, derating by kind', provenance: 'confirmed' }
        : noise.derating === 'half'
          ? { text: '29 CFR 1910.95 App B, half of the rating as in field practice', provenance: 'confirmed' }
          : { text: '29 CFR 1910.95 App B', provenance: 'confirmed' },
  };
}

const WORN: Readonly<Record<Worn, string>> = {
  none: 'none',
  plug: 'plug',
  muff: 'muff',
  plug_and_muff: 'plug and muff',
};

/** What is worn where the crew does not state it: whatever the site has a rating of. */
function wornByRatings({ plug_NRR_dB: plug, muff_NRR_dB: muff }: Job['site']['noise']): Worn | undefined {
  if (plug !== undefined && muff !== undefined) return 'plug_and_muff';
  if (plug !== undefined) return 'plug';
  return muff === undefined ? undefined : 'muff';
}

/** What the protectors take off; null where a rating is missing. */
function attenuationOf(worn: Worn, noise: Job['site']['noise']): number | null {
  if (worn === 'none') return 0;
  const plug = worn === 'muff' ? null : noise.plug_NRR_dB;
  const muff = worn === 'plug' ? null : noise.muff_NRR_dB;
  if (plug === undefined || muff === undefined) return null;
  const protection: HearingProtection = { plug, muff, formable: noise.plug_kind === 'formable' };
  return hearingAttenuation(protection, noise.derating);
}

function protectionSays(
  worn: Worn | undefined,
  attenuation: number | null,
  exposure: number | undefined,
  noise: Job['site']['noise'],
): string {
  if (worn === undefined) return 'No hearing protection and no rating is stated: not covered by the source.';
  if (attenuation === null) {
    const lacking = [
      ...(worn !== 'muff' && noise.plug_NRR_dB === undefined ? ['plug'] : []),
      ...(worn !== 'plug' && noise.muff_NRR_dB === undefined ? ['muff'] : []),
    ].join(' and of the ');
    return `The rating (NRR) of the ${lacking} is missing: not covered by the source.`;
  }
  if (exposure === undefined) return 'Without the noise of every task the level at the ear is not known.';
  const left = exposure - attenuation;
  const leaves = `${left.toFixed(1)} dBA over eight hours at the ear`;
  if (left <= WANTED) return `Reckoned to leave ${leaves}, for planning only: fit and wear decide.`;
  if (worn === 'plug_and_muff') {
    return `Plug and muff together are not enough: ${leaves}. Shorten the time, lower the current that still cuts, keep the person away from the arc.`;
  }
  const both = attenuationOf('plug_and_muff', noise);
  const double =
    both === null
      ? 'A muff over a plug adds 5 dB to the better of the two.'
      : exposure - both > WANTED
        ? `Plug and muff together would still leave ${(exposure - both).toFixed(1)} dBA: not enough either.`
        : `Plug and muff together would leave ${(exposure - both).toFixed(1)} dBA.`;
  return `Not enough: ${leaves}. ${double}`;
}
