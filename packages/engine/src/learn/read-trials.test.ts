import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readTrials, trialsJsonSchema } from './read-trials.ts';

const TRIAL = `  - id: t-1
    date: "2026-02-03"
    material: carbon_steel
    electrode: { diameter: 1/2 in }
    passes:
      - current: 850 A
        travel: 35 in/min
        length: 0.3 m
        electrode_burnt: 33 mm
        stations: [{ at: 10 cm, depth: 9.5 mm, width: 16 mm }]
`;
const file = (...entries: readonly string[]): string =>
  `furrow_trials: 1\nshop: yard\nentries:\n${entries.join('')}`;
const read = (text: string) => {
  const outcome = readTrials(text);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
};
const issuesOf = (text: string) => {
  const outcome = readTrials(text);
  return outcome.ok ? [] : outcome.issues;
};

describe('readTrials', () => {
  it('reads an entry in SI, with the defaults that stood in', () => {
    const { observations, defaultsUsed } = read(file(TRIAL));
    expect(observations).toHaveLength(1);
    const [one] = observations;
    expect(one).toMatchObject({ id: 't-1', kind: 'trial', gaugeSd: 0.0004 });
    expect(one!.family).toEqual({
      metal: 'carbon_steel',
      position: 'flat',
      electrode: 'jointed',
      band: 'middle',
    });
    const [pass] = one!.passes;
    expect(pass!.setting.travel).toBeCloseTo((35 * 0.0254) / 60, 12);
    expect(pass!.stations).toEqual([{ at: 0.1, depth: 0.0095, width: 0.016 }]);
    // 33 mm of 12.7 mm electrode over 0.3 m at 35 in/min and 850 A.
    const time = 0.3 / ((35 * 0.0254) / 60);
    expect(pass!.wear).toBeCloseTo((0.033 * Math.PI * 0.0127 ** 2) / 4 / (850 * time), 14);
    expect(defaultsUsed.map(({ path }) => path)).toContain('entries[0].gauge_sd');
  });

  it('leaves out what was taken out, and keeps that it was', () => {
    const out = `${TRIAL.replace('t-1', 't-2')}    taken_out: { date: "2026-02-04", reason: hose off }\n`;
    const { observations, trials } = read(file(TRIAL, out));
    expect(observations.map(({ id }) => id)).toEqual(['t-1']);
    expect(trials.entries[1]!.taken_out).toEqual({ date: '2026-02-04', reason: 'hose off' });
  });

  it('has a revision that layout does not change and content does', () => {
    const { revision } = read(file(TRIAL));
    expect(read(`# a remark\n${file(TRIAL)}`).revision).toBe(revision);
    expect(read(file(TRIAL.replace('9.5 mm', '9.6 mm'))).revision).not.toBe(revision);
  });

  it('tells an entry that is there twice, with its place', () => {
    const [issue] = issuesOf(file(TRIAL, TRIAL));
    expect(issue).toMatchObject({ code: 'TRIALS_COMBINATION', path: 'entries[1].id' });
    expect(issue!.position!.line).toBe(14);
  });

  it('tells a burnt length without the length cut', () => {
    const [issue] = issuesOf(file(TRIAL.replace('        length: 0.3 m\n', '')));
    expect(issue).toMatchObject({ code: 'TRIALS_COMBINATION' });
    expect(issue!.message).toContain('electrode burnt');
  });

  it.each([
    ['"2026-02-03"', '"03.02.2026"', 'TRIALS_FIELD_VALUE'],
    ['carbon_steel', 'wood', 'TRIALS_FIELD_VALUE'],
    ['850 A', '850 mm', 'AMOUNT_KIND'],
    ['9.5 mm', '3 m', 'AMOUNT_RANGE'],
    ['    passes:', '    passez:', 'TRIALS_FIELD_UNKNOWN'],
  ])('refuses %s written as %s', (good, bad, code) => {
    expect(issuesOf(file(TRIAL.replace(good, bad))).map((issue) => issue.code)).toContain(code);
  });

  it('reads the invented history of the demo shop', () => {
    const { observations, trials } = read(
      readFileSync(new URL('../../../../examples/trials/demo-yard.yaml', import.meta.url), 'utf8'),
    );
    expect(observations).toHaveLength(10);
    expect(trials.note).toContain('Invented');
  });

  it('has a JSON Schema of its own', () => {
    expect(trialsJsonSchema()).toMatchObject({
      title: 'Furrow trials',
      required: expect.arrayContaining(['shop']),
    });
  });
});
