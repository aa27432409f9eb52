import { describe, expect, it } from 'vitest';
import { LOOP, working } from './kit.test-support.ts';
import type { SenseError } from './sense-wire.ts';
import { senseWireError } from './sense-wire.ts';

function found(...args: Parameters<typeof senseWireError>): SenseError {
  const outcome = senseWireError(...args);
  if (!outcome.ok || outcome.value.kind !== 'sense_error') throw new Error(JSON.stringify(outcome));
  return outcome.value;
}

describe('a sense wire landed at the source', () => {
  const error = found(LOOP, ['work return']);

  it('makes the feed hold arc and lead together', () => {
    expect(error.read_V).toBeCloseTo(42, 8);
    expect(error.arc_voltage_V).toBeCloseTo(42 - error.error_V, 8);
  });

  it('raises the current, and the error is the drop at that current', () => {
    expect(error.current_A).toBeGreaterThan(error.right_current_A + 20);
    expect(error.right_current_A).toBeCloseTo(working(LOOP).current_A, 6);
    const same = working({ ...LOOP, arc: { holds: 'voltage', voltage: error.arc_voltage_V } });
    expect(same.current_A).toBeCloseTo(error.current_A, 5);
    expect(same.leads[1]!.drop_V).toBeCloseTo(error.error_V, 6);
  });

  it('shortens the arc, between two rough gradients or by the one given', () => {
    const [most, least] = error.arc_length_change_m;
    expect(most).toBeLessThan(least);
    expect(least).toBeLessThan(0);
    const own = found(LOOP, ['work return'], 2000).arc_length_change_m;
    expect(own[0]).toBe(own[1]);
    expect(own[0]).toBeCloseTo((error.arc_voltage_V - 42) / 2000, 10);
  });

  it('at both ends is wrong by the drop of both leads', () => {
    expect(found(LOOP, ['work return', 'electrode lead']).error_V).toBeGreaterThan(1.9 * error.error_V);
  });
});

it('a sense wire at the arc has no error', () => {
  const error = found(LOOP, []);
  expect(error.error_V).toBe(0);
  expect(error.arc_length_change_m).toEqual([0, 0]);
});

it('with the current held the meter is wrong and the arc is not', () => {
  const error = found({ ...LOOP, arc: { holds: 'current', current: 800, voltage: 42 } }, ['work return']);
  expect(error.arc_voltage_V).toBe(42);
  expect(error.read_V).toBeCloseTo(42 + error.error_V, 12);
  expect(error.arc_length_change_m).toEqual([0, 0]);
  expect(error.says).toContain('stays as it is');
});

it('leads that drop more than the set voltage leave no arc', () => {
  const [out, back] = LOOP.leads;
  const long = { ...back!, parallels: 1, length: 600 };
  const arc = { holds: 'voltage', voltage: 20 } as const;
  const outcome = senseWireError({ ...LOOP, leads: [{ ...out!, length: 1 }, long], arc }, ['work return']);
  expect(outcome).toMatchObject({ ok: true, value: { kind: 'no_operating_point' } });
});

it('refuses a lead it does not know and a gradient that is none', () => {
  expect(senseWireError(LOOP, ['earth'])).toMatchObject({
    ok: false,
    issues: [{ code: 'ELECTRIC_VALUE', read: 'earth', nearest: 'electrode lead' }],
  });
  expect(senseWireError(LOOP, [], 0)).toMatchObject({ ok: false, issues: [{ path: 'gradient' }] });
});
