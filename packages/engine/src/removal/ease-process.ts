import type { Job } from '../job/index.ts';
import { type Easing, evenly, written } from '../limit/index.ts';
import { boundOf, fromUnit, INCH, inUnit, type Sentence, say } from '../quantity/index.ts';
import { currentRangeOf } from './current-range.ts';
import { electrodeName } from './electrode-name.ts';

/**
 * What eases the limits of the process: another electrode, a current range for one that has none, stronger or finer
 * sources, a carriage of a wider range.
 *
 * @param job - the job [record], from `readJob`
 * @returns the easings, each with its least change first [list]
 * @source sizes and currents: published ranges of electrodes (memory); steps: judgement, no source
 * @example
 * processEasings(demoJob.job).at(-1).constraint // => "travel_least"
 */
export function processEasings(job: Job): Easing[] {
  return [...easingsOfElectrodes(job), ...easingsOfMachines(job)];
}

/** Electrodes: another size, a current range where none is published. */
function easingsOfElectrodes({ kit }: Job): Easing[] {
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
        beforeDepth: true,
        unit: 'mm',
        now: written(inUnit(Math.max(...kit.electrodes.map((each) => each.diameter)), 'mm')),
        steps: [written(inUnit(diameter, 'mm'))],
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
      beforeDepth: true,
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
  return [...sizes, ...ranges];
}

/** Sources and carriage. */
function easingsOfMachines({ kit }: Job): Easing[] {
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
    now: written(inUnit(kit.travel[end], 'mm/min')),
    steps,
    apply: (job, value) => withKit(job, 'travel', end, fromUnit(value, 'mm/min')),
    words,
  });
  return [
    {
      constraint: 'source_current_most',
      beforeDepth: true,
      unit: 'A',
      now: kit.current.most,
      steps: evenly(kit.current.most, 50, Math.max(0, Math.ceil((mostUsable - kit.current.most) / 50))),
      apply: (job, value) => withKit(job, 'current', 'most', value),
      words: (value) => `power sources that give ${value} A`,
    },
    {
      constraint: 'source_current_least',
      beforeDepth: true,
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
      evenly(inUnit(kit.travel.most, 'mm/min'), 100, 40),
      (value) => say`a carriage that travels at ${boundOf(fromUnit(value, 'mm/min'), 'speed', 'least')}`,
    ),
    travel(
      'least',
      [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2].map((factor) =>
        written(inUnit(kit.travel.least * factor, 'mm/min')),
      ),
      (value) =>
        say`a carriage that travels as slowly as ${boundOf(fromUnit(value, 'mm/min'), 'speed', 'most')}`,
    ),
  ];
}
