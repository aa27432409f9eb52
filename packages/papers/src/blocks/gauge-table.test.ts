import { expect, test } from 'vitest';
import { exampleJob, samplePlan } from '../sample-plan.test-data.ts';
import { gaugePlaces } from '../words/index.ts';
import { gaugeTable } from './gauge-table.ts';

const plan = samplePlan(exampleJob('penstock-seam'), { tracks: 1, layers: 2, gauge: true });
const stop = plan.gauge_stops[0]!;

test('tells what to do for every reading, without a gap between the rows', () => {
  const { rows } = gaugeTable(stop, 'metric');
  expect(rows.map((row) => row.slice(0, 2))).toEqual([
    ['below 3.8', 'stop, ask the welding engineer'],
    ['3.8 to 5.0', 'travel 560 mm/min'],
    ['5.0 to 6.2', 'travel 640 mm/min'],
    ['6.2 to 7.4', 'travel 720 mm/min'],
    ['7.4 to 9.0', 'run no more passes'],
    ['9.0 and deeper', 'stop, ask the welding engineer'],
  ]);
});

test('promises nothing where nothing is run', () => {
  const { rows, columns } = gaugeTable(stop, 'inch');
  expect(rows[0]).toEqual(['below 0.150', 'stop, ask the welding engineer', '–', '–', '–']);
  expect(rows.every((row) => row.length === columns.length)).toBe(true);
});

test('leaves the chances out of the narrow form and gathers rows that say the same', () => {
  const [first, ...rest] = stop.table;
  const deep = { p05: 14, p50: 15, p95: 16.2 };
  const twice = {
    ...stop,
    table: [
      first!,
      rest[0]!,
      { ...rest[0]!, reading_from_mm: 5, reading_to_mm: 6, expected_depth_mm: deep },
      ...rest.slice(3),
    ],
  };
  const { rows, columns } = gaugeTable(twice, 'metric', 'narrow');
  expect(columns).toHaveLength(3);
  expect(rows[1]).toEqual(['3.8 to 6.0', 'travel 560 mm/min', '12.4–16.2']);
});

test('says where to gauge', () => {
  expect(gaugePlaces(stop, 'metric')).toContain('5 stations: 600 mm, 1.80 m, 3.00 m, 4.20 m, 5.40 m');
});
