import type { FaultModel } from './model.ts';
import { chanceUnder, priorOf } from './outcome-chance.ts';
import type { Seen } from './read-evidence.ts';

/** A piece of evidence speaks for a cause from this ratio on, and against it from its inverse [-]. */
const SPEAKS_FROM = 1.5;

/** What one piece of evidence says about one cause. */
export interface FaultReason {
  /** Identifier of what was seen. */
  readonly observable: string;
  readonly speaks: 'for' | 'against';
  /** How many times likelier it is with this cause than with the other causes [-]. */
  readonly ratio: number;
  readonly words: string;
}

const TOLD = { low: 'a low', high: 'a high', in: 'an in-band' } as const;

/** What was seen, as the start of a sentence. */
function told({ observable, outcome }: Seen): string {
  const { title } = observable;
  if (outcome === 'yes') return `There was ${title}`;
  if (outcome === 'no') return `There was not ${title}`;
  return `There was ${TOLD[outcome]} reading of ${title}`;
}

function times(ratio: number): string {
  return ratio >= 10 ? String(Math.round(ratio)) : String(Number(ratio.toFixed(1)));
}

/** The pieces of evidence that speak for or against a cause, the weightiest first. */
export function reasonsOf(model: FaultModel, seen: readonly Seen[], place: number): FaultReason[] {
  const prior = priorOf(model.causes);
  const cause = model.causes[place]!;
  const reasons = seen.flatMap((item): FaultReason[] => {
    const own = chanceUnder(cause, item.observable, item.outcome);
    let others = 0;
    for (const [index, other] of model.causes.entries()) {
      if (index !== place) others += prior[index]! * chanceUnder(other, item.observable, item.outcome);
    }
    const ratio = (own * (1 - prior[place]!)) / others;
    if (ratio < SPEAKS_FROM && ratio > 1 / SPEAKS_FROM) return [];
    const speaks = ratio >= 1 ? 'for' : 'against';
    const size =
      speaks === 'for' ? `${times(ratio)} times likelier` : `${times(1 / ratio)} times less likely`;
    const words = `${told(item)}: ${size} with this cause than with the others.`;
    return [{ observable: item.observable.id, speaks, ratio, words }];
  });
  return reasons.sort((a, b) => Math.abs(Math.log(b.ratio)) - Math.abs(Math.log(a.ratio)));
}
