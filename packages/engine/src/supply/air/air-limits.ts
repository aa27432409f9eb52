import type { Outcome } from '../../issue/index.ts';
import { type Limit, limitOf, type Source } from '../../limit/index.ts';
import { inUnit } from '../../quantity/index.ts';
import { type AirPoint, airPoint } from './air-point.ts';
import type { AirSupply } from './air-supply.ts';
import { freeAirDelivered } from './compressor-delivery.ts';
import { airDrawdown, type Drawdown } from './drawdown.ts';

/** A pressure and where it comes from. */
export interface SourcedPressure {
  /** Pressure [Pa gauge]. */
  readonly value: number;
  readonly source: Source;
}

/** What the air must hold over a seam. */
export interface AirDemand {
  /** Least flowing pressure behind the regulator. */
  readonly regulator: SourcedPressure;
  /** Least flowing pressure before the torch. */
  readonly torch: SourcedPressure;
  /** Where the torch's passage comes from: the shop's own measurement, or a recalled figure. */
  readonly torchSource: Source;
  /** Time for which the torch blows without a pause [s]. */
  readonly time: number;
}

/** Seams looked at when it is asked how long the pressure holds, so that one that just holds is told apart [-]. */
const LOOK_BEYOND = 1.1;
const PSI = 6894.757293168361;

/** Flowing pressure behind the regulator that the trade asks for: 80 psi, common practice. */
export const REGULATOR_PRESSURE: SourcedPressure = {
  value: 80 * PSI,
  source: { text: 'common practice, no source: 80 to 100 psi while flowing', provenance: 'common practice' },
};

/** Flowing pressure before the torch at which the process still works: 60 psi, an encyclopaedia. */
export const TORCH_PRESSURE: SourcedPressure = {
  value: 60 * PSI,
  source: { text: 'encyclopaedia article on air-arc work: 60 to 100 psi', provenance: 'confirmed' },
};

/**
 * Margins of the air supply over a seam: pressures while flowing, compressor, receiver.
 *
 * Pressures are those at the lowest that the receiver comes to. A limit is hard only where what it rests on is the
 * shop's own, or confirmed; the compressor alone is soft, since a receiver may carry what it lacks.
 *
 * @param supply - the air supply [record], see AirSupply
 * @param demand - least pressures with their sources, and the time of blowing [record], pressures and time > 0
 * @returns the limits, or why there are none [record]
 * @source as airPoint and airDrawdown; pressures as their sources say
 * @example
 * const supply = { atmosphere: 101325, temperature: 293.15, compressor: { delivery: [{ pressure: 8e5, freeAir: 0.03 }] }, receiver: { volume: 0.5, cutIn: 7e5, cutOut: 8e5 }, path: [], torch: { kind: 'conductance', conductance: 3e-8, criticalRatio: 0.5 } };
 * airLimits(supply, { regulator: REGULATOR_PRESSURE, torch: TORCH_PRESSURE, torchSource: { text: 'measured', provenance: 'job file' }, time: 300 }).value.map((limit) => limit.verdict) // => ["holds","holds","holds","holds"]
 */
export function airLimits(supply: AirSupply, demand: AirDemand): Outcome<readonly Limit[]> {
  const wish = { pressure: demand.regulator.value, at: 'regulator', time: demand.time } as const;
  const drawdown = airDrawdown(supply, wish);
  if (!drawdown.ok) return drawdown;
  const beyond = airDrawdown(supply, { ...wish, time: LOOK_BEYOND * demand.time });
  if (!beyond.ok) return beyond;
  const lowest = airPoint(supply, drawdown.value.lowest_kPa * 1000);
  if (!lowest.ok) return lowest;
  return {
    ok: true,
    value: [
      pressureLimit(
        'air_regulator',
        'Flowing pressure at the regulator',
        lowest.value.regulator_kPa,
        demand.regulator,
        demand,
      ),
      pressureLimit(
        'air_torch',
        'Flowing pressure before the torch',
        lowest.value.torch_kPa,
        demand.torch,
        demand,
      ),
      compressorLimit(supply, lowest.value, demand),
      receiverLimit(beyond.value, demand),
    ],
  };
}

/** Statements that may turn a plan away: the shop's own, and confirmed ones. */
function isFirm({ provenance }: Source): boolean {
  return provenance === 'job file' || provenance === 'confirmed' || provenance === 'derived';
}

function pressureLimit(
  id: string,
  title: string,
  flowing: number,
  wanted: SourcedPressure,
  demand: AirDemand,
): Limit {
  return limitOf({
    id,
    title,
    demand: flowing,
    capacity: inUnit(wanted.value, 'kPa'),
    unit: 'kPa',
    sense: 'least',
    hard: isFirm(wanted.source) && isFirm(demand.torchSource),
    source: wanted.source,
    remedy: 'a wider or shorter hose, or a higher pressure set at the regulator',
  });
}

function compressorLimit({ compressor, receiver }: AirSupply, point: AirPoint, demand: AirDemand): Limit {
  return limitOf({
    id: 'air_compressor',
    title: 'Free air taken, against what the compressor delivers at the cut-in',
    demand: point.receiver_flow_L_per_min,
    capacity: inUnit(freeAirDelivered(compressor, receiver.cutIn), 'L_per_min'),
    unit: 'L/min',
    sense: 'most',
    hard: false,
    source: demand.torchSource,
    remedy: 'a larger compressor or a second one; a receiver carries the rest for a time',
  });
}

function receiverLimit(drawdown: Drawdown, demand: AirDemand): Limit {
  return limitOf({
    id: 'air_receiver',
    title: 'Time for which the pressure at the regulator holds, looked at a tenth beyond the seam',
    demand: drawdown.below_from_s ?? LOOK_BEYOND * demand.time,
    capacity: demand.time,
    unit: 's',
    sense: 'least',
    hard: isFirm(demand.regulator.source) && isFirm(demand.torchSource),
    source: demand.regulator.source,
    remedy: 'a larger receiver or compressor, or a pause in which the receiver fills',
  });
}
