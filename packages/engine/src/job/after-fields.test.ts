import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Issue } from '../issue/index.ts';
import { readJob } from './read-job.ts';

const POCKET = readFileSync(new URL('../../../../examples/defect-pocket.yaml', import.meta.url), 'utf8');

function onlyIssue(after: string): Issue {
  const read = readJob(`${POCKET}after:\n${after}\n`);
  const issues = read.ok ? [] : read.issues;
  expect(issues).toHaveLength(1);
  return issues[0]!;
}

describe('the work after the arc', () => {
  it('refuses a deposition of zero in the words of a shop, with the least that would do', () => {
    const issue = onlyIssue('  refill: { deposition_kg_per_h: 0 }');
    expect(issue).toMatchObject({
      code: 'JOB_FIELD_VALUE',
      path: 'after.refill.deposition_kg_per_h',
      read: '0',
      accepted: '0.05 to 50 kg/h',
      nearest: '0.05',
    });
    expect(issue.message).toContain('the groove is never full');
    expect(issue.position?.line).toBeGreaterThan(1);
  });

  it.each([
    ['  skin_grinding_cm3_per_min: 0', 'the skin is never off'],
    ['  alternatives: { chipping: { groove_m_per_h: 0 } }', 'the groove is never made'],
    ['  refill: { deposition_kg_per_h: -2 }', 'the groove is never full'],
    ['  refill: { deposition_kg_per_h: 400 }', '400 kg/h is outside what is accepted here, 0.05 to 50 kg/h'],
    ['  refill: { operating_factor: 0 % }', 'outside what is accepted here'],
    ['  spread: { least: 130 % }', 'outside what is accepted here'],
    ['  hire: { shift: 30 h }', 'outside what is accepted here'],
    ['  refill: { filler_per_kg: -1 }', 'is not accepted here'],
  ])('refuses %j', (after, told) => {
    expect(onlyIssue(after).message).toContain(told);
  });

  it('takes prices and paces of zero where something can cost or take nothing', () => {
    const read = readJob(
      `${POCKET}after:\n  set_up_time: 0 min\n  cleaning_min_per_m: 0\n  refill: { filler_per_kg: 0, cap_share: 0 % }\n  hire: { source_per_day: 0 }\n`,
    );
    expect(read.ok).toBe(true);
  });
});
