import { beliefOfJob, type KitElectrode, type RemovalBelief } from '@furrow/engine';
import { SHOP_JOBS } from './jobs.ts';
import { crewRuns } from './own-crew.ts';
import { jobOf, objectiveOf, planOf, startingBelief } from './planned.ts';
import { learnedFrom, trueShop } from './true-shop.ts';

/** Trials learned from [-], and true standard deviations over the starting ones [-]. */
const TRIALS = [0, 3, 10, 30] as const;
const FACTORS = [0.5, 1, 2] as const;
/** True shops per point, and jobs of each that are run by its plan [-]. */
const SHOPS = 12;
const RUNS = 400;
/** Jobs of the list that are followed. */
const FOLLOWED = [0, 1] as const;

/** How the objective falls and the promise heals as a shop learns, in shops that vary less and more than was taken at first. */
export function learningCurve(): void {
  console.log(
    `\nLearning: ${SHOPS} true shops per line, ${RUNS} jobs of each run point by point; chances promised, and kept on the mean`,
  );
  for (const index of FOLLOWED) {
    const { name, document } = SHOP_JOBS[index]!;
    const job = jobOf(document);
    const electrode = job.kit.electrodes.find(({ diameter }) => Math.abs(diameter - 12.7e-3) < 1e-4)!;
    console.log(name);
    for (const factor of FACTORS) {
      for (const trials of TRIALS) {
        let [planned, money, promisedReach, reach, promisedRoom, room, worst] = [0, 0, 0, 0, 0, 0, 1];
        for (let each = 0; each < SHOPS; each += 1) {
          const shop = trueShop(900 + each, factor);
          const belief = beliefAfter(electrode, shop, trials, each);
          const plan = planOf(job, belief);
          if (typeof plan === 'string' || plan.pattern.tracks > 1) continue;
          const came = crewRuns(plan, job, belief, shop, RUNS, 7000 + each);
          planned += 1;
          money += objectiveOf(plan, job);
          promisedReach += plan.chances.reached;
          promisedRoom += plan.chances.notTooDeep;
          reach += came.reached;
          room += came.notTooDeep;
          worst = Math.min(worst, came.reached, came.notTooDeep);
        }
        const mean = (sum: number): string => (sum / planned).toFixed(3);
        console.log(
          `  true spread ${factor} of the starting one, ${String(trials).padStart(2)} trials: ${planned} planned, ${(money / planned).toFixed(0)} EUR; reached ${mean(promisedReach)} promised, ${mean(reach)} kept; not too deep ${mean(promisedRoom)} promised, ${mean(room)} kept; worst shop ${worst.toFixed(3)}`,
        );
      }
    }
    function beliefAfter(
      own: KitElectrode,
      shop: ReturnType<typeof trueShop>,
      trials: number,
      seed: number,
    ): RemovalBelief {
      if (trials === 0) return startingBelief(job);
      const { wanted } = job.groove.depth;
      return beliefOfJob(job, learnedFrom(shop, job, own, 900, wanted, trials, 300 + seed));
    }
  }
}
