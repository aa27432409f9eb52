import { describe, expect, it } from 'vitest';
import { settingOf } from './air.test-support.ts';
import { type AirDemand, REGULATOR_PRESSURE, TORCH_PRESSURE } from './air-demand.ts';
import { airLimits } from './air-limits.ts';
import type { AirSupply } from './air-supply.ts';

const supply: AirSupply = {
  atmosphere: 101325,
  temperature: 293.15,
  compressor: { delivery: [{ pressure: 8e5, freeAir: 0.02 }] },
  receiver: { volume: 0.5, cutIn: 6.5e5, cutOut: 8e5 },
  path: [
    { kind: 'regulator', id: 'regulator', set: 6.2e5, droop: 0 },
    { kind: 'hose', id: 'hose', bore: 0.0127, length: 15, roughness: 1.5e-6, fittings: [] },
  ],
  torch: { kind: 'conductance', conductance: 2e-8, criticalRatio: 0.5 },
};
const demand: AirDemand = {
  regulator: REGULATOR_PRESSURE,
  torch: TORCH_PRESSURE,
  torchSource: { text: 'measured', provenance: 'job file' },
};

function limits(of: AirSupply, asked = demand, setting = settingOf(300)) {
  const outcome = airLimits(of, asked);
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  return Object.fromEntries(outcome.value(setting.candidate, setting.job).map((limit) => [limit.id, limit]));
}

describe('airLimits', () => {
  it('holds with a compressor that carries the flow', () => {
    const all = limits(supply);
    expect(Object.values(all).map(({ verdict }) => verdict)).toEqual(['holds', 'holds', 'holds', 'holds']);
  });

  it('is soft on common practice and on a recalled torch, hard on the shop’s own', () => {
    expect(limits(supply)['air_regulator']!.hard).toBe(false);
    expect(limits(supply)['air_torch']!.hard).toBe(true);
    const own = { value: 6e5, source: { text: 'the shop', provenance: 'job file' as const } };
    expect(limits(supply, { ...demand, regulator: own })['air_regulator']!.hard).toBe(true);
    const recalled = { text: 'handbook', provenance: 'memory' as const };
    const soft = limits(supply, { ...demand, regulator: own, torchSource: recalled });
    expect(Object.values(soft).map(({ hard }) => hard)).toEqual([false, false, false, false]);
  });

  it('fails the receiver, and then the pressure, where the compressor is too small for too long', () => {
    const small = { ...supply, compressor: { delivery: [{ pressure: 8e5, freeAir: 0.004 }] } };
    const long = limits(small);
    expect(long['air_compressor']!.verdict).toBe('fails');
    expect(long['air_receiver']!.verdict).toBe('fails');
    expect(long['air_regulator']!.verdict).toBe('fails');
    const short = limits(small, demand, settingOf(20));
    expect(short['air_compressor']!.verdict).toBe('fails');
    expect(short['air_receiver']!.verdict).toBe('holds');
    expect(short['air_regulator']!.verdict).toBe('holds');
  });

  it('counts all passes, not one from a full receiver', () => {
    const small = { ...supply, compressor: { delivery: [{ pressure: 8e5, freeAir: 0.004 }] } };
    expect(limits(small, demand, settingOf(40))['air_receiver']!.verdict).toBe('holds');
    const several = limits(small, demand, settingOf(40, 4, 20));
    expect(several['air_receiver']!.verdict).toBe('fails');
    expect(several['air_regulator']!.verdict).toBe('fails');
    // Long pauses fill the receiver again.
    expect(limits(small, demand, settingOf(40, 4, 600))['air_receiver']!.verdict).toBe('holds');
  });

  it('tells the end of the band where only a quick draw fails, and turns nothing away for it', () => {
    const own = { value: 6e5, source: { text: 'the shop', provenance: 'job file' as const } };
    const small = { ...supply, compressor: { delivery: [{ pressure: 8e5, freeAir: 0.004 }] } };
    const asked = { ...demand, regulator: own };
    const times = Array.from({ length: 60 }, (_, i) => 10 + 2 * i);
    const told = times.map((time) => limits(small, asked, settingOf(time))['air_regulator']!);
    const between = told.filter(({ verdict, hard }) => verdict === 'fails' && !hard);
    expect(between.length).toBeGreaterThan(2);
    expect(between[0]!.source.text).toContain('cools');
    expect(told[0]!.verdict).not.toBe('fails');
    expect(told.at(-1)).toMatchObject({ verdict: 'fails', hard: true });
  });

  it('brings no air at all where others take more than passes', () => {
    const taken: AirSupply = { ...supply, path: [...supply.path, { kind: 'draw', id: 'shed', freeAir: 1 }] };
    expect(limits(taken)).toMatchObject({ air_torch: { verdict: 'fails', demand: 0, hard: true } });
  });
});
