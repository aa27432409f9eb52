import type { Issue, Outcome } from '../../issue/index.ts';
import { type Limit, type LimitFunction, limitOf, type Source } from '../../limit/index.ts';
import type { Sentence } from '../../quantity/index.ts';
import { type DutyInterval, passDuty } from '../duty/index.ts';
import type { AirDemand, SourcedPressure } from './air-demand.ts';
import { type AirPoint, airPoint } from './air-point.ts';
import { airRemedy } from './air-remedy.ts';
import type { AirSupply } from './air-supply.ts';
import { checkAir } from './check-air.ts';
import { freeAirDelivered } from './compressor-delivery.ts';
import { type Drawdown, drawdownFollower } from './drawdown.ts';

/** Part of the time of blowing that is looked at beyond its end, so that a receiver that just holds is told apart [-]. */
const LOOK_BEYOND = 0.1;
/** Duties whose limits are kept, so that none is followed twice in a row [-]. */
const REMEMBERED_MOST = 500;
const QUICK: Source = {
  text: 'drawn quickly, the air in the receiver cools and its pressure falls up to 1.4 times as fast: whether it does, only a trial tells',
  provenance: 'derived',
};

/**
 * Margins of the air supply over all passes of a setting: pressures while flowing, compressor, receiver.
 *
 * The receiver is carried through every pass and the pauses between them; pressures are those at the lowest it comes to
 * while the torch blows. A limit is hard only where what it rests on is the shop's own, or confirmed; the compressor alone
 * is soft, since a receiver may carry what it lacks. Where only a draw so quick that no heat comes from the receiver's
 * wall fails a limit, that end of the band is told, and turns no plan away. A remedy is tried before it is named.
 *
 * @param supply - the air supply [record], see AirSupply
 * @param demand - least pressures with their sources [record], pressures > 0
 * @returns the limit function, or what is wrong with the supply [record]
 * @source as airPoint and airDrawdown; pressures as their sources say
 * @example
 * const supply = { atmosphere: 101325, temperature: 293.15, compressor: { delivery: [{ pressure: 8e5, freeAir: 0.03 }] }, receiver: { volume: 0.5, cutIn: 7e5, cutOut: 8e5 }, path: [], torch: { kind: 'conductance', conductance: 3e-8, criticalRatio: 0.5 } };
 * const limits = airLimits(supply, { regulator: REGULATOR_PRESSURE, torch: TORCH_PRESSURE, torchSource: { text: 'measured', provenance: 'job file' } });
 * limits.value({ passLength: 3, travel: 0.01, tracks: 1, layers: 1 }, { rates: { start_time: 60, return_travel: 0.05 } }).map((limit) => limit.verdict) // => ["holds","holds","holds","holds"]
 */
export function airLimits(supply: AirSupply, demand: AirDemand): Outcome<LimitFunction> {
  const issues = checkAir(supply);
  if (issues.length > 0) return { ok: false, issues };
  const follow = drawdownFollower(supply, { pressure: demand.regulator.value, at: 'regulator' });
  if (!follow.ok) return { ok: true, value: () => [noAir(follow.issues, demand)] };
  const known = new Map<string, readonly Limit[]>();
  return {
    ok: true,
    value: (candidate, job) => {
      // To the second, the worse way: a receiver does not tell shorter times apart.
      const duty = passDuty(candidate, job).map(({ arc, duration }) => ({
        arc,
        duration: arc ? Math.max(1, Math.ceil(duration)) : Math.floor(duration),
      }));
      const key = `${duty.length} ${duty[0]!.duration} ${duty[1]?.duration}`;
      const found = known.get(key) ?? limitsOver(supply, demand, duty, follow.value);
      if (known.size >= REMEMBERED_MOST) known.clear();
      known.set(key, found);
      return found;
    },
  };
}

function limitsOver(
  supply: AirSupply,
  demand: AirDemand,
  duty: readonly DutyInterval[],
  follow: (duty: readonly DutyInterval[]) => Drawdown,
): readonly Limit[] {
  const course = follow(duty);
  const lowest = airPoint(supply, course.lowest);
  if (!lowest.ok) return [noAir(lowest.issues, demand)];
  const quick = airPoint(supply, course.lowestQuick);
  // Both pressures and the time fail together, and one change mends them: it is looked for once.
  let found: Sentence | undefined;
  const remedy = (): Sentence => {
    found ??= airRemedy(supply, demand, duty);
    return found;
  };
  const pressure = (id: string, title: string, at: 'regulator' | 'torch'): Limit => {
    const flowing = { slow: lowest.value[at], quick: quick.ok ? quick.value[at] : 0 };
    return pressureLimit({ id, title, remedy }, flowing, demand[at], demand);
  };
  return [
    pressure('air_regulator', 'Flowing pressure at the regulator', 'regulator'),
    pressure('air_torch', 'Flowing pressure before the torch', 'torch'),
    compressorLimit(supply, lowest.value, demand, () =>
      holds(course, demand, lowest.value.torch)
        ? 'nothing for this job: the receiver carries the rest'
        : remedy(),
    ),
    receiverLimit(follow(longer(duty)), { demand, remedy, time: blowing(duty) }),
  ];
}

/** A duty whose last pass goes on for a part of the time of blowing. */
function longer(duty: readonly DutyInterval[]): readonly DutyInterval[] {
  const more = LOOK_BEYOND * blowing(duty);
  return duty.map((interval, i) =>
    i === duty.length - 1 ? { ...interval, duration: interval.duration + more } : interval,
  );
}

/** Time for which the torch blows [s]. */
function blowing(duty: readonly DutyInterval[]): number {
  return duty.reduce((sum, { arc, duration }) => (arc ? sum + duration : sum), 0);
}

/** Statements that may turn a plan away: the shop's own, and confirmed ones. */
function isFirm({ provenance }: Source): boolean {
  return provenance === 'job file' || provenance === 'confirmed' || provenance === 'derived';
}

type Named = Pick<Limit, 'id' | 'title'> & { readonly remedy: () => Sentence };

function pressureLimit(
  named: Named,
  flowing: { readonly slow: number; readonly quick: number },
  wanted: SourcedPressure,
  demand: AirDemand,
): Limit {
  const statement = (pressure: number, firm: boolean, source: Source) =>
    limitOf({
      ...named,
      demand: pressure,
      capacity: wanted.value,
      unit: 'kPa',
      sense: 'least',
      hard: firm,
      source,
    });
  const slow = statement(flowing.slow, isFirm(wanted.source) && isFirm(demand.torchSource), wanted.source);
  const quick = statement(flowing.quick, false, QUICK);
  return slow.verdict !== 'fails' && quick.verdict === 'fails' ? quick : slow;
}

function holds({ below }: Drawdown, { torch }: AirDemand, flowing: number): boolean {
  return below === undefined && flowing >= torch.value * (1 - 1e-9);
}

function compressorLimit(
  { compressor, receiver }: AirSupply,
  point: AirPoint,
  demand: AirDemand,
  remedy: () => Sentence,
): Limit {
  return limitOf({
    id: 'air_compressor',
    title: 'Free air taken, against what the compressor delivers at the cut-in',
    demand: point.receiverFlow,
    capacity: freeAirDelivered(compressor, receiver.cutIn),
    unit: 'L/min',
    sense: 'most',
    hard: false,
    source: demand.torchSource,
    remedy,
  });
}

function receiverLimit(
  { below, belowQuick }: Drawdown,
  {
    demand,
    remedy,
    time,
  }: { readonly demand: AirDemand; readonly remedy: () => Sentence; readonly time: number },
): Limit {
  const beyond = (1 + LOOK_BEYOND) * time;
  const statement = (from: number | undefined, firm: boolean, source: Source) =>
    limitOf({
      id: 'air_receiver',
      title: 'Arc time for which the pressure at the regulator holds, looked at a tenth beyond the last pass',
      demand: from ?? beyond,
      capacity: time,
      unit: 's',
      sense: 'least',
      hard: firm,
      source,
      remedy,
    });
  const { source } = demand.regulator;
  const slow = statement(below?.blown, isFirm(source) && isFirm(demand.torchSource), source);
  const quick = statement(belowQuick?.blown, false, QUICK);
  return slow.verdict !== 'fails' && quick.verdict === 'fails' ? quick : slow;
}

/** The one margin of an air supply that brings no air to the torch at all. */
function noAir(issues: readonly Issue[], { torch }: AirDemand): Limit {
  return limitOf({
    id: 'air_torch',
    title: 'Flowing pressure before the torch',
    demand: 0,
    capacity: torch.value,
    unit: 'kPa',
    sense: 'least',
    hard: true,
    source: { text: 'the air supply as the kit describes it', provenance: 'job file' },
    remedy: issues.map(({ message }) => message).join(' '),
  });
}
