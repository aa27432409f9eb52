import type { Limit, Verdict } from './limit.ts';

/** Share of the capacity from which a demand is called tight [-]. */
const TIGHT_SHARE = 0.95;
/** Relative slack that rounding may use up without a limit failing [-]. */
const ROUNDING = 1e-9;

/** A limit before its verdict is worked out. */
export type LimitStatement = Omit<Limit, 'verdict' | 'sensitivity'>;

/**
 * Works out the verdict of a limit.
 *
 * A demand beyond the capacity fails; one within 5 % of it is tight; any other holds. Zero capacity is
 * compared by sign alone.
 *
 * @param statement - demand, capacity and what belongs to them [record], demand and capacity finite
 * @returns the limit with its verdict [record]
 * @source none: bookkeeping
 * @example
 * limitOf({ id: 'x', title: 'x', demand: 96, capacity: 100, unit: 'A', sense: 'most', hard: true, source: { text: 'x', provenance: 'derived' }, remedy: '' }).verdict // => "tight"
 */
export function limitOf(statement: LimitStatement): Limit {
  return { ...statement, verdict: verdictOf(statement), sensitivity: [] };
}

function verdictOf({ demand, capacity, sense }: LimitStatement): Verdict {
  const room = sense === 'most' ? capacity - demand : demand - capacity;
  const scale = Math.abs(capacity);
  // Written so that a demand that is no number fails.
  if (!(room >= -ROUNDING * scale)) return 'fails';
  return room <= (1 - TIGHT_SHARE) * scale ? 'tight' : 'holds';
}
