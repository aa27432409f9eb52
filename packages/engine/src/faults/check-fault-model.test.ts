import { describe, expect, it } from 'vitest';
import { checkFaultModel } from './check-fault-model.ts';
import { FAULT_MODEL } from './fault-model.ts';
import { faultsBehind } from './faults-behind.ts';
import type { FaultCause, FaultModel } from './model.ts';
import { outcomesOf } from './outcome-chance.ts';

function withCause(id: string, change: Partial<FaultCause>): FaultModel {
  const causes = FAULT_MODEL.causes.map((cause) => (cause.id === id ? { ...cause, ...change } : cause));
  return { ...FAULT_MODEL, causes };
}

function paths(model: FaultModel): string[] {
  const outcome = checkFaultModel(model);
  return outcome.ok ? [] : outcome.issues.map(({ path }) => path);
}

describe('the table the program starts from', () => {
  it('is valid', () => {
    expect(checkFaultModel(FAULT_MODEL)).toEqual({ ok: true, value: FAULT_MODEL });
  });

  it('gives every cause something that points to it, and a remedy', () => {
    for (const { id, remedy } of FAULT_MODEL.causes.filter(({ id }) => id !== 'none_of_these')) {
      expect(remedy).not.toBe('');
      const pointers = FAULT_MODEL.observables.filter((observable) =>
        outcomesOf(observable).some((outcome) =>
          faultsBehind(FAULT_MODEL, observable.id, outcome).some(({ cause }) => cause === id),
        ),
      );
      expect(pointers.filter(({ kind }) => kind === 'symptom').length, id).toBeGreaterThan(0);
      expect(pointers.filter(({ kind }) => kind !== 'symptom').length, id).toBeGreaterThan(0);
    }
  });
});

describe('checkFaultModel', () => {
  it.each<[string, FaultModel, string]>([
    [
      'a chance of 1',
      withCause('low_air', { shows: { slag_left: { yes: 1 } } }),
      'causes.low_air.shows.slag_left',
    ],
    [
      'a chance of 0',
      withCause('low_air', { shows: { slag_left: { yes: 0 } } }),
      'causes.low_air.shows.slag_left',
    ],
    [
      'a chance that is no number',
      withCause('low_air', { shows: { slag_left: { yes: Number.NaN } } }),
      'causes.low_air.shows.slag_left',
    ],
    [
      'two chances that leave nothing',
      withCause('low_air', { shows: { current: { low: 0.6, high: 0.4 } } }),
      'causes.low_air.shows.current',
    ],
    [
      'a chance of the wrong form',
      withCause('low_air', { shows: { current: { yes: 0.4 } } }),
      'causes.low_air.shows.current',
    ],
    [
      'an unknown name',
      withCause('low_air', { shows: { smell: { yes: 0.4 } } }),
      'causes.low_air.shows.smell',
    ],
    ['a weight of 0', withCause('low_air', { weight: 0 }), 'causes.low_air.weight'],
    [
      'a cause listed twice',
      { ...FAULT_MODEL, causes: [...FAULT_MODEL.causes, FAULT_MODEL.causes[0]!] },
      'causes',
    ],
    ['cases of 0', { ...FAULT_MODEL, chance_cases: 0 }, 'chance_cases'],
  ])('refuses %s', (_what, model, path) => {
    expect(paths(model)).toEqual([path]);
  });

  it('refuses a symptom that no cause explains', () => {
    const { shows } = FAULT_MODEL.causes.find(({ id }) => id === 'wet_air')!;
    const { water_at_torch: _gone, ...rest } = shows;
    expect(paths(withCause('wet_air', { shows: rest }))).toEqual(['observables.water_at_torch']);
  });

  it('refuses minutes of 0', () => {
    const observables = FAULT_MODEL.observables.map((one) =>
      one.id === 'current' ? { ...one, minutes: 0 } : one,
    );
    expect(paths({ ...FAULT_MODEL, observables })).toEqual(['observables.current.minutes']);
  });
});
