import { readFileSync } from 'node:fs';
import { PROGRAM_VERSION } from '@furrow/contract';
import { type Answer, answerJob, FAULT_MODEL, readKit } from '@furrow/engine';
import { checkBand } from '@furrow/papers/words';
import { beforeAll, describe, expect, it } from 'vitest';
import { planOf, readGood } from '../../testing/index.ts';
import { stagesOf } from './check-stages.ts';
import { connectionId } from './connection-id.ts';
import { judgeTyped, typedValue } from './judge-typed.ts';
import { rigChecks } from './rig-checks.ts';
import { readingEvidence } from './rig-faults.tsx';
import { progressText } from './rig-progress.tsx';
import { movedModel } from './use-fault-counts.ts';

function example(name: string): string {
  return readFileSync(new URL(`../../../../../examples/${name}.yaml`, import.meta.url), 'utf8');
}

describe('the checks at the rig', () => {
  const read = readGood(example('penstock-seam'));
  let answer: Answer;
  beforeAll(() => {
    const kit = readKit(example('yard-kit'));
    if (!kit.ok) throw new Error(kit.issues[0]?.message);
    answer = answerJob({ job: read, version: PROGRAM_VERSION, kit: kit.value });
  });

  it('without a kit are those that rest on the plan alone, with finite bands', () => {
    const bare = rigChecks(planOf(example('penstock-seam')), FAULT_MODEL);
    const ids = bare.map(({ id }) => id);
    expect(ids).toContain('stick_out');
    expect(ids).toContain('current');
    expect(ids.filter((id) => /polarity|pressure|no_load|joint_/u.test(id))).toEqual([]);
    for (const check of bare) {
      if (check.kind === 'measure') expect(Number.isFinite(check.least + check.most), check.id).toBe(true);
    }
  });

  it('with a kit come with their connections, each under a name of its own', () => {
    const checks = rigChecks({ read, answer }, FAULT_MODEL);
    expect(stagesOf(checks).map(({ stage }) => stage)).toEqual([
      'power_off',
      'air_on',
      'dry_run',
      'no_load',
      'trial_arc',
    ]);
    const ids = (answer.supply?.connections ?? []).map(connectionId);
    expect(ids.length).toBeGreaterThan(5);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('judge what is typed at once, and tell the table of faults', () => {
    const checks = rigChecks({ read, answer }, FAULT_MODEL);
    const flowing = checks.find(({ id }) => id.startsWith('flowing_pressure'))!;
    expect(judgeTyped(flowing, '')).toEqual({ is: 'none' });
    expect(judgeTyped(flowing, '40').is).toBe('unread');
    const low = judgeTyped(flowing, '5 psi');
    expect(low.is === 'judged' && low.judgement.verdict).toBe('low');
    expect(low.is === 'judged' && low.judgement.faults.map(({ cause }) => cause)).toContain('low_air');
    expect(typedValue(flowing, '1 bar')).toBeCloseTo(100_000, 6);
    expect(typedValue(flowing, 'many')).toBeNull();
    expect(flowing.kind === 'measure' && checkBand(flowing, 'inch')).toMatch(/psi to \d.* psi$/u);
    const readings = {
      [flowing.id]: { text: '5 psi', value: null, note: '' },
      emergency_stop: { text: 'yes', value: null, note: '' },
    };
    expect(readingEvidence(checks, readings)).toEqual({ flowing_pressure: 'low' });
    const words = progressText({ readings, ticks: {}, findings: {} }, [], checks);
    expect(words).toBe(`2 of ${checks.length} checks made, 1 of them not as it should be`);
  });
});

describe('movedModel', () => {
  it('follows the counts, and stays as it is where they do not fit', () => {
    const moved = movedModel({ cases: 40, found: { wet_air: 40 }, seen: {} });
    const weight = (id: string): number => moved.causes.find((cause) => cause.id === id)!.weight;
    expect(weight('wet_air')).toBeGreaterThan(40);
    expect(movedModel({ cases: 1, found: { no_such_cause: 1 }, seen: {} })).toBe(FAULT_MODEL);
  });
});
