import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { electricOfKit, readKit } from '../kit/index.ts';
import { type ElectricLoop, solveLoop } from '../supply/index.ts';
import { commissionSupplyOf } from './supply-of-kit.ts';

const text = readFileSync(new URL('../../../../examples/yard-kit.yaml', import.meta.url), 'utf8');

/** The demo kit with its station coupler of this resistance, one for the whole run. */
function at(resistance: string) {
  const read = readKit(
    text.replace('at: middle, carries: conductor', `at: end, carries: run, resistance: ${resistance}`),
  );
  if (!read.ok) throw new Error(read.issues[0]!.message);
  const loop: ElectricLoop = {
    ...electricOfKit(read.value.kit).electric,
    arc: { holds: 'current', current: 1000, voltage: 42 },
    duty: [{ arc: true, duration: 900 }],
  };
  const solved = solveLoop(loop);
  if (!solved.ok || solved.value.kind !== 'operating_point') throw new Error('no working point');
  const lead = solved.value.leads.find(({ name }) => name === 'Electrode lead')!;
  const item = commissionSupplyOf(read.value.kit, 'electrode_positive', loop).items.find(
    ({ name }) => name === 'station coupler',
  )!;
  const state = lead.joints[0]!;
  // A joint surely is too hot where even half of its estimated rise brings it to the limit of its lead.
  const surelyHot = lead.temperature_K + state.rise_K! / 2 > lead.insulation_limit_K;
  return { item, surelyHot, times: item.resistanceMost! / item.resistance };
}

it('passes a clean joint in supply and in commissioning alike', () => {
  const clean = at('0.01 mohm');
  expect(clean.surelyHot).toBe(false);
  expect(clean.times).toBeGreaterThan(1.5);
});

it('calls a joint loose in commissioning from where its heat is too much for its lead', () => {
  const { times } = at('0.012 mohm');
  expect(times).toBeGreaterThan(1);
  expect(times).toBeLessThan(2);
  expect(at(`${0.012 * times * 0.98} mohm`).surelyHot).toBe(false);
  expect(at(`${0.012 * times * 1.02} mohm`).surelyHot).toBe(true);
});

it('does not call a joint loose that is as expected, however hot', () => {
  expect(at('0.2 mohm')).toMatchObject({ surelyHot: true, times: expect.closeTo(1, 9) });
});
