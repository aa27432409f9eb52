import { readFileSync } from 'node:fs';
import { answerJob, FAULT_MODEL, readJob, readKit } from '@furrow/engine';
import { expect, it } from 'vitest';
import { connectionId } from './connection-id.ts';
import { inventedRecord } from './invented-record.ts';
import { judgeTyped } from './judge-typed.ts';
import { rigChecks } from './rig-checks.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../../../../examples/${name}.yaml`, import.meta.url), 'utf8');

it('makes up a rig of the demo that is in order, each reading as a person would type it', () => {
  const read = readJob(example('penstock-seam'));
  const kit = readKit(example('yard-kit'));
  if (!read.ok || !kit.ok) throw new Error('the demo cannot be read');
  const answer = answerJob({ job: read.value, kit: kit.value, version: 'test' });
  const checks = rigChecks({ read: read.value, answer }, FAULT_MODEL);
  const connections = answer.supply?.connections ?? [];
  const { readings, ticks } = inventedRecord(checks, connections, 1);
  expect(checks.length).toBeGreaterThan(20);
  for (const check of checks) {
    const typed = judgeTyped(check, readings[check.id]?.text ?? '');
    expect(typed, check.id).toMatchObject({ is: 'judged', judgement: { faults: [] } });
  }
  expect(Object.keys(ticks)).toEqual(connections.map(connectionId));
});
