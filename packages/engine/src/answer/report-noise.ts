import {
  dailyExposureLevel,
  GOUGING_NOISE_SOURCE,
  type HearingProtection,
  hearingAttenuation,
  type NoiseTask,
  nioshAverage,
  nioshDose,
  nioshDuration,
  OSHA_ACTION_THRESHOLD,
  OSHA_PEL_THRESHOLD,
  oshaAverage,
  oshaDose,
  oshaDuration,
  PROCESS_NOISE_SOURCE,
  processNoise,
} from '../hazard/index.ts';
import type { Job } from '../job/index.ts';
import type { CrewNoiseReport, HazardRange, NoiseTaskReport } from '../result/index.ts';
import { STATED } from './hazard-row.ts';
import { noiseRows } from './noise-rows.ts';

type Crew = NonNullable<Job['site']['crews']>[number];
type Worn = NonNullable<Crew['worn']>;

const MINUTE = 60;
const DAY_MINUTES = 1440;
/** Level at the ear that protection is to reach [dBA]. */
const WANTED = 85;

/** Noise of every crew; where none is stated, of one that gouges for the arc time of the plan. */
export function reportNoise({ site }: Job, arcTime: number | null): readonly CrewNoiseReport[] {
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

function crewReport(crew: Crew, stated: boolean, site: Job['site']): CrewNoiseReport {
  const tasks = crew.tasks.map((task) => taskReport(task, site));
  const unknown = tasks.filter(({ level_dBA }) => level_dBA === null).map(({ name }) => `“${name}”`);
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
          five_dB: {
            pel_dose_percent: percent(
              oshaDose(least, OSHA_PEL_THRESHOLD),
              oshaDose(most, OSHA_PEL_THRESHOLD),
            ),
            pel_average_dBA: averages(least, most, OSHA_PEL_THRESHOLD),
            action_dose_percent: percent(
              oshaDose(least, OSHA_ACTION_THRESHOLD),
              oshaDose(most, OSHA_ACTION_THRESHOLD),
            ),
            action_average_dBA: averages(least, most, OSHA_ACTION_THRESHOLD),
          },
          three_dB: {
            dose_percent: percent(nioshDose(least), nioshDose(most)),
            average_dBA: { least: nioshAverage(nioshDose(least)), most: nioshAverage(nioshDose(most)) },
            exposure_level_dBA: { least: dailyExposureLevel(least), most: dailyExposureLevel(most) },
          },
        }
      : { five_dB: null, three_dB: null };
  const protection = protectionReport(crew.worn, site, doses, most);
  const report = {
    name: crew.name,
    stated,
    people: crew.people ?? null,
    shift_min: crew.shift / MINUTE,
    quiet_min: Math.max(0, (crew.shift - filled) / MINUTE),
    tasks,
    missing,
    ...doses,
    protection,
  };
  return { ...report, rows: noiseRows(report) };
}

function taskReport(task: Crew['tasks'][number], { noise, torches }: Job['site']): NoiseTaskReport {
  const { name, work, time, level_dBA: stated } = task;
  const measured = stated ?? (work === 'gouging' ? noise.at_ear_dBA : undefined);
  const base = { name, time_min: time / MINUTE, measured: measured !== undefined };
  if (measured === undefined && work === 'other') {
    return { ...base, level_dBA: null, osha_time_min: null, niosh_time_min: null, source: STATED };
  }
  const level: HazardRange =
    measured !== undefined
      ? { least: measured, most: measured }
      : processNoise(work as Exclude<typeof work, 'other'>, torches);
  return {
    ...base,
    level_dBA: level,
    osha_time_min: oshaDuration(level.most) / MINUTE,
    niosh_time_min: nioshDuration(level.most) / MINUTE,
    source:
      measured !== undefined ? STATED : work === 'gouging' ? GOUGING_NOISE_SOURCE : PROCESS_NOISE_SOURCE,
  };
}

function spells(tasks: readonly NoiseTaskReport[], end: 'least' | 'most'): readonly NoiseTask[] {
  return tasks.flatMap(({ level_dBA, time_min }) =>
    level_dBA === null ? [] : [{ level: level_dBA[end], time: time_min * MINUTE }],
  );
}

function percent(least: number, most: number): HazardRange {
  return { least: 100 * least, most: 100 * most };
}

/** Averages of the doses; a dose of nothing has none. */
function averages(
  least: readonly NoiseTask[],
  most: readonly NoiseTask[],
  threshold: number,
): HazardRange | null {
  const [low, high] = [oshaDose(least, threshold), oshaDose(most, threshold)];
  return low > 0 && high > 0 ? { least: oshaAverage(low), most: oshaAverage(high) } : null;
}

function protectionReport(
  stated: Worn | undefined,
  { noise }: Job['site'],
  doses: Pick<CrewNoiseReport, 'five_dB' | 'three_dB'>,
  most: readonly NoiseTask[],
): CrewNoiseReport['protection'] {
  const worn = stated ?? wornByRatings(noise);
  const attenuation = worn === undefined ? null : attenuationOf(worn, noise);
  const exposure = doses.three_dB?.exposure_level_dBA.most;
  const average = doses.five_dB?.action_average_dBA?.most;
  const loudest = Math.max(...most.map(({ level }) => level));
  return {
    worn: worn === undefined ? 'not stated' : WORN[worn],
    attenuation_dB: attenuation,
    five_dB_average_dBA: average === undefined || attenuation === null ? null : average - attenuation,
    exposure_level_dBA: exposure === undefined || attenuation === null ? null : exposure - attenuation,
    gouging_time_min:
      attenuation === null || most.length === 0
        ? null
        : Math.min(DAY_MINUTES, nioshDuration(loudest - attenuation) / MINUTE),
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
