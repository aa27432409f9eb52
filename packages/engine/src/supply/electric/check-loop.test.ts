import { describe, expect, it } from 'vitest';
import type { ElectricLoop } from './electric-loop.ts';
import { BACK, LOOP, OUT, SOURCE } from './kit.test-support.ts';
import type { Lead } from './lead.ts';
import type { PowerSource } from './power-source.ts';
import { solveLoop } from './solve-loop.ts';

function issueOf(loop: ElectricLoop) {
  const outcome = solveLoop(loop);
  expect(outcome.ok).toBe(false);
  if (outcome.ok) throw new Error('the loop was accepted');
  expect(outcome.issues).toHaveLength(1);
  return outcome.issues[0]!;
}

const withLead = (change: Partial<Lead>): ElectricLoop => ({ ...LOOP, leads: [{ ...OUT, ...change }, BACK] });
const withSource = (change: Partial<PowerSource>): ElectricLoop => ({
  ...LOOP,
  sources: [{ source: { ...SOURCE, ...change } }],
});
const points = (...list: readonly [number, number][]): ElectricLoop =>
  withSource({
    characteristic: { kind: 'points', points: list.map(([current, voltage]) => ({ current, voltage })) },
  });

describe('a lead that cannot be', () => {
  it.each([
    ['of no length', { length: 0 }, 'leads[0].length', '0 m'],
    ['of negative length', { length: -3 }, 'leads[0].length', '-3 m'],
    ['of a length that is no number', { length: Number.NaN }, 'leads[0].length', 'NaN m'],
    ['with half a conductor', { parallels: 1.5 }, 'leads[0].parallels', '1.5'],
    ['with no conductor', { parallels: 0 }, 'leads[0].parallels', '0'],
    ['with no resistance', { resistance: 0 }, 'leads[0].resistance', '0 ohm/m'],
    ['whose limit is below ambient', { insulation_limit: 300 }, 'leads[0].insulation_limit', '300 K'],
    [
      'with a joint below zero',
      { joints: [{ name: 'lug', resistance: -1e-4, at: 'end' as const }] },
      'leads[0].joints[0].resistance',
      '-0.0001 ohm',
    ],
    [
      'with copper thicker than its covering',
      { covering: { conductor_diameter: 0.02, outside_diameter: 0.018 } },
      'leads[0].covering.outside_diameter',
      '0.018 m',
    ],
    [
      'with more copper than fits',
      { covering: { conductor_diameter: 0.008, outside_diameter: 0.018 } },
      'leads[0].covering.conductor_diameter',
      '0.008 m',
    ],
  ])('%s', (_, change, path, read) => {
    expect(issueOf(withLead(change))).toMatchObject({ code: 'ELECTRIC_VALUE', path, read });
  });

  it('of an unknown size is refused with the nearest', () => {
    expect(issueOf(withLead({ area: 100e-6 }))).toMatchObject({
      code: 'ELECTRIC_SIZE_UNKNOWN',
      read: '100 mm2',
      nearest: '95 mm2',
    });
    expect(issueOf(withLead({ area: -1 })).code).toBe('ELECTRIC_SIZE_UNKNOWN');
  });

  it('tinned in an American size asks for its own resistance, and takes it', () => {
    const tinned = { area: 107.2193e-6, metal: 'tinned copper' } as const;
    expect(issueOf(withLead(tinned))).toMatchObject({
      code: 'ELECTRIC_SIZE_UNKNOWN',
      path: 'leads[0].metal',
    });
    expect(solveLoop(withLead({ ...tinned, resistance: 0.00017 })).ok).toBe(true);
  });
});

describe('a source that cannot be', () => {
  it.each([
    ['without a rating', { rating: [] }, 'sources[0].source.rating', 'nothing'],
    [
      'with a duty above one',
      { rating: [{ current: 800, duty: 60 }] },
      'sources[0].source.rating[0].duty',
      '60',
    ],
    [
      'that carries more for longer',
      {
        rating: [
          { current: 800, duty: 0.6 },
          { current: 1000, duty: 1 },
        ],
      },
      'sources[0].source.rating',
      '800 A at 60 %, 1000 A at 100 %',
    ],
    ['with an efficiency of 85', { efficiency: 85 }, 'sources[0].source.efficiency', '85'],
    [
      'that does not fall',
      { characteristic: { kind: 'flat' as const, no_load_voltage: 48, slope: 0 } },
      'sources[0].source.characteristic.slope',
      '0 V/A',
    ],
    [
      'without voltage',
      { characteristic: { kind: 'flat' as const, no_load_voltage: 0, slope: 0.02 } },
      'sources[0].source.characteristic.no_load_voltage',
      '0 V',
    ],
  ])('%s', (_, change, path, read) => {
    expect(issueOf(withSource(change))).toMatchObject({ code: 'ELECTRIC_VALUE', path, read });
  });

  it.each([
    ['one point only', points([0, 80]), 'at least two points'],
    ['no point without load', points([100, 80], [200, 70]), 'without load'],
    ['a voltage that rises', points([0, 60], [500, 61]), 'does not fall'],
    ['currents out of order', points([0, 80], [500, 70], [400, 60]), 'order of current'],
    ['no current at all', points([0, 80], [0, 70]), 'no current'],
    ['a negative voltage', points([0, 80], [500, -1]), 'outside'],
  ])('points with %s', (_, loop, says) => {
    const issue = issueOf(loop);
    expect(issue.code).toBe('ELECTRIC_CURVE');
    expect(issue.message).toContain(says);
  });
});

describe('a loop that cannot be', () => {
  it.each([
    ['no source', { sources: [] }, 'sources'],
    ['a current of nothing', { arc: { holds: 'current' as const, current: 0 } }, 'arc.current'],
    ['an arc without voltage', { arc: { holds: 'voltage' as const, voltage: 0 } }, 'arc.voltage'],
    ['degrees Celsius for kelvin', { ambient: 30 }, 'ambient'],
    ['a duty without arc', { duty: [{ arc: false, duration: 60 }] }, 'duty'],
    ['an interval before its start', { duty: [{ arc: true, duration: -1 }] }, 'duty[0].duration'],
    ['leads as hot as an arc', { lead_temperature: 4000 }, 'lead_temperature'],
  ])('%s', (_, change, path) => {
    expect(issueOf({ ...LOOP, ...change })).toMatchObject({ code: 'ELECTRIC_VALUE', path });
  });
});
