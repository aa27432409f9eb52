import type { FaultCause, FaultObservable, FaultOutcome, OutcomeChance } from './model.ts';

const BINARY: readonly FaultOutcome[] = ['yes', 'no'];
const TERNARY: readonly FaultOutcome[] = ['low', 'in', 'high'];

/** The outcomes an observable can have. */
export function outcomesOf(observable: FaultObservable): readonly FaultOutcome[] {
  return 'yes' in observable.otherwise ? BINARY : TERNARY;
}

/** Chance of an outcome the row has; one it cannot have is a bug of the caller. */
export function chanceIn(chance: OutcomeChance, outcome: FaultOutcome): number {
  if ('yes' in chance) {
    if (outcome === 'yes') return chance.yes;
    if (outcome === 'no') return 1 - chance.yes;
  } else {
    if (outcome === 'low') return chance.low;
    if (outcome === 'high') return chance.high;
    if (outcome === 'in') return 1 - chance.low - chance.high;
  }
  throw new RangeError(`no chance is stated for "${outcome}"`);
}

/** Chance that a cause shows an outcome; a cause that does not bear on the observable leaves it as it is otherwise. */
export function chanceUnder(cause: FaultCause, observable: FaultObservable, outcome: FaultOutcome): number {
  return chanceIn(cause.shows[observable.id] ?? observable.otherwise, outcome);
}

/** The weights of the causes, brought to the sum 1. */
export function priorOf(causes: readonly FaultCause[]): number[] {
  const total = causes.reduce((sum, cause) => sum + cause.weight, 0);
  return causes.map((cause) => cause.weight / total);
}
