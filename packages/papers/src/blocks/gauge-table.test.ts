import { expect, test } from 'vitest';
import { exampleJob, samplePlan } from '../sample-plan.test-data.ts';
import { gaugePlaces } from '../words/index.ts';
import { gaugeTable } from './gauge-table.ts';

const plan = samplePlan(exampleJob('penstock-seam'), { tracks: 1, layers: 2, gauge: true });
const stop = plan.gauge_stops[0]!;

test('tells what to do for every reading, without a gap between the rows', () => {
  const { rows } = gaugeTable(stop, 'metric');
  expect(rows.map((row) => row.slice(0, 2))).toEqual([
    ['below 3.8', 'stop, ask the welding engineer: not as expected'],
    ['3.8 to 4.9', 'travel 560 mm/min'],
    ['5.0 to 6.1', 'travel 640 mm/min'],
    ['6.2 to 7.3', 'travel 720 mm/min'],
    ['7.4 to 8.9', 'run no more passes'],
    ['9.0 and deeper', 'stop, ask the welding engineer: not as expected'],
  ]);
});

test('promises nothing where nothing is run', () => {
  const { rows, columns } = gaugeTable(stop, 'inch');
  expect(rows[0]).toEqual(['below 0.150', 'stop, ask the welding engineer: not as expected', '–', '–', '–']);
  expect(rows.every((row) => row.length === columns.length)).toBe(true);
});

test('keeps every row with its own chances in the narrow form, so that none hides a large risk', () => {
  const risky = stop.table.map((row, index) =>
    index === 2 ? { ...row, travel_mm_per_min: 560, depth_reached: 0.28 } : row,
  );
  const { rows, columns } = gaugeTable({ ...stop, table: risky }, 'metric', 'narrow');
  expect(columns.map(({ title }) => title)).toEqual(['Reading, mm', 'Do this', 'Too shallow', 'Too deep']);
  expect(rows).toHaveLength(stop.table.length - 1);
  expect(rows[1]?.[1]).toBe('travel 560 mm/min');
  expect(rows[2]?.slice(0, 3)).toEqual(['5.0 to 6.1', 'travel 560 mm/min', '72']);
});

test('says where to gauge', () => {
  expect(gaugePlaces(stop, 'metric')).toContain('5 stations: 600 mm, 1.80 m, 3.00 m, 4.20 m, 5.40 m');
});
