import { describe, expect, it } from 'vitest';
import { drawStream } from '../../numeric/index.ts';
import { fuseSeam } from './fuse-seam.ts';
import { judgeSeam } from './judge-seam.ts';
import { nextStations, withFaultEnds } from './next-station.ts';
import { hasUnseenEnds, recutOf } from './recut.ts';
import { seamStates } from './seam-states.ts';

const BAND = { least: 0.012, most: 0.018 };
const SPREAD = { common: 0.07, course: 0.045, range: 0.25 };
const AT = Array.from({ length: 121 }, (_, i) => i * 0.05);
const STAKES = { perMetre: 1, readingTime: 30 };

function read(at: number, depth: number, sd = 3e-4) {
  return { at, value: Math.log(depth / 0.0148), sd: sd / depth };
}

function depthOf(readings: ReturnType<typeof read>[], median = 0.0148) {
  return { median: AT.map(() => median), posterior: fuseSeam(SPREAD, readings, AT) };
}

describe('the verdict along a seam', () => {
  it('holds, fails and doubts where the readings say so, and covers the seam without a gap', () => {
    const readings = [0.5, 1, 1.5, 2, 2.5].map((at) => read(at, 0.015));
    const shallow = [3.8, 3.9, 4, 4.1, 4.2].map((at) => read(at, 0.0105));
    const stretches = judgeSeam(depthOf([...readings, ...shallow]), BAND);
    const at = (place: number) => stretches.find(({ from, to }) => place >= from && place <= to)!;
    expect(at(1.2)).toMatchObject({ verdict: 'holds', simple: 'holds', miss: 'none' });
    expect(at(4)).toMatchObject({ verdict: 'fails', simple: 'fails', miss: 'shallow' });
    expect(stretches.map(({ verdict }) => verdict)).toContain('in_doubt');
    expect(stretches[0]!.from).toBe(0);
    expect(stretches.at(-1)!.to).toBeCloseTo(6, 9);
    stretches.slice(1).forEach((stretch, i) => {
      expect(stretch.from).toBe(stretches[i]!.to);
    });
  });

  it('says too deep where it is', () => {
    const deep = judgeSeam(depthOf([1, 2, 3, 4, 5].map((at) => read(at, 0.021))), BAND);
    expect(deep.find(({ verdict }) => verdict === 'fails')).toMatchObject({ miss: 'deep', simple: 'fails' });
  });

  it('gives a stretch too short to act on to its neighbour, the worse of both counting', () => {
    const at = Array.from({ length: 41 }, (_, i) => i * 0.005);
    const posterior = fuseSeam({ common: 0.001, course: 0.001, range: 0.25 }, [], at);
    const median = at.map((_, i) => (i === 20 ? 0.009 : 0.015));
    const stretches = judgeSeam({ median, posterior }, BAND);
    expect(stretches.map(({ verdict, miss }) => [verdict, miss])).toEqual([
      ['fails', 'shallow'],
      ['holds', 'none'],
    ]);
    expect(stretches[0]!.to).toBeCloseTo(0.1025, 9);
  });

  it('is wrong no more often than it says', () => {
    let saidHold = 0;
    let holdWrong = 0;
    let holdTold = 0;
    let saidFail = 0;
    let failWrong = 0;
    let failTold = 0;
    const stream = drawStream(77);
    for (let k = 0; k < 90; k += 1) {
      const truth = seamStates(SPREAD, [], AT).draw(stream);
      const median = 0.0115 + 0.005 * stream.uniform();
      const readings = [8, 30, 52, 75, 98, 112].map((i) => ({
        at: AT[i]!,
        value: truth[i]! + 0.02 * stream.normal(),
        sd: 0.02,
      }));
      const posterior = fuseSeam(SPREAD, readings, AT);
      for (const { from, to, verdict, wrongAccept, wrongReject } of judgeSeam(
        { median: AT.map(() => median), posterior },
        BAND,
      )) {
        const inside = AT.every((place, i) => {
          const depth = median * Math.exp(truth[i]!);
          return place < from || place > to || (depth >= BAND.least && depth <= BAND.most);
        });
        if (verdict === 'holds') {
          saidHold += 1;
          holdTold += wrongAccept;
          if (!inside) holdWrong += 1;
        } else if (verdict === 'fails') {
          saidFail += 1;
          failTold += wrongReject;
          if (inside) failWrong += 1;
        }
      }
    }
    expect(saidHold).toBeGreaterThan(35);
    expect(saidFail).toBeGreaterThan(8);
    const noise = (told: number) => 2.5 * Math.sqrt(Math.max(1, told));
    expect(holdWrong).toBeLessThanOrEqual(holdTold + noise(holdTold));
    expect(failWrong).toBeLessThanOrEqual(failTold + noise(failTold));
    expect(holdTold / saidHold).toBeLessThan(0.06);
  });
});

describe('where to measure next', () => {
  it('is in the stretch in doubt, and is enough in the end', () => {
    const held = [0.5, 1, 1.5, 2, 2.5, 3, 3.5].map((at) => read(at, 0.015, 1e-4));
    const doubtful = depthOf([...held, read(5, 0.0122, 1e-4)]);
    const { stations, risk } = nextStations(doubtful, BAND, 2e-4, STAKES);
    expect(stations.length).toBeGreaterThan(0);
    expect(stations[0]!.at).toBeGreaterThan(4.2);
    expect(stations[0]!.gain).toBeLessThan(risk);
    const sure = depthOf(AT.map((at) => read(at, 0.015, 1e-4)));
    expect(nextStations(sure, BAND, 2e-4, STAKES).stations).toEqual([]);
  });

  it('is worth nothing where the reading costs more than it can save', () => {
    const doubtful = depthOf([read(5, 0.0122, 1e-4)]);
    expect(nextStations(doubtful, BAND, 2e-4, { ...STAKES, perSecond: 1e6 }).stations).toEqual([]);
  });

  it('takes the risk away that it promises, on the mean', () => {
    const doubtful = depthOf([read(2, 0.0128)]);
    const { stations, risk } = nextStations(doubtful, BAND, 3e-4, STAKES);
    const place = stations[0]!.at;
    const stream = drawStream(3);
    const index = AT.indexOf(AT.find((at) => Math.abs(at - place) < 1e-9)!);
    let after = 0;
    const count = 60;
    for (let k = 0; k < count; k += 1) {
      const truth = doubtful.posterior.draw(stream);
      const depth = 0.0148 * Math.exp(truth[index]!);
      const seen = depth + 3e-4 * stream.normal();
      after +=
        nextStations(depthOf([read(2, 0.0128), read(place, seen)]), BAND, 3e-4, { ...STAKES, perSecond: 1e9 })
          .risk / count;
    }
    expect(Math.abs(risk - after - stations[0]!.gain)).toBeLessThan(0.35 * stations[0]!.gain);
  });
});

const LAW = {
  depth: 0.0148,
  travel: 0.012,
  power: 1.39,
  spread: { common: 0.05, course: 0.045, range: 0.25 },
  plateMost: 0.03,
  plateChance: 0.99,
  assurance: 0.95,
  ceiling: () => 1,
  travelLeast: 0.003,
  travelMost: 0.06,
  ramp: 0.012,
  density: 7850,
  width: 0.019,
};

describe('a recut', () => {
  const shallow = depthOf([3.8, 3.9, 4, 4.1, 4.2].map((at) => read(at, 0.0105, 1e-4)));
  const stretch = { from: 3.7, to: 4.3, miss: 'shallow' as const };

  it('takes what is missing and keeps below the greatest depth, with run-in and run-out', () => {
    const recut = recutOf(stretch, shallow, BAND, LAW);
    if (recut.kind !== 'pass') throw new Error(recut.kind);
    expect(recut.from).toBeCloseTo(3.688, 9);
    expect(recut.to).toBeCloseTo(4.312, 9);
    expect(recut.depth).toBeGreaterThan(0.0015);
    expect(recut.depth).toBeLessThan(0.0075);
    expect(recut.reached).toBeGreaterThan(0.9);
    expect(recut.notTooDeep).toBeGreaterThan(0.9);
    expect(recut.passes).toBe(1);
    expect(recut.travel).toBeCloseTo(0.012 * (0.0148 / recut.depth) ** (1 / 1.39), 9);
  });

  it('reaches the depth, and goes too deep, as often as it says in floors of its own', () => {
    const recut = recutOf(stretch, shallow, BAND, LAW);
    if (recut.kind !== 'pass') throw new Error(recut.kind);
    const stream = drawStream(4711);
    const fresh = seamStates(LAW.spread, [], AT);
    let [reached, kept] = [0, 0];
    const count = 1500;
    for (let k = 0; k < count; k += 1) {
      const [floor, cut] = [shallow.posterior.draw(stream), fresh.draw(stream)];
      const after = AT.map((place, i) => {
        const ramp = Math.min(1, Math.max(0, Math.min(place - recut.from, recut.to - place) / recut.ramp));
        return 0.0148 * Math.exp(floor[i]!) + ramp * recut.depth * Math.exp(cut[i]!);
      });
      const on = (i: number): boolean => AT[i]! >= recut.from - 1e-9 && AT[i]! <= recut.to + 1e-9;
      if (after.every((depth, i) => AT[i]! < 3.7 - 1e-9 || AT[i]! > 4.3 + 1e-9 || depth >= BAND.least))
        reached += 1;
      if (after.every((depth, i) => !on(i) || depth <= BAND.most)) kept += 1;
    }
    expect(Math.abs(reached / count - recut.reached)).toBeLessThan(0.03);
    expect(Math.abs(kept / count - recut.notTooDeep)).toBeLessThan(0.03);
  });

  it('takes several passes where one may not cut so much, and never more than the arc can melt', () => {
    const little = { ...LAW, travelLeast: 0.026 };
    const recut = recutOf(
      stretch,
      depthOf([3.8, 3.9, 4, 4.1, 4.2].map((at) => read(at, 0.005, 1e-4))),
      BAND,
      little,
    );
    if (recut.kind !== 'pass') throw new Error(recut.kind);
    expect(recut.passes).toBeGreaterThan(1);
    expect(recut.travel).toBeGreaterThanOrEqual(0.026);
    const weak = recutOf(stretch, shallow, BAND, { ...LAW, ceiling: () => 2e-4 });
    expect(weak.kind).toBe('none');
  });

  it('is left to the grinder where the carriage cannot cut so thin, and refused where too much is missing', () => {
    expect(recutOf(stretch, shallow, BAND, { ...LAW, travelMost: 0.013 }).kind).toBe('grind');
    expect(
      recutOf(stretch, depthOf([4, 4.1].map((at) => read(at, 0.002, 1e-4))), BAND, {
        ...LAW,
        travelLeast: 0.05,
      }).kind,
    ).toBe('none');
  });

  it('waits until the ends of a fault were gauged: over good groove it would go too deep', () => {
    const fault = (before: number, after: number) => ({ ...stretch, unseen: { before, after } });
    const limit = Math.max(LAW.ramp, LAW.width);
    const open = recutOf(fault(0, limit * 1.001), shallow, BAND, LAW);
    if (open.kind !== 'none') throw new Error(open.kind);
    expect(open.missing).toBeGreaterThan(0);
    expect(open.reason).toMatch(/gauge to both sides/u);
    expect(recutOf(fault(limit * 1.001, 0), shallow, BAND, LAW).kind).toBe('none');
    expect(recutOf(fault(limit, limit), shallow, BAND, LAW)).toEqual(recutOf(stretch, shallow, BAND, LAW));
    expect(hasUnseenEnds(fault(limit, limit), LAW)).toBe(false);
    expect(hasUnseenEnds({}, LAW)).toBe(false);
  });

  it('is refused where the plate might be cut through, however shallow the groove', () => {
    const over = { ...LAW, plateMost: 0.011 };
    const recut = recutOf(stretch, shallow, BAND, over);
    if (recut.kind === 'pass' || recut.kind === 'weld') throw new Error(recut.kind);
    expect(recut.reason).toMatch(/plate its least thickness/u);
    const spare = recutOf(stretch, shallow, BAND, { ...LAW, plateMost: 0.0165, plateChance: 0.99 });
    if (spare.kind !== 'pass') throw new Error(spare.kind);
    expect(spare.plateKept).toBeGreaterThanOrEqual(0.99);
    const free = recutOf(stretch, shallow, BAND, LAW);
    if (free.kind !== 'pass') throw new Error(free.kind);
    expect(free.plateKept).toBe(1);
  });

  it('is weld metal where it is too deep: what lies beyond the greatest depth', () => {
    const deep = depthOf(AT.map((at) => read(at, 0.02, 5e-5)));
    const weld = recutOf({ from: 1, to: 2, miss: 'deep' }, deep, BAND, LAW);
    if (weld.kind !== 'weld') throw new Error(weld.kind);
    expect(weld.over).toBeCloseTo(0.002, 4);
    expect(weld.weldMetal).toBeCloseTo(0.002 * 0.019 * 1 * 7850, 2);
  });
});

describe('a fault that one place tells of', () => {
  it('has its ends gauged first, half way over what nobody has seen', () => {
    const other = { at: 1, gain: 0.01, gainPerMinute: 0.02 };
    const fault = {
      from: 3.9,
      to: 4.05,
      unseen: { before: 0.1, after: 0.05 },
    };
    const { stations, risk } = withFaultEnds({ risk: 7, stations: [other] }, [fault], {
      perMetre: 4,
      readingTime: 120,
    });
    expect(risk).toBe(7);
    expect(stations.map(({ at }) => at)).toEqual([expect.closeTo(3.95), expect.closeTo(4.025), 1]);
    expect(stations[0]).toMatchObject({ gain: expect.closeTo(0.2), gainPerMinute: expect.closeTo(0.1) });
  });
});

describe('a stretch that no repair pass mends', () => {
  const law = {
    ...{ depth: 0.01, travel: 0.01, power: 1.4, travelLeast: 0.002, ramp: 0.01, density: 7850, width: 0.016 },
    ...{ spread: { common: 0.01, course: 0.01, range: 0.25 }, plateMost: 0.03, plateChance: 0.99 },
    ...{ assurance: 0.95, ceiling: () => 1 },
  };
  const depth = { median: AT.map(() => 0.0105), posterior: fuseSeam(law.spread, [], AT) };

  it('is told with the depth that is missing on the mean', () => {
    const slow = recutOf({ from: 2, to: 3, miss: 'shallow' }, depth, BAND, { ...law, travelMost: 0.004 });
    expect(slow.kind).toBe('grind');
    expect(slow.kind === 'grind' && slow.missing).toBeCloseTo(0.0015, 9);
  });

  it('is filled where it is too deep, by the weld metal of its width and length', () => {
    const deep = { ...depth, median: AT.map(() => 0.02) };
    const filled = recutOf({ from: 2, to: 3, miss: 'deep' }, deep, BAND, { ...law, travelMost: 0.05 });
    expect(filled).toMatchObject({ kind: 'weld', over: expect.closeTo(0.002, 9) });
    expect(filled.kind === 'weld' && filled.weldMetal).toBeCloseTo(0.002 * 0.016 * 1 * 7850, 9);
  });
});
