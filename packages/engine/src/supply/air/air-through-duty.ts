import type { Outcome } from '../../issue/index.ts';
import type { DutyInterval } from '../duty/index.ts';
import type { AirDemand } from './air-demand.ts';
import { type AirPoint, airPoint } from './air-point.ts';
import type { AirItem, AirSupply } from './air-supply.ts';
import { freeAirDelivered } from './compressor-delivery.ts';
import { type AirWish, airDrawdown, type Drawdown } from './drawdown.ts';
import { type HoseChanges, leastHoseChanges, type StockHose } from './hose-changes.ts';

/** The hose changes sought where a wanted pressure is not met at the cut-in. */
export interface RestoredPressure extends Pick<HoseChanges, 'reached' | 'changes' | 'before' | 'after'> {
  /** Where the pressure is too low. */
  readonly at: AirWish['at'];
  /** Pressure in the receiver for which they were sought: its cut-in [Pa gauge]. */
  readonly receiver: number;
  /** Flowing pressure that is asked for there [Pa gauge]. */
  readonly wanted: number;
}

/** The air from receiver to torch through all passes of a plan. */
export interface AirOutcome {
  readonly path: readonly AirItem[];
  readonly wanted: Pick<AirDemand, 'regulator' | 'torch'>;
  /** Pressures and flows at the lowest pressure in the receiver while the torch blows. */
  readonly point: AirPoint;
  /** Free air that the compressor delivers at its cut-in [m3/s]. */
  readonly delivered: number;
  readonly duty: readonly DutyInterval[];
  readonly drawdown: Drawdown;
  /** What restores the pressure at the cut-in; null where it is not too low there. */
  readonly changes: RestoredPressure | null;
}

/**
 * Follows the air of a supply through a duty: the receiver's course, the point of lowest pressure, and the hose changes
 * that would restore what is asked for.
 *
 * @param supply - the air supply [record], see AirSupply
 * @param wanted - flowing pressures that are asked for [record], > 0
 * @param duty - arc on and off in turn [list], from `passDuty`
 * @param stock - hoses in stock [list], lengths and bores > 0
 * @returns course, point and changes, or what is wrong with the supply [record]
 * @source as airDrawdown, airPoint and leastHoseChanges
 * @example
 * const hose = { kind: 'hose', id: 'hose', bore: 0.0095, length: 15, roughness: 1.5e-6, fittings: [] };
 * const supply = { atmosphere: 101325, temperature: 293.15, compressor: { delivery: [{ pressure: 8e5, freeAir: 0.02 }] }, receiver: { volume: 0.5, cutIn: 6e5, cutOut: 8e5 }, path: [hose], torch: { kind: 'conductance', conductance: 3e-8, criticalRatio: 0.5 } };
 * const wanted = { regulator: { value: 5.5e5 }, torch: { value: 4e5 } };
 * airThroughDuty(supply, wanted, [{ arc: true, duration: 60 }], [{ ...hose, id: 'wide', bore: 0.019, count: 1 }]).value.changes.changes // => [{"out":"hose","in":"wide"}]
 */
export function airThroughDuty(
  supply: AirSupply,
  wanted: Pick<AirDemand, 'regulator' | 'torch'>,
  duty: readonly DutyInterval[],
  stock: readonly StockHose[],
): Outcome<AirOutcome> {
  const drawdown = airDrawdown(supply, { pressure: wanted.regulator.value, at: 'regulator' }, duty);
  if (!drawdown.ok) return drawdown;
  const point = airPoint(supply, drawdown.value.lowest);
  if (!point.ok) return point;
  const changes = restoredPressure(supply, wanted, stock);
  if (!changes.ok) return changes;
  return {
    ok: true,
    value: {
      path: supply.path,
      wanted,
      point: point.value,
      delivered: freeAirDelivered(supply.compressor, supply.receiver.cutIn),
      duty,
      drawdown: drawdown.value,
      changes: changes.value,
    },
  };
}

/** The hose changes for the first of the wanted pressures that is not met at the cut-in. */
function restoredPressure(
  supply: AirSupply,
  { regulator, torch }: Pick<AirDemand, 'regulator' | 'torch'>,
  stock: readonly StockHose[],
): Outcome<RestoredPressure | null> {
  const { cutIn } = supply.receiver;
  const wishes: readonly AirWish[] = [
    { pressure: regulator.value, at: 'regulator' },
    { pressure: torch.value, at: 'torch' },
  ];
  for (const wish of wishes) {
    const found = leastHoseChanges(supply, wish, stock, cutIn);
    if (!found.ok) return found;
    const { reached, changes, before, after } = found.value;
    if (reached && changes.length === 0) continue;
    const { at, pressure: wanted } = wish;
    return { ok: true, value: { reached, changes, before, after, at, receiver: cutIn, wanted } };
  }
  return { ok: true, value: null };
}
