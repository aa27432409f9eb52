import { randomUUID } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type AuditReport, openStore } from '@furrow/store';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { EXIT } from '../frame/exit-code.ts';
import { run } from './audit.ts';

let data: string;
beforeEach(async () => {
  data = mkdtempSync(join(tmpdir(), 'furrow-audit-'));
  const store = await openStore({ folder: data }, { now: () => new Date(), newId: randomUUID });
  await store.create({ text: 'title: Seam', title: 'Seam', revision: null });
  await store.close();
});
afterEach(() => rmSync(data, { recursive: true }));

const audit = (options: object = {}) =>
  run([], { data, json: false, ...options } as never, { print: () => {}, problem: () => {} });

test('audit agrees with what was saved, and tells where each history ends', async () => {
  const told = await audit();
  expect(told.exit).toBe(EXIT.plan);
  expect(told.print).toMatch(/^Everything agrees.*main: 1 entries, the last [0-9a-f]{64}$/su);
});

test('audit refuses what somebody changed behind its back', async () => {
  const file = join(data, 'earlier.json');
  writeFileSync(file, (await audit({ json: true })).print ?? '');
  expect((await audit({ since: file })).exit).toBe(EXIT.plan);
  const path = join(data, 'furrow.sqlite');
  writeFileSync(path, readFileSync(path, 'latin1').replace('title: Seam', 'title: Boom'), 'latin1');
  const told = await audit({ since: file });
  expect([told.exit, told.print]).toEqual([
    EXIT.refusal,
    expect.stringContaining('One thing does not agree'),
  ]);
  const { problems } = JSON.parse((await audit({ json: true })).print ?? '') as AuditReport;
  expect(problems).toEqual([expect.stringMatching(/^Revision 1 of job .* of the shop “main” is not what/u)]);
});

test('audit refuses a file that is not of an earlier audit, and says why', async () => {
  const file = join(data, 'earlier.json');
  for (const content of ['{}', 'no json', '{"histories":[{"shop":"main"}]}']) {
    writeFileSync(file, content);
    const told = await audit({ since: file });
    expect([told.exit, told.problem?.[0]]).toEqual([EXIT.badInput, expect.stringContaining(file)]);
  }
});
