import { runLayers } from './run-layers.ts';
import type { RowsRead, RunDemand, RunOutcomes, Setup } from './run-record.ts';
import { runWithRunIn } from './run-with-run-in.ts';
import type { ShopDraws } from './shop-draws.ts';

export {
  NOT_READ,
  type RowsRead,
  type RunDemand,
  type RunOutcomes,
  rowsFor,
  type Setup,
} from './run-record.ts';

/**
 * Runs a set-up in every shop and reads what came out: one value per shop of depths, widths, times and passes.
 *
 * What is common to a job is one value per shop, each pass has its own, and the floor's least and greatest along the
 * seam come from courses of the process drawn on a fine grid for that length. The courses of several layers add up to
 * one of the same process, as strong as the root of the summed squares of their parts; a stop's stations lie on
 * a course that is correlated with it as those of the layers so far are. No pass cuts deeper than the energy balance allows.
 * Rows of the tables are written into `rows`, where it is handed in.
 */
export function runPlan(setup: Setup, demand: RunDemand, draws: ShopDraws, rows?: RowsRead): RunOutcomes {
  const out = emptyOutcomes(draws.count);
  if (setup.way.tryout?.kind === 'run_in') runWithRunIn(setup, demand, draws, out, rows);
  else runLayers(setup, demand, draws, out, rows);
  return out;
}

/** Lists of numbers that a run fills [-]. */
const OUTCOMES = 9;

function emptyOutcomes(count: number): RunOutcomes {
  // One stretch of memory for all: so many small ones take longer to get and to give back than to fill.
  const memory = new ArrayBuffer(OUTCOMES * count * Float64Array.BYTES_PER_ELEMENT);
  let lists = 0;
  const list = (): Float64Array => {
    lists += 1;
    return new Float64Array(memory, (lists - 1) * count * Float64Array.BYTES_PER_ELEMENT, count);
  };
  return {
    deepest: list(),
    shallowest: list(),
    depth: list(),
    widthLeast: list(),
    widthMost: list(),
    width: list(),
    travelTime: list(),
    passes: list(),
    gauged: list(),
    notRun: new Uint8Array(count),
  };
}
