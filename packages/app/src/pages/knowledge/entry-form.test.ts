import { readFileSync } from 'node:fs';
import {
  freeId,
  newEntries,
  newTrials,
  readTrials,
  withCorrected,
  withEntry,
  withPutBack,
  withTakenOut,
  writtenEntries,
} from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { entryOf, formOf, newForm, readingsOf } from './entry-form.ts';

const DEMO = readFileSync(new URL('../../../../../examples/trials/demo-yard.yaml', import.meta.url), 'utf8');
const CHANGE = { date: '2026-05-02', reason: 'the gauge was set wrong' };

function read(text: string) {
  const outcome = readTrials(text);
  if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
  return outcome.value;
}

const FORM = {
  ...newForm('trial', '2026-05-01', 'metric', undefined),
  diameter: '1/2 in',
  passes: [{ current: '850', voltage: '', travel: '800', length: '300', readings: '11.6 12,1 11.9' }],
};

describe('a trials file', () => {
  it('is begun by its first entry', () => {
    const text = withEntry(newTrials('bay 2'), entryOf(FORM, 't-01', 'metric'));
    const { trials, observations } = read(text);
    expect(trials.shop).toBe('bay 2');
    const [{ passes }] = observations as [(typeof observations)[number]];
    expect(passes[0]?.setting).toMatchObject({ current: 850, diameter: 0.0127 });
    expect(passes[0]?.setting.travel).toBeCloseTo(0.8 / 60, 9);
    const stations = passes[0]?.stations.map(({ at, depth }) =>
      [at, depth].map((each) => Number(each.toFixed(6))),
    );
    expect(stations).toEqual([
      [0.05, 0.0116],
      [0.15, 0.0121],
      [0.25, 0.0119],
    ]);
  });

  it('keeps what people wrote around its entries', () => {
    const text = withEntry(DEMO, entryOf(FORM, freeId(DEMO, 'trial'), 'metric'));
    expect(text.startsWith('# What the demo shop tried and gauged')).toBe(true);
    expect(read(text).observations).toHaveLength(read(DEMO).observations.length + 1);
    expect(writtenEntries(text).at(-1)?.id).toBe('t-05');
  });

  it('corrects an entry, says so, and leaves the others as they were', () => {
    const before = writtenEntries(DEMO).find(({ id }) => id === 'j-130')!;
    const form = formOf(before);
    const [pass] = form.passes as [(typeof form.passes)[number]];
    const text = withCorrected(
      DEMO,
      entryOf({ ...form, passes: [{ ...pass, current: '880' }] }, 'j-130', 'metric'),
      CHANGE,
    );
    const after = read(text).trials.entries.find(({ id }) => id === 'j-130')!;
    expect(after.passes[0]?.current).toBe(880);
    expect(after.passes[0]?.stations.map(({ depth }) => Number(depth.toFixed(6)))).toEqual([
      0.0102, 0.0103, 0.0096,
    ]);
    expect(after.corrected).toEqual([CHANGE]);
    const others = (of: string) => read(of).trials.entries.filter(({ id }) => id !== 'j-130');
    expect(others(text)).toEqual(others(DEMO));
  });

  it('keeps an entry that is taken out, counts it no more, and counts it again when it is put back', () => {
    const out = withTakenOut(DEMO, 'j-117', CHANGE);
    expect(read(out).observations.some(({ id }) => id === 'j-117')).toBe(false);
    expect(read(out).trials.entries.find(({ id }) => id === 'j-117')?.taken_out).toEqual(CHANGE);
    const back = withPutBack(out, 'j-117', { ...CHANGE, reason: 'it was right after all' });
    expect(read(back).observations.some(({ id }) => id === 'j-117')).toBe(true);
    expect(read(back).trials.entries.find(({ id }) => id === 'j-117')?.corrected).toHaveLength(1);
  });

  it('takes over from another file what it does not have', () => {
    const own = withEntry(newTrials('bay 2'), { ...writtenEntries(DEMO)[0]! });
    expect(newEntries(own, DEMO).map(({ id }) => id)).toEqual(
      writtenEntries(DEMO)
        .slice(1)
        .map(({ id }) => id),
    );
    expect(newEntries(DEMO, DEMO)).toEqual([]);
  });
});

describe('depth readings', () => {
  it.each([
    ['15.1 15.4 14,9 mm', 'metric', ['15.1 mm', '15.4 mm', '14,9 mm']],
    ['15.1, 15.4; 14.9', 'metric', ['15.1 mm', '15.4 mm', '14.9 mm']],
    ['5/8 9/16 in', 'metric', ['5/8 in', '9/16 in']],
    ['1 3/16 1 1/4', 'inch', ['1-3/16 in', '1-1/4 in']],
    ['0.62', 'inch', ['0.62 in']],
    ['', 'metric', []],
    ['deep', 'metric', ['deep']],
  ] as const)('typed as %j in %s units are %j', (text, units, readings) => {
    expect(readingsOf(text, units)).toEqual(readings);
  });
});
