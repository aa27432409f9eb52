import { answerCost, coolingForCost, tryCostChanges } from '@furrow/engine';
import type { CostReply, CostRequest } from './cost-message.ts';
import { learnedFrom } from './learned-from.ts';
/** What a run uses; a test hands in tools of its own. */
export interface CostRunTools {
  readonly reply: (reply: CostReply) => void;
  /** Lets newer requests come in. */
  readonly pause: () => Promise<void>;
}

/**
 * Takes requests: the cost of the newest at once, then again with the cooling waits of a look at the heat, then the
 * changes one by one, until another request is there.
 */
export function costRun({ reply, pause }: CostRunTools): (request: CostRequest) => Promise<void> {
  let newest = 0;
  return async (request) => {
    newest += 1;
    const turn = newest;
    const { id, read, answer, kit } = request;
    try {
      const first = answerCost(read, answer);
      reply({ id, is: 'cost', cost: first });
      await pause();
      if (turn !== newest) return;
      const options = coolingForCost(read, answer, learnedFrom(request.knowledge));
      const cost = options.heat === undefined ? first : answerCost(read, answer, options);
      if (cost !== first) reply({ id, is: 'cost', cost });
      await pause();
      if (cost.kind === 'cost') {
        const changes = tryCostChanges(read, answer, cost, kit, options);
        // each step plans once, so a newer request is looked for before it
        while (turn === newest) {
          const step = changes.next();
          if (step.done === true) break;
          reply({ id, is: 'change', change: step.value });
          await pause();
        }
      }
      if (turn === newest) reply({ id, is: 'done' });
    } catch (error) {
      reply({ id, is: 'failure', message: error instanceof Error ? error.message : String(error) });
    }
  };
}
