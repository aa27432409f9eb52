import { RIG_CHANGES, type RigChange, ROUND_DEPTHS, type RoundDepth } from '@furrow/engine';
import { z } from 'zod';

/** How the page is worked with: the whole list, or a round one check at a time. */
export type RoundView = 'list' | RoundDepth;

/** Where a person at the rig is. */
export interface RoundPlace {
  readonly view: RoundView;
  readonly changed: readonly RigChange[];
  /** Identifier of the check that is shown; the end of the round where it is `end`. */
  readonly check: string | undefined;
}

const START: RoundPlace = { view: 'list', changed: [], check: undefined };

const placeSchema = z.object({
  view: z.enum(['list', ...ROUND_DEPTHS]),
  changed: z.array(z.enum(RIG_CHANGES)),
  check: z.string().optional(),
});

function keyOf(job: string): string {
  return `furrow.round.${job}`;
}

/** Where the person at this tablet was, so that a reload goes on from there; the whole list where nothing is kept. */
export function roundPlaceOf(memory: Storage, job: string): RoundPlace {
  try {
    const kept = placeSchema.safeParse(JSON.parse(memory.getItem(keyOf(job)) ?? 'null'));
    return kept.success ? { ...kept.data, check: kept.data.check } : START;
  } catch {
    return START;
  }
}

/** Keeps where the person is; a full or closed memory is no reason to stop. */
export function keepRoundPlace(memory: Storage, job: string, place: RoundPlace): void {
  try {
    memory.setItem(keyOf(job), JSON.stringify(place));
  } catch {
    // the round begins at its first check after a reload
  }
}
