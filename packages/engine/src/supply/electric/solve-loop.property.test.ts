import fc from 'fast-check';
import { expect, it } from 'vitest';
import { CONDUCTOR_SIZES } from './conductor-size.ts';
import type { ElectricLoop } from './electric-loop.ts';
import type { Lead } from './lead.ts';
import type { LoopResult } from './loop-result.ts';
import type { SourceBranch } from './power-source.ts';
import { solveLoop } from './solve-loop.ts';

const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const joint = fc.record({
  name: fc.constant('joint'),
  resistance: range(0, 0.0005),
  at: fc.constantFrom('end' as const, 'middle' as const),
  carries: fc.constantFrom('run' as const, 'conductor' as const),
});

const lead = (name: string): fc.Arbitrary<Lead> =>
  fc.record({
    name: fc.constant(name),
    side: fc.constantFrom('electrode' as const, 'work' as const),
    area: fc.constantFrom(...CONDUCTOR_SIZES.map((size) => size.area)),
    parallels: fc.integer({ min: 1, max: 4 }),
    length: range(1, 60),
    joints: fc.array(joint, { maxLength: 2 }),
  });

const characteristic = fc.oneof(
  fc.record({
    kind: fc.constantFrom('drooping' as const, 'flat' as const),
    no_load_voltage: range(40, 100),
    slope: range(0.001, 0.1),
  }),
  fc
    .tuple(range(60, 100), range(100, 1000), range(5, 20), range(0, 300), range(5, 20))
    .map(([none, knee, fall, more, further]) => ({
      kind: 'points' as const,
      points: [
        { current: 0, voltage: none },
        { current: knee, voltage: none - fall },
        { current: knee + more, voltage: none - fall - further },
      ],
    })),
);

const branch: fc.Arbitrary<SourceBranch> = fc.record({
  source: fc.record({
    name: fc.constant('source'),
    characteristic,
    rating: fc.constant([{ current: 1000, duty: 0.6 }]),
  }),
  leads: fc.oneof(
    fc.constant([]),
    lead('own').map((own) => [own]),
  ),
});

const arc = fc.oneof(
  fc.record({ holds: fc.constant('voltage' as const), voltage: range(20, 60) }),
  fc.record({ holds: fc.constant('current' as const), current: range(50, 1500), voltage: range(20, 60) }),
  fc.record({ holds: fc.constant('current' as const), current: range(50, 1500) }),
);

/** Temperatures stated, so that leads settle nowhere by themselves: the coupled case has its own property. */
const loop: fc.Arbitrary<ElectricLoop> = fc.record({
  sources: fc.array(branch, { minLength: 1, maxLength: 3 }),
  leads: fc.tuple(lead('out'), lead('back')),
  arc,
  ambient: range(263, 323),
  lead_temperature: range(263, 423),
});

function solve(given: ElectricLoop): LoopResult {
  const outcome = solveLoop(given);
  if (!outcome.ok) throw new Error(outcome.issues.map((issue) => issue.message).join(' '));
  return outcome.value;
}

const settled = loop.map(({ lead_temperature: _, ...rest }): ElectricLoop => rest);

it('the power of all sources is the arc’s and the losses’, leads settled', () => {
  let found = 0;
  fc.assert(
    fc.property(settled, (given) => {
      const result = solve(given);
      if (result.kind === 'no_operating_point') return;
      found += 1;
      const spent = result.arc_W + result.losses.reduce((sum, item) => sum + item.loss_W, 0);
      expect(Math.abs(result.output_W / spent - 1)).toBeLessThan(1e-6);
    }),
    { seed: 20260301, numRuns: 60 },
  );
  expect(found).toBeGreaterThan(20);
});

it('every number of a result is finite, and no source is driven backwards', () => {
  const finite = (value: unknown): boolean =>
    typeof value === 'number'
      ? Number.isFinite(value)
      : typeof value !== 'object' || value === null || Object.values(value).every(finite);
  fc.assert(
    fc.property(loop, (given) => {
      const result = solve(given);
      expect(finite(result)).toBe(true);
      if (result.kind === 'operating_point') {
        expect(result.sources.every((source) => source.current_A >= 0)).toBe(true);
      }
    }),
    { seed: 20260302, numRuns: 150 },
  );
});

it('the order of the sources does not matter', () => {
  fc.assert(
    fc.property(loop, (given) => {
      const [one, other] = [solve(given), solve({ ...given, sources: given.sources.toReversed() })];
      expect(other.kind).toBe(one.kind);
      if (one.kind === 'no_operating_point' || other.kind === 'no_operating_point') return;
      expect(other.current_A).toBeCloseTo(one.current_A, 5);
      expect(other.available_V).toBeCloseTo(one.available_V, 7);
      const backwards = other.sources.toReversed();
      for (const [i, source] of one.sources.entries()) {
        expect(backwards[i]!.current_A).toBeCloseTo(source.current_A, 5);
      }
    }),
    { seed: 20260303, numRuns: 150 },
  );
});

/** Loss of the loop's leads at a held current, settled or not; a working point that is gone loses everything. */
function lossAt(given: ElectricLoop): number {
  const result = solve(given);
  return result.kind === 'no_operating_point' ? Infinity : result.loss_W;
}

const heldLoop = fc
  .tuple(settled, range(50, 900))
  .map(([given, current]): ElectricLoop => ({ ...given, arc: { holds: 'current', current } }));

it('more conductors side by side never raise the loss at a current', () => {
  fc.assert(
    fc.property(heldLoop, fc.integer({ min: 1, max: 3 }), (given, more) => {
      const [out, back] = given.leads;
      const wider = { ...out!, parallels: (out!.parallels ?? 1) + more };
      const before = lossAt(given);
      expect(lossAt({ ...given, leads: [wider, back!] })).toBeLessThanOrEqual(before * (1 + 1e-9));
    }),
    { seed: 20260304, numRuns: 60 },
  );
});

it('a longer lead never lowers the loss at a current', () => {
  fc.assert(
    fc.property(heldLoop, range(0, 30), (given, more) => {
      const [out, back] = given.leads;
      const longer = { ...out!, length: out!.length + more };
      const before = lossAt(given);
      const after = lossAt({ ...given, leads: [longer, back!] });
      expect(after).toBeGreaterThanOrEqual(before === Infinity ? before : before * (1 - 1e-9));
    }),
    { seed: 20260305, numRuns: 60 },
  );
});

it('with a voltage held, more conductors or a shorter lead never lower the current', () => {
  fc.assert(
    fc.property(
      settled,
      range(20, 60),
      fc.integer({ min: 0, max: 3 }),
      range(0, 0.5),
      (base, voltage, more, cut) => {
        const given: ElectricLoop = { ...base, arc: { holds: 'voltage', voltage } };
        const [out, back] = given.leads;
        const better = { ...out!, parallels: (out!.parallels ?? 1) + more, length: out!.length * (1 - cut) };
        const [before, after] = [solve(given), solve({ ...given, leads: [better, back!] })];
        expect(after.kind).toBe(before.kind);
        if (before.kind === 'no_operating_point' || after.kind === 'no_operating_point') return;
        expect(after.current_A).toBeGreaterThanOrEqual(before.current_A * (1 - 1e-7));
      },
    ),
    { seed: 20260306, numRuns: 60 },
  );
});

it('no duty makes a lead hotter than its steady state', () => {
  const interval = fc.record({ arc: fc.boolean(), duration: range(1, 900) });
  fc.assert(
    fc.property(heldLoop, fc.array(interval, { minLength: 1, maxLength: 6 }), (given, some) => {
      const duty = [...some, { arc: true, duration: 60 }];
      const result = solve({ ...given, sources: [given.sources[0]!], duty });
      if (result.kind === 'no_operating_point') return;
      for (const { steady, duty: course } of result.leads) {
        if (steady.kind === 'steady') expect(course!.peak_K).toBeLessThan(steady.temperature_K + 0.01);
        expect(course!.peak_K).toBeGreaterThanOrEqual(given.ambient);
      }
    }),
    { seed: 20260307, numRuns: 60 },
  );
});
