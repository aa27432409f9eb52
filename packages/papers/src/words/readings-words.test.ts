import { readFileSync } from 'node:fs';
import { answerJob, type Readings, readJob, readKit, readKnowledge, readReadings } from '@furrow/engine';
import { beforeAll, describe, expect, it } from 'vitest';
import { gaugeCheckWords, otherPlanWords } from './readings-words.ts';

const EXAMPLES = new URL('../../../../examples/', import.meta.url);
const textOf = (name: string): string => readFileSync(new URL(name, EXAMPLES), 'utf8');

function good<T>(outcome: { readonly ok: true; readonly value: T } | { readonly ok: false }): T {
  if (!outcome.ok) throw new Error('an example cannot be read');
  return outcome.value;
}

let readings: Readings;
let answer: ReturnType<typeof answerJob>;
beforeAll(() => {
  readings = good(readReadings(textOf('readings/penstock-seam.yaml'))).readings;
  answer = answerJob({
    job: good(readJob(textOf('penstock-seam.yaml'))),
    kit: good(readKit(textOf('yard-kit.yaml'))),
    knowledge: good(readKnowledge(textOf('trials/demo-yard.yaml'))),
    version: '0',
  });
}, 60_000);

describe('readings of another plan', () => {
  it('are none in the demo: it was run as it is planned', () => {
    expect(otherPlanWords(readings, answer, 'metric')).toEqual([]);
  });

  it('are told by the current, by the travel where it was not set by the gauge, and by the revision', () => {
    const planned = answer.plan!.passes[0]!;
    const gauged = answer.plan!.passes.find((pass) => pass.set_by_gauge)!;
    const told = (passes: Readings['passes']): readonly string[] =>
      otherPlanWords({ ...readings, passes }, answer, 'metric');
    expect(otherPlanWords({ ...readings, job_revision: 'ABCDEF' }, answer, 'metric')[0]).toContain(
      'name revision ABCDEF of the job',
    );
    expect(told([{ number: 1, current: 1.11 * planned.current_A }])[0]).toMatch(
      /^Pass 1 was not run as planned here: \d+ A against \d+ A\./u,
    );
    expect(told([{ number: 1, travel: (1.3 * planned.travel_mm_per_min) / 60_000 }])[0]).toMatch(
      /^Pass 1 was not run as planned here: \d+ mm\/min against \d+ mm\/min\./u,
    );
    expect(told([{ number: gauged.number, travel: 0.001 }])).toEqual([]);
    expect(told([{ number: 9 }])).toEqual(['Pass 9 was run; the plan has no such pass.']);
  });

  it('are none a little off the plan', () => {
    const passes = [{ number: 1, current: 1.09 * answer.plan!.passes[0]!.current_A }];
    expect(otherPlanWords({ ...readings, passes }, answer, 'metric')).toEqual([]);
  });
});

describe('the check of a gauge', () => {
  const check = { block: 0.012, allowed: 0.0001 };
  const words = (...readings_mm: number[]): string =>
    gaugeCheckWords({ ...check, readings: readings_mm.map((each) => ({ reading: each / 1000 })) }, 'metric');

  it('says off by how much, how surely, and whether the gauge may be used', () => {
    expect(words(12.01, 12.01)).toBe(
      'Gauge against a block of 12.0 mm: off by 0.010 mm ± 0.000 mm (95 %), 0.100 mm is allowed; it may be used.',
    );
    expect(words(12.3, 12.3)).toContain('it may not be used');
    expect(words(12.05, 12.15)).toContain('in doubt');
  });
});
