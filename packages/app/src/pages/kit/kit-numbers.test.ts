import { readFileSync } from 'node:fs';
import { readKit } from '@furrow/engine';
import { expect, it } from 'vitest';
import { kitNumbers } from './kit-numbers.ts';

const TEXT = readFileSync(new URL('../../../../../examples/yard-kit.yaml', import.meta.url), 'utf8');

it('tells every source, lead and part of the air path of the kit, and its stock', () => {
  const outcome = readKit(TEXT);
  if (!outcome.ok) throw new Error('the demo kit cannot be read');
  const { kit } = outcome.value;
  const tables = Object.fromEntries(kitNumbers(kit, 'metric').map((table) => [table.id, table]));
  expect(tables['kit-sources']?.rows.map(([name]) => name)).toEqual(kit.sources.map(({ name }) => name));
  expect(tables['kit-leads']?.rows[0]).toEqual([
    'Electrode lead',
    'electrode',
    '2 × 120 mm² (237 kcmil)',
    '24.00 m',
    '1',
  ]);
  expect(tables['kit-air']?.rows).toHaveLength(1 + kit.air.path.length);
  expect(tables['kit-stock']?.rows).toHaveLength(7);
  for (const { heads, rows } of Object.values(tables)) {
    for (const row of rows) expect(row).toHaveLength(heads.length);
  }
});
