import { expect, test } from 'vitest';
import { exampleJob, samplePlan } from '../sample-plan.test-data.ts';
import { passTable } from './pass-table.ts';

const read = exampleJob('penstock-seam');

test('gathers passes of one setting and gives the span of their offsets', () => {
  const plan = samplePlan(read, { tracks: 10, layers: 4, gauge: false });
  const { rows } = passTable(plan, 'metric');
  expect(rows.map((row) => row.slice(0, 4))).toEqual([
    ['1–10', '1', '−40.5 to +40.5', '700'],
    ['11–20', '2', '−40.5 to +40.5', '700'],
    ['21–30', '3', '−40.5 to +40.5', '700'],
    ['31–40', '4', '−40.5 to +40.5', '700'],
  ]);
});

test('keeps passes apart whose travel differs', () => {
  const plan = samplePlan(read, { tracks: 3, layers: 1, gauge: false, uneven: true });
  expect(passTable(plan, 'metric').rows.map((row) => row[3])).toEqual(['700', '712', '724']);
});

test('shows the current of each pass only where it differs', () => {
  const plan = samplePlan(read, { tracks: 1, layers: 2, gauge: false });
  expect(passTable(plan, 'metric').columns.map((column) => column.title)).not.toContain('Current, A');
  const mixed = {
    ...plan,
    passes: plan.passes.map((pass, index) => ({ ...pass, current_A: 800 + 50 * index })),
  };
  const table = passTable(mixed, 'metric');
  const column = table.columns.findIndex(({ title }) => title === 'Current, A');
  expect(table.rows.map((row) => row[column])).toEqual(['800', '850']);
});
