import { expect, it } from 'vitest';
import { metalOf } from '../material/index.ts';
import { mixtureProbability } from '../numeric/index.ts';
import { lnDepthParts } from '../removal/index.ts';
import { beliefOfFamily, learnFrom } from './knowledge.ts';
import { FAMILY, GAUGE_SD, gaugedJobs, trueShop } from './shop.test-support.ts';

const METAL = metalOf('carbon_steel');
const SHOPS = 50;
const JOBS_AHEAD = 20;

/** Share of readings of new jobs that lie inside the 90 % band of shops that have learned from so many jobs. */
function coverage(factor: number, jobs: number): number {
  let inside = 0;
  for (let index = 0; index < SHOPS; index += 1) {
    const shop = trueShop(1000 + index, factor);
    const known = learnFrom({ shop: 'yard', id: 'x', observations: gaugedJobs(shop, jobs, 5000 + index) });
    const belief = beliefOfFamily(known, METAL, FAMILY);
    for (const { passes } of gaugedJobs(shop, JOBS_AHEAD, 9000 + index, 1)) {
      const [{ setting, stations }] = passes as [(typeof passes)[number]];
      const { depth } = stations[2]!;
      const read = lnDepthParts(belief, setting).map((part) => ({
        ...part,
        variance: part.variance + (GAUGE_SD / depth) ** 2,
      }));
      const place = mixtureProbability(read, Math.log(depth / setting.diameter));
      if (place > 0.05 && place < 0.95) inside += 1;
    }
  }
  return inside / (SHOPS * JOBS_AHEAD);
}

// Stated where it falls short of 88 to 92 %: a shop twice as unsteady as the starting values is promised too much before
// it has learned (0.72), and still a little after ten jobs (0.86); one half as unsteady is promised too little.
it.each([
  [1, 0, 0.94, 1],
  [1, 10, 0.88, 0.93],
  [0.5, 10, 0.93, 0.99],
  [2, 0, 0.62, 0.8],
  [2, 10, 0.83, 0.9],
])(
  'spreads %f times the starting values, after %d jobs: share of readings inside the band from %f to %f',
  (factor, jobs, least, most) => {
    const seen = coverage(factor, jobs);
    expect(seen).toBeGreaterThan(least);
    expect(seen).toBeLessThanOrEqual(most);
  },
);
