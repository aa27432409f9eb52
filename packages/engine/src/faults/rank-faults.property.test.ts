import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countFaults } from './count-faults.ts';
import { FAULT_MODEL } from './fault-model.ts';
import type { FaultModel, FaultOutcome } from './model.ts';
import { nextFaultChecks } from './next-checks.ts';
import { chanceUnder, outcomesOf } from './outcome-chance.ts';
import { rankFaults } from './rank-faults.ts';

const SETTINGS = { seed: 20251125, numRuns: 300 };

/** Any answers at all, contradictory ones included. */
const evidences = fc.record(
  Object.fromEntries(
    FAULT_MODEL.observables.map((observable) => [
      observable.id,
      fc.constantFrom<FaultOutcome | 'unknown'>(...outcomesOf(observable), 'unknown'),
    ]),
  ),
  { requiredKeys: [] },
);

const counts = fc.record({
  found: fc.dictionary(
    fc.constantFrom(...FAULT_MODEL.causes.map(({ id }) => id)),
    fc.integer({ min: 0, max: 1_000_000 }),
  ),
  seen: fc.dictionary(
    fc.constantFrom(...FAULT_MODEL.causes.map(({ id }) => id)),
    fc.record(
      {
        slag_left: fc.record({ yes: fc.nat(1e6), no: fc.nat(1e6) }),
        current: fc.record({ low: fc.nat(1e6), in: fc.nat(1e6) }),
      },
      { requiredKeys: [] },
    ),
  ),
});

function sumsToOne(model: FaultModel, evidence: Parameters<typeof rankFaults>[1]): void {
  const outcome = rankFaults(model, evidence);
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  const sum = outcome.value.reduce((total, { probability }) => total + probability, 0);
  expect(sum).toBeCloseTo(1, 12);
  for (const { probability, reasons } of outcome.value) {
    expect(probability).toBeGreaterThanOrEqual(0);
    for (const { ratio } of reasons) expect(Number.isFinite(ratio) && ratio > 0).toBe(true);
  }
}

describe('whatever was seen', () => {
  it('the probabilities sum to 1 and every ratio is a number', () => {
    fc.assert(
      fc.property(evidences, (evidence) => sumsToOne(FAULT_MODEL, evidence)),
      SETTINGS,
    );
  });

  it('they do so after any counts as well', () => {
    fc.assert(
      fc.property(evidences, counts, (evidence, count) => {
        const moved = countFaults(FAULT_MODEL, count);
        if (!moved.ok) throw new Error(moved.issues[0]!.message);
        sumsToOne(moved.value, evidence);
      }),
      SETTINGS,
    );
  });

  it('the information of a check lies between 0 and what its outcomes can hold', () => {
    fc.assert(
      fc.property(evidences, (evidence) => {
        const outcome = nextFaultChecks(FAULT_MODEL, evidence);
        if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
        for (const { information_bit } of outcome.value) {
          expect(information_bit).toBeGreaterThanOrEqual(0);
          expect(information_bit).toBeLessThanOrEqual(Math.log2(3));
        }
      }),
      SETTINGS,
    );
  });

  it('one more answer moves a cause the way its chance differs from the mean', () => {
    fc.assert(
      fc.property(evidences, fc.nat(), fc.nat(), (evidence, pick, which) => {
        const observable = FAULT_MODEL.observables[pick % FAULT_MODEL.observables.length]!;
        const outcome = outcomesOf(observable)[which % outcomesOf(observable).length]!;
        const before = rankFaults(FAULT_MODEL, { ...evidence, [observable.id]: 'unknown' });
        const after = rankFaults(FAULT_MODEL, { ...evidence, [observable.id]: outcome });
        if (!before.ok || !after.ok) throw new Error('refused');
        const chances = new Map(
          FAULT_MODEL.causes.map((cause) => [cause.id, chanceUnder(cause, observable, outcome)]),
        );
        const mean = before.value.reduce((sum, one) => sum + one.probability * chances.get(one.cause)!, 0);
        for (const { cause, probability } of before.value) {
          const now = after.value.find((one) => one.cause === cause)!.probability;
          expect(now).toBeCloseTo((probability * chances.get(cause)!) / mean, 9);
        }
      }),
      SETTINGS,
    );
  });
});
