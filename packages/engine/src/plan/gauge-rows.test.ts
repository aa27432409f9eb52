import { beforeAll, describe, expect, it } from 'vitest';
import type { RowOutcome } from './outcome.ts';
import { planned } from './plan-of.test-support.ts';
import { testJob } from './test-job.test-support.ts';

const MM = 1e-3;

describe('the rows of the last stop', () => {
  const least = 8.7 * MM;
  const most = 12.7 * MM;
  let rows: readonly RowOutcome[];
  beforeAll(() => {
    const { job } = testJob({
      seam: { length: '6.1 m' },
      plate: { thickness: '19 mm' },
      groove: {
        depth: { wanted: '9.5 mm', plus: '3.2 mm', minus: '0.8 mm' },
        width: { least: '9.5 mm', most: '20.6 mm' },
        ligament_least: '3 mm',
      },
    });
    rows = planned(job).plan.stops.at(-1)!.table;
  });

  const rowOf = (reading: number): RowOutcome =>
    rows.find(({ from, to }) => reading >= from && (to === undefined || reading < to))!;

  it('never leave a floor that is short of the drawing, however far above what was expected it was read', () => {
    for (let reading = rows[0]!.to! + 0.1 * MM; reading < least - 0.1 * MM; reading += 0.2 * MM)
      expect([reading, rowOf(reading).action]).not.toEqual([reading, 'done']);
    expect(rowOf(rows[1]!.from).action).toBe('run');
  });

  it('begin and end at what the drawing asks for', () => {
    const edges = rows.map(({ from }) => Math.round(from / (0.1 * MM)));
    expect(edges).toContain(Math.round(least / (0.1 * MM)));
    expect(edges).toContain(Math.round(most / (0.1 * MM)));
    for (const row of rows)
      expect([row.from, row.inBand]).toEqual([
        row.from,
        row.from > least - 0.05 * MM && (row.to ?? 1) < most + 0.05 * MM,
      ]);
  });

  it('tell the chance of a floor near a limit in a row of its own', () => {
    const left = rows.filter(({ action }) => action === 'done');
    expect(left.length).toBeGreaterThanOrEqual(3);
    const [first, last] = [left[0]!, left.at(-1)!];
    const middle = rowOf((first.to! + last.from) / 2);
    expect(last.tooDeep).toBeGreaterThan(0.5);
    expect(middle.tooDeep).toBeLessThan(0.1);
    expect(middle.tooShallow).toBeLessThan(0.1);
    expect(first.tooShallow).toBeGreaterThan(0.5);
  });
});
