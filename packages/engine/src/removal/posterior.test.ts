import { describe, expect, it } from 'vitest';
import { metalOf } from '../material/index.ts';
import type { RemovalRow } from './fit-prior.ts';
import { publishedPosterior, updatePosterior } from './posterior.ts';
import { predictDepth, predictWear, predictWidth } from './prediction.ts';

const PRIOR = publishedPosterior(metalOf('carbon_steel'), 'flat');
const SETTING = { diameter: 0.0127, current: 850, voltage: 42, travel: 0.0148, pushAngle: Math.PI / 4 };
const trial = (more: Partial<RemovalRow> = {}): RemovalRow => ({
  id: 'trial',
  setting: SETTING,
  depth: 0.011,
  ...more,
});

describe('updatePosterior', () => {
  it('moves the depth towards what was measured and narrows its interval', () => {
    const before = predictDepth(PRIOR, SETTING);
    const one = predictDepth(updatePosterior(PRIOR, [trial()]), SETTING);
    const ten = predictDepth(updatePosterior(PRIOR, Array(10).fill(trial())), SETTING);
    expect(before.p50).toBeLessThan(0.011);
    expect(one.p50).toBeGreaterThan(before.p50);
    expect(one.p50).toBeLessThan(0.011);
    expect(Math.abs(ten.p50 - 0.011)).toBeLessThan(Math.abs(one.p50 - 0.011));
    expect(ten.p95 / ten.p05).toBeLessThan(one.p95 / one.p05);
    expect(one.p95 / one.p05).toBeLessThan(before.p95 / before.p05);
  });

  it('comes to the same from all trials at once and one by one', () => {
    const trials = [trial(), trial({ depth: 0.009 }), trial({ depth: 0.012, width: 0.0165, wear: 0.0015 })];
    const stepwise = trials.reduce((known, one) => updatePosterior(known, [one]), PRIOR);
    const atOnce = updatePosterior(PRIOR, trials);
    expect(predictDepth(stepwise, SETTING).p05).toBeCloseTo(predictDepth(atOnce, SETTING).p05, 12);
    expect(stepwise.belief.wear).toEqual(atOnce.belief.wear);
  });

  it('learns width and wear from the trials that have them, and from no others', () => {
    const bare = updatePosterior(PRIOR, [trial()]);
    expect(bare.belief.extraWidth).toEqual(PRIOR.belief.extraWidth);
    expect(bare.belief.wear).toEqual(PRIOR.belief.wear);
    const wide = updatePosterior(PRIOR, Array(20).fill(trial({ width: 0.018 })));
    expect(predictWidth(wide, SETTING.diameter).p50).toBeGreaterThan(
      predictWidth(PRIOR, SETTING.diameter).p50,
    );
    const worn = updatePosterior(PRIOR, Array(20).fill(trial({ wear: 0.002 })));
    const wear = (posterior: typeof PRIOR) => predictWear(posterior, SETTING.diameter, SETTING.current).p50;
    expect(Math.abs(wear(worn) - 0.002)).toBeLessThan(Math.abs(wear(PRIOR) - 0.002) / 2);
  });

  it('counts the trials in its name and leaves the prior as it was', () => {
    const before = structuredClone(PRIOR);
    expect(updatePosterior(PRIOR, [trial(), trial()]).id).toBe('published-1/carbon_steel/flat+2');
    expect(updatePosterior(PRIOR, [])).toBe(PRIOR);
    expect(PRIOR).toEqual(before);
  });
});

describe('the widening for other work', () => {
  it('is the variance that is stated, on the level alone', () => {
    const wide = publishedPosterior(metalOf('cast_iron'), 'overhead').belief.depth;
    const known = PRIOR.belief.depth;
    expect(wide.mean).toEqual(known.mean);
    expect(wide.shape).toBe(known.shape);
    expect(wide.scale).toBe(known.scale);
    // 2 x 2 inverse of the first two coefficients; the third is apart from them.
    const covariance = ({ precision }: typeof known): [number, number] => {
      const [[a, b], [, d]] = precision as unknown as [[number, number], [number, number]];
      return [d / (a * d - b * b), a / (a * d - b * b)];
    };
    const noise = known.scale / (known.shape - 1);
    expect((covariance(wide)[0] - covariance(known)[0]) * noise).toBeCloseTo(0.25 ** 2 + 0.2 ** 2, 9);
    expect(covariance(wide)[1]).toBeCloseTo(covariance(known)[1], 9);
  });
});
