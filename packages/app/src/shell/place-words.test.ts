import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openBench, standingOf } from '../job/state/index.ts';
import { FakeWorker, MemoryStorage, planOf } from '../testing/index.ts';
import { placeWords } from './place-words.ts';

const DEMO = readFileSync(new URL('../../../../examples/defect-pocket.yaml', import.meta.url), 'utf8');

function setUp(text: string) {
  const bench = openBench({ text }, { startWorker: () => new FakeWorker(), memory: new MemoryStorage() });
  return { bench, words: (place: Parameters<typeof placeWords>[0]) => placeWords(place, bench.store.get()) };
}

describe('placeWords', () => {
  it('tells of a job that is being planned', () => {
    const { words } = setUp(DEMO);
    expect(['plan', 'check', 'set-up', 'run', 'shop'].map((place) => words(place as 'plan'))).toEqual([
      'planning',
      '',
      'not saved yet',
      '',
      '',
    ]);
  });

  it('tells of a plan: its passes, the margins that do not simply hold, the kit', () => {
    const { bench, words } = setUp(DEMO);
    const { read, answer } = planOf(DEMO);
    bench.store.set({ planned: { edit: bench.store.get().edit, read, answer } });
    const { length } = answer.plan!.passes;
    expect(words('plan')).toBe(length === 1 ? 'one pass' : `${length} passes`);
    const judged = (verdicts: readonly ('holds' | 'tight' | 'fails')[]): string => {
      const limits = answer.plan!.limits.map((limit, at) => ({ ...limit, verdict: verdicts[at] ?? 'holds' }));
      const planned = { ...answer, plan: { ...answer.plan!, limits } };
      bench.store.set({ planned: { edit: bench.store.get().edit, read, answer: planned } });
      return words('check');
    };
    expect(judged([])).toBe('all margins hold');
    expect(judged(['tight', 'tight'])).toBe('2 tight');
    expect(judged(['tight', 'fails', 'holds', 'tight'])).toBe('1 fails, 2 tight');
    expect(judged(answer.plan!.limits.map(() => 'fails'))).toBe(`${answer.plan!.limits.length} fail`);
    expect(words('shop')).toBe('no kit yet');
  });

  it('tells of the runs that are kept, and of one that is under way; a rehearsal is none', () => {
    const { bench, words } = setUp(DEMO);
    const [run, live] = [{ live: false }, { live: true }].map((each) => ({ ...each, rehearsal: false }));
    const told = (runs: Parameters<typeof standingOf>[0]): string => {
      bench.setRuns(standingOf(runs));
      return words('run');
    };
    expect(told([])).toBe('no run kept');
    expect(told([{ live: false, rehearsal: true }])).toBe('no run kept');
    expect(told([run!])).toBe('one run kept');
    expect(told([run!, run!])).toBe('2 runs kept');
    expect(told([run!, live!])).toBe('live now');
  });

  it('tells of mistakes, and of a result that the text has outrun', () => {
    const { bench, words } = setUp(DEMO);
    bench.setText(DEMO.replace('thickness: 25 mm', 'thickness: 25').replace('furrow: 1', 'furrow: 2'));
    expect(words('plan')).toMatch(/mistake/u);
  });
});
