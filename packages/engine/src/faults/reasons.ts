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

const TOLD = { low: 'low', high: 'high', in: 'as it should be' } as const;

/** What was seen, as the start of a sentence. */
function told({ observable, outcome }: Seen): string {
  const { title } = observable;
  if (outcome === 'yes') return `There was ${title}`;
  if (outcome === 'no') return `There was no sign of ${title}`;
  return `${title.charAt(0).toUpperCase()}${title.slice(1)} ${TOLD[outcome]}`;
}

function times(ratio: number): string {
  return ratio >= 10 ? String(Math.round(ratio)) : String(Number(ratio.toFixed(1)));
}

/** How many times likelier each cause makes one thing seen than the other causes do together, by their weights. */
function ratiosOf(model: FaultModel, prior: readonly number[], { observable, outcome }: Seen): number[] {
  const chances = model.causes.map((cause) => chanceUnder(cause, observable, outcome));
  return chances.map((own, place) => {
    // Summed without the cause's own part: taking that off the whole would lose all figures where its weight is nearly 1.
    let others = 0;
    for (let index = 0; index < chances.length; index += 1) {
      if (index !== place) others += prior[index]! * chances[index]!;
    }
    return (own * (1 - prior[place]!)) / others;
  });
}

/** For each cause the pieces of evidence that speak for or against it, the weightiest first. */
export function reasonsOf(model: FaultModel, seen: readonly Seen[]): FaultReason[][] {
  const prior = priorOf(model.causes);
  const reasons: FaultReason[][] = model.causes.map(() => []);
  for (const item of seen) {
    for (const [place, ratio] of ratiosOf(model, prior, item).entries()) {
      if (ratio < SPEAKS_FROM && ratio > 1 / SPEAKS_FROM) continue;
      const speaks = ratio >= 1 ? 'for' : 'against';
      const size =
        speaks === 'for' ? `${times(ratio)} times likelier` : `${times(1 / ratio)} times less likely`;
      const words = `${told(item)}: ${size} with this cause than with the others.`;
      reasons[place]!.push({ observable: item.observable.id, speaks, ratio, words });
    }
  }
  const size = ({ ratio }: FaultReason): number => Math.abs(Math.log(ratio));
  return reasons.map((list) => list.sort((a, b) => size(b) - size(a)));
}
