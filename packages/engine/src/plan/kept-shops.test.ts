import { expect, it } from 'vitest';
import { shopsOf } from './kept-shops.ts';
import { drawShops } from './shop-draws.ts';
import { posteriorOf } from './solve-task.test-support.ts';
import { testJob } from './test-job.test-support.ts';

const posterior = posteriorOf(testJob().job);
const SERIES = ['level', 'slope', 'angle', 'spread', 'extraWidth', 'laterFactor', 'wear'] as const;

it('gives the shops that drawing them anew gives', () => {
  shopsOf(posterior, 50, 3);
  const again = shopsOf(posteriorOf(testJob().job), 50, 3);
  const anew = drawShops(posterior, 50, 3);
  for (const series of SERIES) expect(again[series]).toEqual(anew[series]);
  for (const angleTerm of [0, 1, 0]) {
    expect(again.passLift(2, angleTerm)).toEqual(anew.passLift(2, angleTerm));
    expect(again.passNoise(1)).toEqual(anew.passNoise(1));
  }
  expect(again.passLift(2, 1)).not.toEqual(again.passLift(2, 0));
});

it('does not mix up beliefs, counts or seeds, however many are asked for', () => {
  const wider = {
    ...posterior,
    depth: posterior.depth.map((node) => ({ ...node, levels: { ...node.levels, pass: 0.9 } })),
  };
  for (let seed = 1; seed < 30; seed += 1) {
    expect(shopsOf(posterior, 20, seed).level).toEqual(drawShops(posterior, 20, seed).level);
  }
  expect(shopsOf(wider, 20, 1).level).toEqual(drawShops(wider, 20, 1).level);
  expect(shopsOf(wider, 20, 1).level).not.toEqual(shopsOf(posterior, 20, 1).level);
  expect(shopsOf(posterior, 21, 1).count).toBe(21);
});
