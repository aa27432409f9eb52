import { readFileSync } from 'node:fs';
import type { Answer, HeatAnswer } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { openBench } from '../../job/state/index.ts';
import { FakeWorker, MemoryStorage, planOf } from '../../testing/index.ts';
import type { HeatPart, HeatQuality, HeatRequest, PlanRequest } from '../../work/index.ts';
import { openHeatDesk } from './heat-desk.ts';
import { momentOf } from './heat-state.ts';

const DEMO = readFileSync(new URL('../../../../../examples/defect-pocket.yaml', import.meta.url), 'utf8');
const PLANNED = planOf(DEMO);
const heat = (frames: readonly number[] = [0]): HeatAnswer =>
  ({
    report: { passes: [{ at_station_s: { middle: 10 } }] },
    field: { frames: frames.map((time) => ({ time })) },
  }) as unknown as HeatAnswer;

function setUp() {
  const planner = new FakeWorker<PlanRequest, Answer>();
  const bench = openBench({ text: DEMO }, { startWorker: () => planner, memory: new MemoryStorage() });
  const worker = new FakeWorker<HeatRequest, HeatPart>();
  let waiting: (() => void) | undefined;
  const desk = openHeatDesk(bench, {
    startWorker: () => worker,
    later: (run) => {
      waiting = run;
      return () => {
        waiting = undefined;
      };
    },
  });
  const plan = (changed = PLANNED.answer): void => planner.part(changed);
  const reply = (quality: HeatQuality, took_ms: number, given = heat()): void =>
    worker.part({ quality, heat: given, took_ms });
  const solves = (): readonly HeatRequest[] => worker.requests;
  return { bench, desk, plan, worker, reply, solves, rest: () => waiting?.(), resting: () => waiting };
}

describe('the desk of the heat', () => {
  it('solves each plan as soon as it is there, in the middle of the seam', () => {
    const { plan, solves, bench } = setUp();
    expect(solves()).toEqual([]);
    plan();
    expect(solves().map(({ station }) => station)).toEqual([PLANNED.read.job.seam.length / 2]);
    expect(solves()[0]?.answer.alternatives).toEqual([]);
    bench.setText(`${DEMO}# more\n`);
    plan();
    expect(solves()).toHaveLength(2);
  });

  it('solves another place when the cursor rests, kept on the seam', () => {
    const { plan, bench, solves, rest } = setUp();
    plan();
    bench.moveCursor(0.01);
    bench.moveCursor(-5);
    expect(solves()).toHaveLength(1);
    rest();
    expect(solves().at(-1)?.station).toBe(0);
  });

  it('calls off a place that waits when the plan changes first', () => {
    const { plan, bench, resting } = setUp();
    plan();
    bench.moveCursor(0.01);
    bench.setText(`${DEMO}# more\n`);
    plan();
    expect(resting()).toBeUndefined();
  });

  it('shows the quick look while the refined answer is on its way, then that', () => {
    const { plan, desk, reply, worker } = setUp();
    plan();
    worker.reply({ is: 'progress', share: 0.5 });
    expect(desk.store.get().run).toEqual({ is: 'running', quality: 'quick', share: 0.5 });
    reply('quick', 200);
    expect(desk.store.get().shown?.quality).toBe('quick');
    expect(desk.store.get().run).toMatchObject({ is: 'running', quality: 'refined' });
    reply('refined', 900);
    expect(desk.store.get()).toMatchObject({ run: { is: 'done' }, shown: { quality: 'refined' } });
  });

  it('shows no heat of a job without a plan', () => {
    const { plan, desk, bench, reply } = setUp();
    plan();
    reply('quick', 200);
    bench.setText(`${DEMO}# more\n`);
    const { plan: _plan, ...refused } = PLANNED.answer;
    plan(refused);
    expect(desk.store.get()).toMatchObject({ shown: undefined, run: { is: 'nothing' } });
  });

  it('shows no heat where the solver ends without an answer', () => {
    const { plan, desk, reply, worker } = setUp();
    plan();
    reply('quick', 200);
    worker.reply({ is: 'done' });
    expect(desk.store.get()).toMatchObject({ shown: undefined, run: { is: 'nothing' } });
    desk.again();
    reply('refined', 900);
    worker.reply({ is: 'done' });
    expect(desk.store.get()).toMatchObject({ shown: { took_ms: 900 }, run: { is: 'done' } });
  });

  it('stops when told to, keeps what is shown and solves again on demand', () => {
    const { plan, desk, reply, worker, solves } = setUp();
    plan();
    reply('quick', 200);
    desk.stop();
    expect(worker.stopped).toBe(true);
    reply('refined', 900);
    expect(desk.store.get()).toMatchObject({ run: { is: 'stopped' }, shown: { quality: 'quick' } });
    desk.again();
    expect(solves()).toHaveLength(2);
  });

  it('tells why the solver failed', () => {
    const { plan, desk, worker } = setUp();
    plan();
    worker.reply({ is: 'failure', message: 'out of memory' });
    expect(desk.store.get().run).toEqual({ is: 'failed', why: 'out of memory' });
  });

  it('looks at the first moment after the last pass until another is chosen', () => {
    const { plan, desk, reply } = setUp();
    plan();
    const given = heat([0, 9, 11, 13, 60]);
    reply('quick', 200, given);
    const { shown, time } = desk.store.get();
    expect(momentOf(shown!, time)).toBe(3);
    desk.lookAt(12.9);
    expect(momentOf(shown!, desk.store.get().time)).toBe(2);
  });
});
