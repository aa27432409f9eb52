import { limitOf } from '@furrow/engine';
import { expect, it } from 'vitest';
import { limitTable } from './limit-table.ts';

const limit = (sense: 'most' | 'least', demand: number, capacity: number) =>
  limitOf({
    id: 'air',
    title: 'Pressure',
    demand,
    capacity,
    unit: 'kPa',
    sense,
    hard: true,
    source: { text: 'test', provenance: 'derived' },
    remedy: 'a wider hose',
  });

it.each([
  ['most', 'metric', '5.8 bar', '≤ 6.2 bar', 'holds'],
  ['least', 'metric', '5.8 bar', '≥ 6.2 bar', 'fails'],
  ['most', 'inch', '84 psi', '≤ 90 psi', 'holds'],
  ['least', 'inch', '84 psi', '≥ 90 psi', 'fails'],
] as const)('says which side of a limit there must be: at %s, %s', (sense, units, asked, given, verdict) => {
  const table = JSON.stringify(limitTable('Margins', [limit(sense, 579_000, 620_528)], units));
  for (const text of [asked, given, verdict]) expect(table).toContain(JSON.stringify(text).slice(1, -1));
});
