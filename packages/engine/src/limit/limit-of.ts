import { inUnit, type Sentence } from '../quantity/index.ts';
import type { Limit, Verdict } from './limit.ts';

/** Share of the capacity from which a demand is called tight [-]. */
const TIGHT_SHARE = 0.95;
/** Relative slack that rounding may use up without a limit failing [-]. */
const ROUNDING = 1e-9;

/** A limit as a room states it: demand and capacity in SI, and the unit in which results state them. */
export interface LimitStatement
  extends Omit<Limit, 'verdict' | 'sensitivity' | 'demand' | 'capacity' | 'remedy'> {
  /** What the setting asks for [SI unit of `unit`]. */
  readonly demand: number;
  /** What there is [SI unit of `unit`]. */
  readonly capacity: number;
  /** Width of the window that the demand is set in, where it has another end too: tight is told by it [SI unit of `unit`]. */
  readonly window?: number;
  /** What to change if it fails, in words; where it takes work to find, a function that is asked when it is read. */
  readonly remedy: Sentence | (() => Sentence);
}

/**
 * States a limit: converts demand and capacity to its unit, and works out its verdict.
 *
 * A demand beyond the capacity fails; one within 5 % of it, or of the window that it is set in, is tight; any other holds. Zero
 * capacity is compared by sign alone.
 *
 * @param statement - demand, capacity and what belongs to them [record], demand and capacity finite, in SI
 * @returns the limit with its verdict [record]
 * @source none: bookkeeping
 * @example
 * limitOf({ id: 'x', title: 'x', demand: 96, capacity: 100, unit: 'A', sense: 'most', hard: true, source: { text: 'x', provenance: 'derived' }, remedy: '' }).verdict // => "tight"
 */
export function limitOf({ remedy, window, ...statement }: LimitStatement): Limit {
  const demand = inUnit(statement.demand, statement.unit);
  const capacity = inUnit(statement.capacity, statement.unit);
  const near = window === undefined ? Math.abs(capacity) : inUnit(window, statement.unit);
  const verdict = verdictOf({ ...statement, demand, capacity }, near);
  const limit = { ...statement, demand, capacity, remedy: '', verdict, sensitivity: [] };
  if (typeof remedy !== 'function') return { ...limit, remedy };
  let found: Sentence | undefined;
  return Object.defineProperty(limit, 'remedy', {
    enumerable: true,
    configurable: true,
    get: () => {
      found ??= remedy();
      return found;
    },
  });
}

function verdictOf(
  { demand, capacity, sense }: Pick<Limit, 'demand' | 'capacity' | 'sense'>,
  near: number,
): Verdict {
  const room = sense === 'most' ? capacity - demand : demand - capacity;
  const scale = Math.abs(capacity);
  // Written so that a demand that is no number fails.
  if (!(room >= -ROUNDING * scale)) return 'fails';
  return room <= (1 - TIGHT_SHARE) * near ? 'tight' : 'holds';
}
