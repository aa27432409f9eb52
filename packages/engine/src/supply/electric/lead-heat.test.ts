import { describe, expect, it } from 'vitest';
import { OUT } from './kit.test-support.ts';
import { heatModelOf, leadHeatLoss } from './lead-heat.ts';

describe('heatModelOf', () => {
  it.each([16e-6, 95e-6, 240e-6])('tabulates the loss of a lead of %s m2 within 0.05 %', (area) => {
    const lead = { ...OUT, area };
    const model = heatModelOf(lead, 303.15);
    for (const temperature of [310, 330.4, 358.15, 399.99, 460, 473.15]) {
      const exact = leadHeatLoss(lead, temperature, 303.15);
      expect(Math.abs(model.lossAt(temperature) / exact - 1)).toBeLessThan(5e-4);
    }
  });

  it('loses nothing at ambient, and never more per kelvin than the covering passes', () => {
    const model = heatModelOf(OUT, 303.15);
    expect(model.lossAt(303.15)).toBe(0);
    for (let t = 304; t < 470; t += 7) {
      const slope = model.lossAt(t + 1) - model.lossAt(t);
      expect(slope).toBeGreaterThan(0);
      expect(slope).toBeLessThan(model.lossSlopeMost);
    }
  });
});
