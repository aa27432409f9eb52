import { passArea } from '../groove/index.ts';
import type { Job } from '../job/index.ts';
import { type Candidate, type Limit, type LimitFunction, limitOf, type Source } from '../limit/index.ts';
import type { StatedUnit } from '../quantity/index.ts';
import { currentRangeOf } from './current-range.ts';
import { electrodeName } from './electrode-name.ts';

/** Share of the arc's power that melting the groove out may use at most [-]. */
export const REMOVAL_SHARE_MOST = 0.85;
/** Depth of one pass at most, in electrode diameters [-]. */
export const PASS_DEPTH_MOST = 1.5;

const KIT: Source = { text: "the kit's range", provenance: 'job file' };
const COMMON: Source = { text: 'common practice, no source', provenance: 'common practice' };
const ENERGY: Source = {
  text: 'energy balance: what melts the groove cannot exceed the stated share of the arc power (share: judgement)',
  provenance: 'derived',
};

/**
 * Limits of the process itself: current, travel, arc voltage, removal power, depth per pass.
 *
 * @param meltingEnergy - energy to heat and melt a unit volume of the metal [J/m3], > 0
 * @returns the limit function [record]
 * @source AWS Welding Handbook current ranges (memory); depth per pass: common practice, no source; energy balance: derived
 * @example
 * processLimits(10.5e9)(heaviestPass(demoAnswer.basis.plan), demoJob.job)[0].id // => "electrode_current_least"
 */
export function processLimits(meltingEnergy: number): LimitFunction {
  return (candidate, job) => [
    ...currentLimits(candidate, job),
    ...rangeLimits(
      'travel',
      'Travel',
      candidate.travel,
      job.kit.travel.least,
      job.kit.travel.most,
      'mm/min',
      KIT,
      'a carriage with a wider travel range',
    ),
    ...rangeLimits(
      'arc_voltage',
      'Arc voltage',
      candidate.voltage,
      job.kit.arc_voltage.least,
      job.kit.arc_voltage.most,
      'V',
      KIT,
      'an arc voltage inside the window',
      job.kit.arc_voltage.most - job.kit.arc_voltage.least,
    ),
    removalPower(candidate, meltingEnergy),
    depthPerPass(candidate),
  ];
}

function currentLimits(candidate: Candidate, job: Job): Limit[] {
  const range = currentRangeOf(candidate.electrode);
  const size = electrodeName(candidate.electrode.diameter);
  const ofSource = rangeLimits(
    'source_current',
    'Current of the source',
    candidate.current,
    job.kit.current.least,
    job.kit.current.most,
    'A',
    KIT,
    'a second source, or a smaller electrode',
  );
  if (range === undefined) return ofSource;
  return [
    ...rangeLimits(
      'electrode_current',
      `Current of the ${size} electrode`,
      candidate.current,
      range.least,
      range.most,
      'A',
      range.source,
      'an electrode of another size',
    ),
    ...ofSource,
  ];
}

function rangeLimits(
  id: string,
  title: string,
  demand: number,
  least: number,
  most: number,
  unit: StatedUnit,
  source: Source,
  remedy: string,
  window?: number,
): Limit[] {
  const common = { demand, unit, hard: true, source, remedy, ...(window !== undefined && { window }) };
  return [
    limitOf({ ...common, id: `${id}_least`, title: `${title}, least`, capacity: least, sense: 'least' }),
    limitOf({ ...common, id: `${id}_most`, title: `${title}, greatest`, capacity: most, sense: 'most' }),
  ];
}

function removalPower(candidate: Candidate, meltingEnergy: number): Limit {
  const area = passArea({ width: candidate.passWidth, depth: candidate.passDepth });
  const arcPower = candidate.voltage * candidate.current;
  return limitOf({
    id: 'removal_power',
    title: 'Power to melt the groove out',
    demand: area * candidate.travel * meltingEnergy,
    capacity: REMOVAL_SHARE_MOST * arcPower,
    unit: 'kW',
    sense: 'most',
    hard: true,
    source: ENERGY,
    remedy: 'more layers, each shallower',
  });
}

function depthPerPass(candidate: Candidate): Limit {
  return limitOf({
    id: 'depth_per_pass',
    title: 'Depth of one pass',
    demand: candidate.passDepth,
    capacity: PASS_DEPTH_MOST * candidate.electrode.diameter,
    unit: 'mm',
    sense: 'most',
    hard: true,
    source: COMMON,
    remedy: 'more layers, or a larger electrode',
  });
}
