import {
  type Answer,
  answerCost,
  type CostAnswer,
  type CostChangeReport,
  coolingForCost,
  type ReadJob,
  type ReadKit,
  tryCostChanges,
} from '@furrow/engine';
import { learnedFrom } from './learned-from.ts';
import type { WorkerLink, WorkStep } from './protocol.ts';

/** A planned job whose time and money are asked for. */
export interface CostRequest {
  readonly read: ReadJob;
  readonly answer: Answer;
  /** The kit that the answer was made with. */
  readonly kit?: ReadKit | undefined;
  /** Text of the trials that the answer was made with. */
  readonly knowledge?: string | undefined;
}

/** What comes of it: the cost, then each change that was tried. */
export type CostPart =
  | { readonly is: 'cost'; readonly cost: CostAnswer }
  | { readonly is: 'change'; readonly change: CostChangeReport };

/** The worker of time and money. */
export type CostWorker = WorkerLink<CostRequest, CostPart>;

/** The cost at once, then again with the cooling waits of a look at the heat, then the changes one by one. */
export function* costParts({ read, answer, kit, knowledge }: CostRequest): Generator<WorkStep<CostPart>> {
  let cost = answerCost(read, answer);
  yield { is: 'part', part: { is: 'cost', cost } };
  const options = coolingForCost(read, answer, learnedFrom(knowledge));
  if (options.heat !== undefined) {
    cost = answerCost(read, answer, options);
    yield { is: 'part', part: { is: 'cost', cost } };
  }
  if (cost.kind !== 'cost') return;
  for (const change of tryCostChanges(read, answer, cost, kit, options)) {
    yield { is: 'part', part: { is: 'change', change } };
  }
}
