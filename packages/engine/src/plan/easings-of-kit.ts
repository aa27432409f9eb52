import type { Job } from '../job/index.ts';
import type { Easing } from '../limit/index.ts';
import { boundOf, type Sentence, say } from '../quantity/index.ts';
import { currentRangeOf, electrodeName } from '../removal/index.ts';
import { evenly, written } from './easing-steps.ts';

const PER_MIN = 1e-3 / 60;
const INCH = 0.0254;

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
      now: written(trial.length_most * 1000),
      steps:
        trial.on === 'none' ? [] : [1.5, 2, 3, 5].map((factor) => written(trial.length_most * factor * 1000)),
      apply: (job, value) => withTrial(job, { length_most: value / 1000 }),
      words: (value) => say`a trial ${boundOf(value / 1000, 'length', 'least')} long`,
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
      now: written(gauge.reading_sd * 1000),
      steps: [0.75, 0.5, 0.25].map((factor) => written(gauge.reading_sd * factor * 1000)),
      apply: (job, value) => ({
        ...job,
        kit: { ...job.kit, gauge: { ...job.kit.gauge, reading_sd: value / 1000 } },
      }),
      words: (value) =>
        say`a gauge whose single reading is good to ${boundOf(value / 1000, 'length', 'most')} (standard deviation)`,
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
      unit: 'tracks',
      now: plan.tracks_most,
      steps: evenly(plan.tracks_most, 1, Math.max(0, 20 - plan.tracks_most)),
      apply: (job, value) => ({ ...job, plan: { ...job.plan, tracks_most: value } }),
      words: (value) => `allowing ${value} tracks side by side`,
    },
  ];
}

/** Electrodes: another size, more of them, a current range where none is published. */
export function easingsOfElectrodes({ kit }: Job, missed: ReadonlySet<string>): Easing[] {
  const withElectrodes = (job: Job, electrodes: Job['kit']['electrodes']): Job => ({
    ...job,
    kit: { ...job.kit, electrodes },
  });
  const sizes = [5 / 16, 3 / 8, 1 / 2, 5 / 8, 3 / 4]
    .map((inches) => inches * INCH)
    .filter((size) => !kit.electrodes.some((electrode) => Math.abs(electrode.diameter - size) < 0.4e-3))
    .map((diameter): Easing => {
      const { current_least: _least, current_most: _most, ...plain } = kit.electrodes[0]!;
      return {
        constraint: 'electrode_diameter',
        unit: 'mm',
        now: written(Math.max(...kit.electrodes.map((each) => each.diameter)) * 1000),
        steps: [written(diameter * 1000)],
        apply: (job) => withElectrodes(job, [...job.kit.electrodes, { ...plain, diameter, count: 1000 }]),
        words: () => `an electrode of ${electrodeName(diameter)}`,
      };
    });
  const unknown = kit.electrodes.filter((electrode) => currentRangeOf(electrode) === undefined);
  const ranges = unknown.map((electrode): Easing => {
    // As many amperes per area as the published middle sizes carry.
    const most = Math.round((electrode.diameter / 0.0127) ** 2 * 1000);
    const least = Math.round(0.6 * most);
    return {
      constraint: 'electrode_current',
      unit: 'A',
      now: 0,
      steps: [most],
      apply: (job) =>
        withElectrodes(
          job,
          job.kit.electrodes.map((each) =>
            each === electrode ? { ...each, current_least: least, current_most: most } : each,
          ),
        ),
      words: () =>
        `stating the current range of the ${electrodeName(electrode.diameter)} electrode (no published range covers its size; one of about ${least} A to ${most} A)`,
    };
  });
  const stock = kit.electrodes.map(
    (electrode, index): Easing => ({
      constraint: 'electrode_stock',
      unit: 'electrodes',
      now: electrode.count,
      steps: missed.has('electrode_stock')
        ? [
            ...evenly(electrode.count, 1, 6),
            ...[1.5, 2, 3, 5, 10, 30, 100].map((factor) => Math.ceil(Math.max(8, electrode.count) * factor)),
          ]
        : [],
      apply: (job, value) =>
        withElectrodes(
          job,
          job.kit.electrodes.map((each, place) => (place === index ? { ...each, count: value } : each)),
        ),
      words: (value) =>
        `${value} electrodes of ${electrodeName(electrode.diameter)} in stock (the job states ${electrode.count})`,
    }),
  );
  return [...sizes, ...ranges, ...stock];
}

/** Sources and carriage. */
export function easingsOfMachines({ kit }: Job): Easing[] {
  const ranges = kit.electrodes.flatMap((electrode) => currentRangeOf(electrode) ?? []);
  const mostUsable = Math.max(kit.current.most, ...ranges.map((range) => range.most));
  const leastUsable = Math.min(kit.current.least, ...ranges.map((range) => range.least));
  const withKit = (job: Job, key: 'current' | 'travel', end: 'least' | 'most', value: number): Job => ({
    ...job,
    kit: { ...job.kit, [key]: { ...job.kit[key], [end]: value } },
  });
  const travel = (
    end: 'least' | 'most',
    steps: readonly number[],
    words: (value: number) => Sentence,
  ): Easing => ({
    constraint: `travel_${end}`,
    unit: 'mm/min',
    now: written(kit.travel[end] / PER_MIN),
    steps,
    apply: (job, value) => withKit(job, 'travel', end, value * PER_MIN),
    words,
  });
  return [
    {
      constraint: 'source_current_most',
      unit: 'A',
      now: kit.current.most,
      steps: evenly(kit.current.most, 50, Math.max(0, Math.ceil((mostUsable - kit.current.most) / 50))),
      apply: (job, value) => withKit(job, 'current', 'most', value),
      words: (value) => `power sources that give ${value} A`,
    },
    {
      constraint: 'source_current_least',
      unit: 'A',
      now: kit.current.least,
      steps:
        leastUsable < kit.current.least
          ? [0.8, 0.6, 0.4, 0.2].map((factor) => Math.round(kit.current.least * factor))
          : [],
      apply: (job, value) => withKit(job, 'current', 'least', value),
      words: (value) => `a power source that goes down to ${value} A`,
    },
    travel(
      'most',
      evenly(kit.travel.most / PER_MIN, 100, 40),
      (value) => say`a carriage that travels at ${boundOf(value * PER_MIN, 'speed', 'least')}`,
    ),
    travel(
      'least',
      [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2].map((factor) =>
        written((kit.travel.least * factor) / PER_MIN),
      ),
      (value) => say`a carriage that travels as slowly as ${boundOf(value * PER_MIN, 'speed', 'most')}`,
    ),
  ];
}
