import { describe, expect, it } from 'vitest';
import { type Bay, type BayPoint, LAYING_PRACTICE, type StationTask } from './bay.ts';
import { chooseStation, type StationChoice, stationAt } from './choose-station.ts';
import { inJet } from './jet.ts';
import { distanceToSegment } from './plane.ts';

const box = (x: number, y: number, w: number, h: number): BayPoint[] => [
  { x, y },
  { x: x + w, y },
  { x: x + w, y: y + h },
  { x, y: y + h },
];
const seam = [
  { x: 10, y: 6 },
  { x: 16, y: 6 },
];

function taskWith(change: Partial<Bay> = {}): StationTask {
  return {
    bay: {
      outline: box(0, 0, 22, 12),
      obstacles: [],
      walkways: [],
      powerSource: { x: 1, y: 6 },
      airDrop: { x: 1, y: 8 },
      workpiece: { id: 'shell', corners: box(9.5, 5, 7, 2) },
      seam,
      workClamp: { x: 9.7, y: 5.2 },
      keepOut: 1.5,
      clearance: 0.4,
      leadClearance: 0.6,
      jet: { ahead: 20, bothWays: false },
      ...change,
    },
    stock: {
      leads: [{ id: 'lead 20 m', length: 20, count: 8, resistance: 2e-4 }],
      hoses: [{ id: 'hose 20 m', length: 20, count: 6, pressureLoss: 1200 }],
      covers: 2,
    },
    current: 500,
    jointResistance: 1e-4,
    jointPressureLoss: 800,
    pressureWeight: 0.004,
    grid: 0.5,
    ...LAYING_PRACTICE,
  };
}

function chosen(task: StationTask): StationChoice {
  const outcome = chooseStation(task);
  if (!outcome.ok) throw new Error(outcome.issues.map(({ message }) => message).join('\n'));
  return outcome.value;
}

describe('a bay with a jet in it', () => {
  it.each([
    ['as drawn', {}],
    ['the seam reversed', { seam: seam.toReversed() }],
    ['run either way', { jet: { ahead: 20, bothWays: true } }],
    ['power and air at the far end', { powerSource: { x: 21, y: 6 }, airDrop: { x: 21, y: 8 } }],
  ] satisfies [string, Partial<Bay>][])('keeps the station out of it: %s', (_, change) => {
    const { bay } = taskWith(change);
    expect(inJet(chosen(taskWith(change)).station, bay.seam, bay.jet!)).toBe(false);
  });

  it('does not let the station stand there when it is stated', () => {
    const outcome = stationAt(taskWith(), { x: 19, y: 6 });
    expect(outcome.ok ? '' : outcome.issues[0]!.message).toContain('clear of where the jet throws');
  });

  it('cautions a clamp, a post and a walkway in it, and nothing that is clear of it', () => {
    expect(chosen(taskWith()).cautions).toEqual([]);
    const { cautions } = chosen(
      taskWith({
        workClamp: { x: 16.3, y: 6 },
        walkways: [{ id: 'gangway', corners: box(20, 5, 1, 2) }],
        airDrop: { x: 19, y: 7 },
      }),
    );
    expect(cautions.join('\n')).toMatch(/^The work clamp stands where the jet throws/);
    expect(cautions.join('\n')).toContain('The air drop stands where the jet throws');
    expect(cautions.join('\n')).toContain('“gangway” lies where the jet throws');
  });
});

describe('leads beside a seam', () => {
  it('keep their distance, and come to it at right angles', () => {
    for (const { run, way } of chosen(taskWith({ workClamp: { x: 13, y: 6.3 } })).runs) {
      for (const [i, to] of way.slice(1).entries()) {
        const from = way[i]!;
        const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
        const near = distanceToSegment(middle, seam[0]!, seam[1]!) < 0.6 - 1e-9;
        if (near) expect(Math.abs(to.x - from.x), run).toBeLessThan(1e-9);
      }
    }
  });

  it('are longer for it, never shorter', () => {
    const far = { workClamp: { x: 15.5, y: 6.3 } };
    const kept = chosen(taskWith(far)).runs.find(({ run }) => run === 'source to work clamp')!;
    const free = chosen(taskWith({ ...far, leadClearance: 0 })).runs.find(
      ({ run }) => run === 'source to work clamp',
    )!;
    expect(kept.needed_m).toBeGreaterThan(free.needed_m);
  });

  it('run beside it where there is no other way, and that is cautioned', () => {
    // A narrow bay: nothing gets past the band along the seam.
    const task = taskWith({
      outline: box(0, 5.4, 22, 1.2),
      powerSource: { x: 1, y: 6 },
      airDrop: { x: 1, y: 6.2 },
      workpiece: { id: 'bar', corners: box(9.5, 5.9, 7, 0.2) },
      workClamp: { x: 16.55, y: 6.2 },
    });
    expect(chosen(task).cautions.join('\n')).toMatch(/lies beside the seam/);
  });
});
