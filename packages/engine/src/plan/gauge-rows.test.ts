import { beforeAll, describe, expect, it } from 'vitest';
import type { PlanOutcome, RowOutcome } from './outcome.ts';
import { planned } from './plan-of.test-support.ts';
import { STARTING, simulateShops } from './shop-simulator.test-support.ts';
import { type TestJobChange, testJob } from './test-job.test-support.ts';

const MM = 1e-3;
/** Misses that a told row may have above what it is made for: it is counted in some hundred shops, and normal in them [-]. */
const TOLD_ERROR = 0.06;

/** Six metres, as deep as half a plate. */
const DEEP: TestJobChange = {
  seam: { length: '6 m' },
  plate: { thickness: '32 mm' },
  groove: {
    depth: { wanted: '14 mm', plus: '4 mm', minus: '2 mm' },
    width: { least: '11 mm', most: '19 mm' },
    ligament_least: '5 mm',
  },
};
const CLOSE: TestJobChange = {
  seam: { length: '6.1 m' },
  plate: { thickness: '19 mm' },
  groove: {
    depth: { wanted: '9.5 mm', plus: '3.2 mm', minus: '0.8 mm' },
    width: { least: '9.5 mm', most: '20.6 mm' },
    ligament_least: '3 mm',
  },
};
const UNTRIED: TestJobChange = {
  locks: { layers: 2 },
  kit: { trial: { on: 'none' } },
  groove: { depth: { wanted: '9 mm', plus: '4 mm', minus: '2 mm' } },
};
const WASH: TestJobChange = {
  seam: { length: '600 mm' },
  groove: {
    shape: 'wash',
    depth: { wanted: '6 mm', plus: '6 mm', minus: '1 mm' },
    width: { least: '36 mm', most: '60 mm' },
    floor_width: '28 mm',
  },
};

/** Every table of a plan. */
function tablesOf({ tryout, stops }: PlanOutcome): (readonly RowOutcome[])[] {
  return [...(tryout === undefined ? [] : [tryout.table]), ...stops.map(({ table }) => table)];
}

describe('The rows of the tables', { timeout: 60_000 }, () => {
  it.each([
    ['deep', DEEP],
    ['close', CLOSE],
    ['without a trial', UNTRIED],
    ['a wash', WASH],
  ])('advise nothing that misses more often than a row may, and ask with a reason: %s', (_, change) => {
    const { job } = testJob(change);
    const allowed = 1 - job.groove.assurance;
    const { plan, alternatives } = planned(job);
    for (const table of [plan, ...alternatives].flatMap(tablesOf)) {
      for (const { from, action, reason, tooShallow, tooDeep } of table) {
        const miss = Math.max(tooShallow, tooDeep);
        if (action === 'ask') expect([from, reason]).not.toEqual([from, undefined]);
        if (action === 'done') expect([from, miss <= allowed + 1e-6, miss]).toEqual([from, true, miss]);
        if (action === 'run')
          expect([from, miss <= 2 * allowed + TOLD_ERROR, miss]).toEqual([from, true, miss]);
      }
    }
  });

  it('leave floors that hold along the whole seam, as crews find who run them', () => {
    const { job } = testJob(UNTRIED);
    const { plan } = planned(job);
    expect(plan.stops.length).toBeGreaterThan(0);
    const { left } = simulateShops(plan, job, 3000, 5, STARTING);
    expect(left.shops).toBeGreaterThan(30);
    // Those just inside both limits are the least sure, the others surer: together they miss less often than one may.
    expect(left.missed / left.shops).toBeLessThan(2 * (1 - job.groove.assurance));
  });
});

describe('the rows of the last stop', () => {
  const least = 8.7 * MM;
  const most = 12.7 * MM;
  let rows: readonly RowOutcome[];
  beforeAll(() => {
    rows = planned(testJob(CLOSE).job).plan.stops.at(-1)!.table;
  });

  const rowOf = (reading: number): RowOutcome =>
    rows.find(({ from, to }) => reading >= from && (to === undefined || reading < to))!;

  it('never leave a floor that is short of the drawing, however far above what was expected it was read', () => {
    for (let reading = rows[0]!.to! + 0.1 * MM; reading < least - 0.1 * MM; reading += 0.2 * MM)
      expect([reading, rowOf(reading).action]).not.toEqual([reading, 'done']);
  });

  it('end at what the drawing asks for', () => {
    const edges = rows.map(({ from }) => Math.round(from / (0.1 * MM)));
    expect(edges).toContain(Math.round(most / (0.1 * MM)));
    for (const row of rows)
      expect([row.from, row.inBand]).toEqual([
        row.from,
        row.from > least - 0.05 * MM && (row.to ?? 1) < most + 0.05 * MM,
      ]);
  });

  it('ask where a floor inside the drawing at its stations may well be too deep between them', () => {
    expect(rowOf(most - 0.2 * MM)).toMatchObject({ action: 'ask', reason: 'too_deep', inBand: true });
    expect(rowOf(most - 0.2 * MM).tooDeep).toBeGreaterThan(0.2);
    expect(rowOf(most + 0.2 * MM)).toMatchObject({ action: 'ask', reason: 'too_deep', inBand: false });
  });
});
