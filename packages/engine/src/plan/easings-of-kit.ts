import type { Job } from '../job/index.ts';
import { type Easing, evenly, written } from '../limit/index.ts';
import { fromUnit, inUnit, readOffOf, say } from '../quantity/index.ts';
import { electrodeName } from '../removal/index.ts';

const LOCK_NAMES: Readonly<Record<keyof Job['locks'], string>> = {
  electrode_diameter: 'electrode',
  current: 'current',
  travel: 'travel',
  tracks: 'number of tracks',
  track_spacing: 'track spacing',
  layers: 'number of layers',
};

/** Unlocking what is locked, one by one and all together. */
export function easingsOfLocks({ locks }: Job): Easing[] {
  const locked = Object.keys(locks) as (keyof Job['locks'])[];
  const each = locked.map((key): Easing => {
    const without = (job: Job): Job => {
      const { [key]: _unlocked, ...rest } = job.locks;
      return { ...job, locks: rest };
    };
    return {
      constraint: `locks.${key}`,
      beforeDepth: true,
      unit: 'locks',
      now: locked.length,
      steps: [locked.length - 1],
      apply: without,
      words: () => `unlocking the ${LOCK_NAMES[key]}`,
    };
  });
  if (locked.length < 2) return each;
  const all: Easing = {
    constraint: 'locks',
    beforeDepth: true,
    unit: 'locks',
    now: locked.length,
    steps: [0],
    apply: (job) => ({ ...job, locks: {} }),
    words: () => 'unlocking all locked values',
  };
  return [...each, all];
}

/** Measuring more, or more finely, and trying first. */
export function easingsOfMeasuring({ plan, kit }: Job): Easing[] {
  const { gauge, trial } = kit;
  const stops: Easing = {
    constraint: 'gauge_stops',
    unit: 'stops',
    now: 0,
    steps: plan.gauge_stops === 'never' ? [1] : [],
    apply: (job) => ({ ...job, plan: { ...job.plan, gauge_stops: 'allowed' } }),
    words: () => 'allowing to gauge before and between layers',
  };
  const withTrial = (job: Job, change: Partial<Job['kit']['trial']>): Job => ({
    ...job,
    kit: { ...job.kit, trial: { ...job.kit.trial, ...change } },
  });
  return [
    stops,
    {
      constraint: 'trial',
      unit: 'plates',
      now: 0,
      steps: trial.on === 'none' ? [1] : [],
      apply: (job) => withTrial(job, { on: 'scrap' }),
      words: () => 'scrap or a run-on plate for a trial',
    },
    {
      constraint: 'trial_length',
      unit: 'mm',
      now: written(inUnit(trial.length_most, 'mm')),
      steps:
        trial.on === 'none'
          ? []
          : [1.5, 2, 3, 5].map((factor) => written(inUnit(trial.length_most * factor, 'mm'))),
      apply: (job, value) => withTrial(job, { length_most: fromUnit(value, 'mm') }),
      words: (value) => say`a trial ${readOffOf(fromUnit(value, 'mm'), 'length', 'least')} long`,
    },
    {
      constraint: 'stations_most',
      unit: 'stations',
      now: gauge.stations_most,
      steps: evenly(gauge.stations_most, 1, Math.max(0, Math.min(12, 50 - gauge.stations_most))),
      apply: (job, value) => ({
        ...job,
        kit: { ...job.kit, gauge: { ...job.kit.gauge, stations_most: value } },
      }),
      words: (value) => `${value} gauge stations at a stop`,
    },
    {
      constraint: 'gauge',
      unit: 'mm',
      now: written(inUnit(gauge.reading_sd, 'mm')),
      steps: [0.75, 0.5, 0.25].map((factor) => written(inUnit(gauge.reading_sd * factor, 'mm'))),
      apply: (job, value) => ({
        ...job,
        kit: { ...job.kit, gauge: { ...job.kit.gauge, reading_sd: fromUnit(value, 'mm') } },
      }),
      words: (value) =>
        say`a gauge whose single reading is good to ${readOffOf(fromUnit(value, 'mm'), 'length', 'most')} (standard deviation)`,
    },
    {
      constraint: 'layers_most',
      unit: 'layers',
      now: plan.layers_most,
      steps: evenly(plan.layers_most, 1, Math.max(0, 8 - plan.layers_most)),
      apply: (job, value) => ({ ...job, plan: { ...job.plan, layers_most: value } }),
      words: (value) => `allowing ${value} layers`,
    },
    {
      constraint: 'tracks_most',
      beforeDepth: true,
      unit: 'tracks',
      now: plan.tracks_most,
      steps: evenly(plan.tracks_most, 1, Math.max(0, 20 - plan.tracks_most)),
      apply: (job, value) => ({ ...job, plan: { ...job.plan, tracks_most: value } }),
      words: (value) => `allowing ${value} tracks side by side`,
    },
  ];
}

/** More electrodes of a size that runs short. */
export function easingsOfStock({ kit }: Job, missed: ReadonlySet<string>): Easing[] {
  return kit.electrodes.map(
    (electrode, index): Easing => ({
      constraint: 'electrode_stock',
      beforeDepth: true,
      unit: 'electrodes',
      now: electrode.count,
      steps: missed.has('electrode_stock')
        ? [
            ...evenly(electrode.count, 1, 6),
            ...[1.5, 2, 3, 5, 10, 30, 100].map((factor) => Math.ceil(Math.max(8, electrode.count) * factor)),
          ]
        : [],
      apply: (job, value) => ({
        ...job,
        kit: {
          ...job.kit,
          electrodes: job.kit.electrodes.map((each, place) =>
            place === index ? { ...each, count: value } : each,
          ),
        },
      }),
      words: (value) =>
        `${value} electrodes of ${electrodeName(electrode.diameter)} in stock (the job states ${electrode.count})`,
    }),
  );
}
