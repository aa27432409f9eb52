import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../job/index.ts';
import { readJob } from '../../job/index.ts';
import type { PlanOutcome } from '../../plan/index.ts';
import type { RemovalBelief } from '../../removal/index.ts';
import {
  type Channel,
  depthAlong,
  expectationOf,
  type RehearsalFault,
  type RehearsalFaultKind,
  type RehearsalInput,
  type RehearsalTruth,
  type RunOutcome,
  rehearse,
  reviewRun,
} from '../../run/index.ts';
import { answerJob } from '../job/answer-job.ts';
import { beliefOfJob } from '../knowledge/belief-of-job.ts';

let job: Job;
let plan: PlanOutcome;
let belief: RemovalBelief;

beforeAll(() => {
  const text = readFileSync(new URL('../../../../../examples/penstock-seam.yaml', import.meta.url), 'utf8');
  const read = readJob(text);
  if (!read.ok) throw new Error('the example cannot be read');
  job = read.value.job;
  belief = beliefOfJob(job, undefined);
  plan = answerJob({ job: read.value, version: '0' }).basis!.plan;
}, 60_000);

function played(input: Partial<RehearsalInput>): {
  found: RunOutcome;
  truth: readonly RehearsalTruth[];
  depth: () => { cell: number; depth: Float64Array };
} {
  const show = rehearse({ job, plan, belief, seed: 1, rate: 50, faults: [], ...input });
  const review = reviewRun(expectationOf(job, plan, belief));
  for (const batch of show.batches) review.push(batch);
  return { found: review.end(), truth: show.truth, depth: show.depth };
}

const fault = (kind: RehearsalFaultKind, at: number, duration: number, size = 0): RehearsalFault => ({
  kind,
  pass: 1,
  at,
  duration,
  size,
});

/** One of each, far enough apart to be told apart. */
const FAULTS: readonly RehearsalFault[] = [
  fault('arc_out', 1.2, 0.9),
  fault('short', 1.5, 0.4),
  fault('stall', 1.8, 1.5),
  fault('low_air', 2.1, 3, 0.3),
  fault('feed_stop', 2.4, 2),
  fault('voltage_drift', 2.7, 20, 0.12),
  fault('current_drift', 0.5, 20, -0.15),
  fault('gap', 4.2, 1.2),
  fault('stale_reading', 4.5, 3),
  fault('spike', 4.8, 0.1, 1.9),
  fault('slip', 5.1, 4, 0.5),
];

describe('a rehearsal with one fault of each kind', () => {
  const channelsOf: readonly (readonly [string, number, boolean, readonly Channel[] | undefined])[] = [
    ['all readings, instants', 100, false, undefined],
    ['all readings, means', 10, true, undefined],
    ['volts, amps and travel', 20, false, ['voltage_V', 'current_A', 'travel_m_per_s']],
  ];

  it.each(channelsOf)(
    '%s at %d rows per second: each is found at its place, and nothing else',
    (_, rate, averages, channels) => {
      const { found, truth } = played({ faults: FAULTS, rate, averages, channels });
      const shows = (kind: string): boolean =>
        channels === undefined || !['low_air', 'feed_stop', 'slip'].includes(kind);
      const open = found.events.filter(({ kind }) => !['touch_down', 'restart_short'].includes(kind));
      for (const { kind, start, end, from } of truth) {
        if (!shows(kind) || kind === 'touch_down' || kind === 'restart_short') continue;
        const mine = open.filter(
          (event) => event.kind === kind && event.start < end + 1 && event.end > start - 1,
        );
        expect(mine.length, kind).toBeGreaterThan(0);
        for (const event of mine) {
          // a drift that grows is seen once it is out of the window
          const late = kind.endsWith('drift') ? 6 : kind === 'slip' ? 1.1 : 2.5 / rate + 0.02;
          expect(Math.abs(event.start - start), `${kind} starts`).toBeLessThan(late);
          expect(Math.abs(event.end - end), `${kind} ends`).toBeLessThan(late);
          expect(Math.abs(event.from! - from), `${kind} place`).toBeLessThan(
            late * 0.025 + 3 * event.placeSd!,
          );
          open.splice(open.indexOf(event), 1);
        }
      }
      expect(open.map(({ kind }) => kind)).toEqual([]);
    },
  );

  it.each(['current_drift', 'voltage_drift', 'low_air'] as const)(
    'a %s into which an electrode change falls lasts as long with the arc burning, and is found from end to end',
    (kind) => {
      const [change] = plan.changes.filter(({ pass }) => pass === 1);
      const { travel } = plan.passes[0]!;
      const asked = fault(kind, change!.at - 10 * travel, 20, kind === 'low_air' ? 0.3 : -0.15);
      const { found, truth } = played({ faults: [asked], rate: 10 });
      const told = truth.find((event) => event.kind === kind)!;
      const away = truth.find((event) => event.kind === 'electrode_change' && event.start > told.start)!;
      expect(away.end).toBeLessThan(told.end);
      expect(told.end - told.start - (away.end - away.start)).toBeCloseTo(20, 0);
      const mine = found.events.filter((event) => event.kind === kind);
      expect(Math.abs(mine[0]!.start - told.start)).toBeLessThan(6);
      expect(Math.abs(mine.at(-1)!.end - told.end)).toBeLessThan(1);
    },
  );

  it('is the same for the same seed and another for another', () => {
    const rows = (seed: number): number[] => {
      const [first] = rehearse({ job, plan, belief, seed, rate: 10, faults: [] }).batches;
      return [...first!.channels.current_A!.slice(40, 60)];
    };
    expect(rows(3)).toEqual(rows(3));
    expect(rows(3)).not.toEqual(rows(4));
  });
});

describe('a rehearsal without faults', () => {
  it('shows none', () => {
    const { found } = played({ rate: 20 });
    const kinds = new Set(found.events.map(({ kind }) => kind));
    expect([...kinds].sort()).toEqual(['electrode_change', 'restart_short', 'touch_down']);
    expect(found.passes.map(({ complete }) => complete)).toEqual(plan.passes.map(() => true));
  });
});

describe('the depth along the seam', () => {
  it('covers what was cut at the rate it states', () => {
    // the first part of the seam only: a rehearsal of it all takes ten times as long
    const passes = plan.passes.map((pass) => ({ ...pass, to: 0.6 }));
    const short = {
      job: { ...job, seam: { ...job.seam, length: 0.6 } },
      plan: { ...plan, passes, passLength: 0.6, changes: [] },
    };
    let inside = 0;
    let places = 0;
    for (let seed = 1; seed <= 40; seed += 1) {
      const show = rehearse({ job: short.job, plan: short.plan, belief, seed, rate: 4, faults: [] });
      const review = reviewRun(expectationOf(short.job, short.plan, belief));
      for (const batch of show.batches) review.push(batch);
      const { depth } = show;
      const along = depthAlong(review.end().passes, short.plan, belief, 0.6, job.kit.push_angle)!;
      const cut = depth();
      for (const share of [0.1, 0.37, 0.5, 0.81]) {
        const at = Math.floor(share * along.cells);
        const true_ = cut.depth[Math.floor(share * cut.depth.length)]!;
        places += 1;
        if (true_ >= along.at(at, 0.05) && true_ <= along.at(at, 0.95)) inside += 1;
      }
    }
    // places of one rehearsal hang together: they are worth little more than one
    expect(inside / places).toBeGreaterThan(0.8);
    expect(inside / places).toBeLessThan(0.99);
  });

  it('leaves metal where the arc was out, and digs where the carriage stood', () => {
    const { found } = played({ faults: [fault('arc_out', 2, 2), fault('stall', 4, 3)], rate: 20 });
    const along = depthAlong(found.passes, plan, belief, job.seam.length, job.kit.push_angle)!;
    const at = (place: number): number => along.median(Math.floor(place / along.cell));
    expect(at(2.02)).toBeLessThan(0.75 * at(1));
    expect(at(4)).toBeGreaterThan(1.5 * at(1));
    expect(at(3)).toBeCloseTo(at(1), 2);
    expect(
      along.chanceBelow(Math.floor(1 / along.cell), along.at(Math.floor(1 / along.cell), 0.05)),
    ).toBeCloseTo(0.05, 6);
  });
});
