import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, expect, it } from 'vitest';
import { readJob } from '../../job/index.ts';
import type { OntoFloorPlan } from '../../plan/index.ts';
import { planRest, planStretch, type RunSoFar } from '../../run/index.ts';
import { answerJob } from '../job/answer-job.ts';
import { beliefOfJob } from '../knowledge/belief-of-job.ts';

const SEED = 20_261_128;
const CELLS = 300;
let base: Omit<RunSoFar, 'along'>;
/** What the first pass puts in as planned [J/m]. */
let usual: number;

beforeAll(() => {
  const text = readFileSync(new URL('../../../../../examples/penstock-seam.yaml', import.meta.url), 'utf8');
  const read = readJob(text);
  if (!read.ok) throw new Error('the example cannot be read');
  const { job } = read.value;
  const { plan } = answerJob({ job: read.value, version: '0' }).basis!;
  base = { job, plan, belief: beliefOfJob(job, undefined) };
  const [first] = plan.passes;
  usual = (first!.current * first!.voltage) / first!.travel;
}, 60_000);

/** A first pass that put so much in, uneven along the seam. */
function soFar(part: number, uneven: number, turns: number): RunSoFar {
  const energy = Float64Array.from(
    { length: CELLS },
    (_, at) => usual * part * (1 + uneven * Math.sin((2 * Math.PI * turns * at) / CELLS)),
  );
  return { ...base, along: alongOf(energy) };
}

function alongOf(energy: Float64Array): RunSoFar['along'] {
  const none = (): number => Number.NaN;
  return {
    ...{ cell: base.job.seam.length / CELLS, cells: CELLS, layers: [[energy]] },
    ...{ median: none, at: none, chanceBelow: none },
  };
}

/** What holds of any plan onto a floor. */
function expectSound(found: OntoFloorPlan & { readonly stations: readonly number[] }, most: number): void {
  const { passes, passesBefore, travel, table, chances, meets, before, after } = found;
  const { groove, kit } = base.job;
  expect(passes).toBeLessThanOrEqual(most);
  expect(passesBefore).toBeLessThanOrEqual(passes);
  expect(travel === undefined).toBe(passesBefore === 0);
  for (const chance of Object.values(chances)) {
    expect(chance).toBeGreaterThanOrEqual(0);
    expect(chance).toBeLessThanOrEqual(1);
  }
  expect(meets).toBe(
    chances.reached >= groove.assurance &&
      chances.notTooDeep >= groove.assurance &&
      chances.ligamentKept >= groove.ligament_assurance,
  );
  // nothing that is cut comes back
  expect(after.p50).toBeGreaterThanOrEqual(before.p50 - 1e-12);
  const travels = [...(travel === undefined ? [] : [travel]), ...table.flatMap((row) => row.travel ?? [])];
  for (const each of travels) {
    expect(each).toBeGreaterThanOrEqual(kit.travel.least * (1 - 1e-9));
    expect(each).toBeLessThanOrEqual(kit.travel.most * (1 + 1e-9));
  }
  if (table.length === 0) return;
  expect(table[0]!.from).toBe(0);
  expect(table.at(-1)!.to).toBeUndefined();
  table.slice(1).forEach((row, i) => {
    expect(row.from).toBe(table[i]!.to);
  });
  const rows = table.flatMap((row) => row.travel ?? []);
  expect(rows).toEqual([...rows].sort((a, b) => a - b));
}

it('whatever a log says was put in, the rest is a plan that can be run, and more put in leaves less to do', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.6, max: 1.5, noNaN: true }),
      fc.double({ min: 0, max: 0.2, noNaN: true }),
      fc.integer({ min: 1, max: 9 }),
      (part, uneven, turns) => {
        const rest = planRest(soFar(part, uneven, turns), 1, []);
        expectSound(rest, 2);
        for (const at of rest.stations) expect(at > 0 && at < base.job.seam.length).toBe(true);
        const deeper = planRest(soFar(1.2 * part, uneven, turns), 1, []);
        expectSound(deeper, 2);
        expect(deeper.before.p50).toBeGreaterThan(rest.before.p50);
        expect(deeper.passes).toBeLessThanOrEqual(rest.passes);
      },
    ),
    { seed: SEED, numRuns: 4 },
  );
}, 60_000);

it('a stretch in which the arc was out is planned by itself, with its stations inside', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 0.8, noNaN: true }),
      fc.double({ min: 0.01, max: 0.9, noNaN: true }),
      fc.double({ min: 0.02, max: 0.4, noNaN: true }),
      (left, start, length) => {
        const whole = soFar(1.3, 0, 1);
        const from = start * base.job.seam.length;
        const to = Math.min(base.job.seam.length, from + length);
        const energy = whole.along.layers[0]![0]!.map((each, at) => {
          const place = (at + 0.5) * whole.along.cell;
          return place >= from && place <= to ? left * each : each;
        });
        const found = planStretch({ ...base, along: alongOf(energy) }, { from, to }, 0.0127);
        expectSound(found, 3);
        const slack = whole.along.cell;
        for (const at of found.stations) expect(at > from - slack && at < to + slack).toBe(true);
      },
    ),
    { seed: SEED, numRuns: 12 },
  );
}, 60_000);
