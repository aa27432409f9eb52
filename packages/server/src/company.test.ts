import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { API_PATHS, type ShopFigures } from '@furrow/contract';
import { readSummary } from '@furrow/engine';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type TestCompany, testCompany } from './testing/test-company.ts';
import { EXAMPLES } from './testing/test-server.ts';

const trials = readFileSync(join(EXAMPLES, 'trials/demo-yard.yaml'), 'utf8');
let at: TestCompany;
let headers: { cookie: string };
beforeAll(async () => {
  at = await testCompany();
  await at.add('boss', true);
  headers = { cookie: await at.signIn('boss') };
  const yard = at.company.shop('yard');
  const text = 'title: Seam';
  const [first, second] = [
    await yard.create({ text, title: 'Seam', revision: null }),
    await yard.create({ text, title: 'Seam', revision: null }),
  ];
  const record = (recuts: string) =>
    `furrow_readings: 1\ndate: 2026-03-04\nstations:\n  - { at: 0.3 m, depth: 14.2 mm }\n${recuts}`;
  const readings = (body: string) => ({ text: body, title: '', revision: null });
  await yard.readings.save(
    first.id,
    readings(record('recuts:\n  - { from: 0.1 m, to: 0.5 m }\n  - { from: 1 m, to: 1.2 m }\n')),
    0,
  );
  await yard.readings.save(second.id, readings(record('')), 0);
  await yard.knowledge.save({ text: trials, title: 'Demo', revision: 'r' }, 0);
  for (const [id, rehearsal, arc] of [
    ['1', false, 1800],
    ['2', false, null],
    ['3', true, 3600],
  ] as const) {
    const run = `00000000-0000-4000-8000-00000000000${id}`;
    const made = { name: '', revision_number: 1, kit_number: null, knowledge_number: null, logger: null };
    const original = { sha256: id.repeat(64), bytes: 1 };
    await yard.runs.add(first.id, { ...made, id: run, rehearsal, source: null, original });
    const none = {
      arc_out_time_s: null,
      mean_arc_voltage_V: null,
      mean_current_A: null,
      arc_energy_kJ: null,
    };
    const totals = { arc_time_s: arc, ...none, energy_by: null, travelled_mm: null, gouged_mm: null };
    const used = { electrode_used_mm: null, electrode_planned_mm: null };
    const summary = { verdict: [], totals: { ...totals, ...used }, passes: [], events: [] };
    const findings = { report: '{}', summary: JSON.stringify(summary), trouble: null };
    await yard.runs.reviewed(run, '0.1.0', findings);
  }
});
afterAll(async () => {
  expect(at.faults, at.faults.join('\n')).toEqual([]);
  await at.cleanUp();
});

const get = (url: string) => at.server.inject({ url, headers });

test('shops stand side by side, each with figures of its own', async () => {
  const reply = await get(API_PATHS.companyShops);
  expect(reply.statusCode, reply.body).toBe(200);
  const [main, yard] = reply.json<ShopFigures[]>();
  expect(main).toMatchObject({ shop: { id: 'main' }, jobs: 0, runs: 0, arc_h: 0, knowledge: null });
  expect(yard).toMatchObject({
    shop: { id: 'yard', name: 'Yard' },
    jobs: 2,
    gauged_jobs: 2,
    recut_jobs: 1,
    recuts: 2,
    runs: 2,
    runs_without_arc_time: 1,
    arc_h: 0.5,
    unreadable: 0,
  });
  expect(yard?.knowledge?.predictions).toBeGreaterThan(3);
});

test('figures follow what is changed', async () => {
  const before = (await get(API_PATHS.companyShops)).json<ShopFigures[]>()[0];
  await at.company.shop('main').create({ text: 'title: x', title: 'x', revision: null });
  const after = (await get(API_PATHS.companyShops)).json<ShopFigures[]>()[0];
  expect([before?.jobs, after?.jobs]).toEqual([0, 1]);
});

test('what shops have learned is handed out together, without a reading of theirs', async () => {
  const reply = await get(API_PATHS.companySummary);
  expect(reply.headers['content-disposition']).toContain('company-summary.json');
  const read = readSummary(reply.body);
  expect(read.ok && read.value.shops.map(({ shop }) => shop)).toEqual([expect.any(String)]);
  expect(reply.body).not.toContain('stations');
});
