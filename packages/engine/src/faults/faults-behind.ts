import { z } from 'zod';
import type { Stated } from '../limit/index.ts';
import { EXPLAINS_FROM } from './check-fault-model.ts';
import type { FaultModel, FaultOutcome } from './model.ts';
import { chanceIn, chanceUnder, priorOf } from './outcome-chance.ts';

/** A cause that explains an outcome. */
export const faultBehindSchema = z
  .object({
    cause: z.string().describe('Identifier of the cause.'),
    title: z.string().describe('Name, in words.'),
    remedy: z.string().describe('What mends it, in words.'),
  })
  .meta({ id: 'FaultBehind', description: 'A cause that explains an outcome.' });

/** A cause that explains an outcome. */
export type FaultBehind = Stated<typeof faultBehindSchema>;

/**
 * Names the causes that explain one outcome: those that make it at least three times likelier than otherwise.
 *
 * The order is by weight times chance: how likely each is when nothing else is known.
 *
 * @param model - the table of faults [record], one that checkFaultModel accepts
 * @param observable - symptom, inspection or reading [text], an identifier of the table
 * @param outcome - what it showed [text], yes or no; low, in or high for a reading
 * @returns the causes, the likeliest first; none for a name the table does not hold [list]
 * @source judgement, no source
 * @example
 * faultsBehind(FAULT_MODEL, 'flowing_pressure', 'low').map((behind) => behind.cause) // => ["low_air"]
 */
export function faultsBehind(
  model: FaultModel,
  observable: string,
  outcome: FaultOutcome,
): readonly FaultBehind[] {
  const item = model.observables.find(({ id }) => id === observable);
  if (item === undefined) return [];
  const prior = priorOf(model.causes);
  return model.causes
    .map((cause, index) => ({ cause, chance: chanceUnder(cause, item, outcome), prior: prior[index]! }))
    .filter(({ chance }) => chance >= EXPLAINS_FROM * chanceIn(item.otherwise, outcome))
    .sort((a, b) => b.prior * b.chance - a.prior * a.chance)
    .map(({ cause }) => ({ cause: cause.id, title: cause.title, remedy: cause.remedy }));
}
