import { readFileSync } from 'node:fs';
import { answerJob, readJob, readKit } from '@furrow/engine';
import { describe, expect, test } from 'vitest';
import { renderSupplyText } from './render-supply-text.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8');

function read<T>(outcome: { ok: true; value: T } | { ok: false }): T {
  if (!outcome.ok) throw new Error('an example is not in order');
  return outcome.value;
}

const JOB = read(readJob(example('penstock-seam')));
const ANSWER = answerJob({ job: JOB, version: 'x', kit: read(readKit(example('yard-kit'))) });

describe('the supply as text', () => {
  const text = renderSupplyText(ANSWER, JOB.job.title, 'metric');

  test('tells the kit, margins with their sources, loop, air, place, connections and checks', () => {
    for (const part of [
      'Kit: Penstock yard, bay 2, revision',
      'Margins',
      'Source: ',
      'Electric loop',
      'May run in ten minutes',
      'Behind',
      'Control station at ',
      'Connections',
      'Checks before the first arc',
      'the software never signs',
    ]) {
      expect(text).toContain(part);
    }
    // a long title is broken after its first words
    for (const limit of ANSWER.supply!.limits) expect(text).toContain(limit.title.slice(0, 30));
    for (const lead of ANSWER.supply!.electric!.kind === 'operating_point'
      ? ANSWER.supply!.electric!.leads
      : [])
      expect(text).toContain(lead.name);
  });

  test('shows the units asked for', () => {
    const inch = renderSupplyText(ANSWER, JOB.job.title, 'inch');
    expect(inch).toContain(' psi');
    expect(inch).not.toMatch(/\d bar\b/u);
    expect(text).toMatch(/\d (bar|kPa)\b/u);
    expect(text).not.toContain(' psi');
  });

  test('is empty where no kit was given, and keeps control characters out', () => {
    const { supply, ...without } = ANSWER;
    expect(supply).toBeDefined();
    expect(renderSupplyText(without, JOB.job.title, 'metric')).toBe('');
    expect(renderSupplyText(ANSWER, 'a\u001b[31mb', 'metric')).not.toContain('\u001b');
  });
});
