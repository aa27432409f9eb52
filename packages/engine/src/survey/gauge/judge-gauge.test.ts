import { expect, it } from 'vitest';
import { judgeGauge } from './judge-gauge.ts';

const row = (part: string, appraiser: string, off: number) => ({
  part,
  appraiser,
  readings: [{ reading: 0.01 + off }, { reading: 0.0101 + off }],
});
const check = (off: number, when: string) => ({
  ...{ when, block: 0.01, allowed: 0.0005 },
  readings: [{ reading: 0.01 + off }, { reading: 0.01 + off }],
});

it('the last check of a gauge counts, with its deviation, and each is told', () => {
  const { checks, budget } = judgeGauge({
    ...{ method: 'anova', averaged: 1 },
    crossed: [row('1', 'A', 0), row('2', 'A', 0.002), row('1', 'B', 0), row('2', 'B', 0.002)],
    checks: [check(0.0003, '2026-01-05'), check(0.0001, '2026-02-05')],
  } as unknown as Parameters<typeof judgeGauge>[0]);
  expect(checks.map(({ when, verdict }) => [when, verdict])).toEqual([
    ['2026-01-05', 'holds'],
    ['2026-02-05', 'holds'],
  ]);
  const line = budget!.lines.find(({ what }) => what === 'deviation');
  expect(line!.u).toBeCloseTo(0.0001, 9);
  const rest = budget!.lines.filter(({ what }) => what !== 'deviation').map(({ u }) => u);
  expect(budget!.u).toBeCloseTo(Math.hypot(0.0001, ...rest), 12);
});
