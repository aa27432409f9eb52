import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Reader } from '../quantity/index.ts';
import { readJob } from './read-job.ts';

const DEMO = readFileSync(new URL('../../../../examples/penstock-seam.yaml', import.meta.url), 'utf8');

function toldOf(text: string, reader?: Reader): readonly string[] {
  const outcome = readJob(text, reader);
  return outcome.ok ? [] : outcome.issues.map(({ message, accepted }) => `${message} | ${accepted}`);
}

describe('What is wrong with a job', () => {
  const contradicting = DEMO.replace('thickness: 32 mm', 'thickness: 5 mm');
  const outside = DEMO.replace('thickness: 32 mm', 'thickness: 90 m');

  it.each([
    ['a contradiction', contradicting],
    ['an amount out of its range', outside],
  ])('is told in the reader’s units: %s', (_what, text) => {
    const metric = toldOf(text, 'metric').join('\n');
    const inch = toldOf(text, 'inch').join('\n');
    expect(metric).toMatch(/\d mm/u);
    expect(inch).toMatch(/\d in\b/u);
    expect(metric).not.toMatch(/\d in\b/u);
    expect(inch.replaceAll('90 m”', '')).not.toMatch(/\d m{1,2}\b/u);
  });

  it('is told in both where it is not known who reads, each amount once where both write it alike', () => {
    expect(toldOf(contradicting).join('\n')).toMatch(/\d mm \([\d ./]+ in\)/u);
    const amperes = toldOf(DEMO.replace(/current: .*/u, 'current: { least: 900 A, most: 400 A }'));
    expect(amperes.join('\n')).toMatch(/900 A/u);
    expect(amperes.join('\n')).not.toMatch(/ A \(/u);
  });
});
