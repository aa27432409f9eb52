import { describe, expect, it } from 'vitest';
import { sentenceText } from '../../quantity/index.ts';
import { once, settingOf } from './air.test-support.ts';
import { type AirDemand, REGULATOR_PRESSURE, TORCH_PRESSURE } from './air-demand.ts';
import { airLimits } from './air-limits.ts';
import { airRemedy } from './air-remedy.ts';
import type { AirItem, AirRegulator, AirRun, AirSupply } from './air-supply.ts';

const demand: AirDemand = {
  regulator: REGULATOR_PRESSURE,
  torch: TORCH_PRESSURE,
  torchSource: { text: 'measured', provenance: 'job file' },
};
const feed: AirRun = { kind: 'hose', id: 'feed', bore: 0.0127, length: 20, roughness: 1.5e-6, fittings: [] };
const regulator: AirRegulator = { kind: 'regulator', id: 'regulator', set: 6.2e5, droop: 0 };
const sound: AirSupply = {
  atmosphere: 101325,
  temperature: 293.15,
  compressor: { delivery: [{ pressure: 8e5, freeAir: 0.03 }] },
  receiver: { volume: 0.5, cutIn: 7e5, cutOut: 8e5 },
  path: [feed, regulator],
  torch: { kind: 'conductance', conductance: 2e-8, criticalRatio: 0.5 },
};

function withPath(path: readonly AirItem[], of = sound): AirSupply {
  return { ...of, path };
}

/** Whether every margin but that of the compressor alone holds. */
function holds(supply: AirSupply, time = 300): boolean {
  const limits = airLimits(supply, demand);
  const { candidate, job } = settingOf(time);
  return (
    limits.ok &&
    limits.value(candidate, job).every(({ id, verdict }) => id === 'air_compressor' || verdict !== 'fails')
  );
}

describe('what the air needs', () => {
  it('is nothing where both pressures hold', () => {
    expect(holds(sound)).toBe(true);
    expect(airRemedy(sound, demand, once(300))).toBe('nothing: both pressures hold');
  });

  it('is a hose, not a setting, where the regulator is starved', () => {
    const narrow = { ...feed, bore: 0.0064, length: 30 };
    const starved = withPath([narrow, regulator]);
    expect(holds(starved)).toBe(false);
    expect(holds(withPath([narrow, { ...regulator, set: 7e5 }]))).toBe(false);
    const remedy = sentenceText(airRemedy(starved, demand, once(300)), 'metric');
    expect(remedy).toMatch(/^a hose of \S+ mm .* bore as “feed”$/);
    const bore = Number(/([\d.]+) mm/u.exec(remedy)![1]) / 1000;
    expect(holds(withPath([{ ...narrow, bore }, regulator]))).toBe(true);
  });

  it('is the setting where the regulator is set too low, the least that does', () => {
    const low = withPath([feed, { ...regulator, set: 5.2e5 }]);
    const remedy = sentenceText(airRemedy(low, demand, once(300)), 'metric');
    const bar = Number(/^set “regulator” to ([\d.]+) bar/u.exec(remedy)![1]);
    expect(bar).toBe(5.6);
    const set = bar * 1e5;
    expect(holds(withPath([feed, { ...regulator, set }]))).toBe(true);
  });

  it('is receiver or compressor only where they bind', () => {
    const weak = { ...sound, compressor: { delivery: [{ pressure: 8e5, freeAir: 0.012 }] } };
    const remedy = sentenceText(airRemedy(weak, demand, once(300)), 'metric');
    expect(holds(weak)).toBe(false);
    expect(remedy).toMatch(/a receiver of .* or .* more from compressors$/);
    const volume = Number(/a receiver of (\d+) L/u.exec(remedy)![1]) / 1000;
    expect(holds({ ...weak, receiver: { ...weak.receiver, volume } })).toBe(true);
    expect(holds({ ...weak, receiver: { ...weak.receiver, volume: 0.9 * volume } })).toBe(false);
  });

  it('is what others leave, where they take the air', () => {
    const shared = withPath([{ kind: 'draw', id: 'shed', freeAir: 0.02 }, feed, regulator]);
    expect(holds(shared)).toBe(false);
    expect(sentenceText(airRemedy(shared, demand, once(300)), 'metric')).toContain(
      'no air for “shed” while the torch blows',
    );
    expect(holds(withPath([{ kind: 'draw', id: 'shed', freeAir: 0 }, feed, regulator]))).toBe(true);
  });

  it('is a longer pause where the receiver fills too little between passes', () => {
    const weak = { ...sound, compressor: { delivery: [{ pressure: 8e5, freeAir: 0.004 }] } };
    const duty = [60, 20, 60, 20, 60].map((duration, i) => ({ arc: i % 2 === 0, duration }));
    expect(sentenceText(airRemedy(weak, demand, duty), 'metric')).toMatch(
      /more between the passes, for the receiver to fill/,
    );
  });

  it('says so where no single change does', () => {
    const narrow = { ...feed, bore: 0.0064, length: 300 };
    const twice = withPath([narrow, { ...narrow, id: 'second' }, regulator]);
    expect(airRemedy(twice, demand, once(300))).toMatch(/^no single change .* does; a wider hose as “/);
  });
});
