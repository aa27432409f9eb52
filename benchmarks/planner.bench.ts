/**
 * How good and how quick the planner is. Parts, each of which can be run alone by `npm run bench -- --only planner --part NAME`:
 * `jobs` (seventeen ordinary ones), `exhaustive` (against a search with code of its own), `seeds`, `learning`, `replan`.
 */
import { againstExhaustive } from './planner/against-exhaustive.ts';
import { learningCurve } from './planner/learning-curve.ts';
import { ordinaryJobs } from './planner/ordinary-jobs.ts';
import { replanning } from './planner/replan.ts';
import { tenSeeds } from './planner/ten-seeds.ts';
import { machineLine } from './timing.ts';

const PARTS: Readonly<Record<string, () => void>> = {
  jobs: ordinaryJobs,
  exhaustive: againstExhaustive,
  seeds: tenSeeds,
  learning: learningCurve,
  replan: replanning,
};

const [wanted] = process.argv.slice(2);
const parts = Object.keys(PARTS).filter((name) => wanted === undefined || name === wanted);
if (parts.length === 0) {
  console.error(`There is no part ${wanted}; there are ${Object.keys(PARTS).join(', ')}.`);
  process.exitCode = 2;
} else {
  console.log(machineLine());
  for (const name of parts) PARTS[name]!();
}
