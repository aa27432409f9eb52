import { type FireZoneReport, fireZone, zoneOutlines } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { fireZoneDrawing } from './fire-zone-drawing.ts';

function zoneOf(bothWays: boolean): FireZoneReport {
  const seam = [
    { x: 0, y: 0 },
    { x: 6, y: 0 },
  ];
  const { radius, ahead, up, down } = fireZone({ ahead: 22.86, height: 2 });
  const { round, withJet } = zoneOutlines(seam, { radius, ahead, up, down }, bothWays);
  const points = (list: readonly { x: number; y: number }[]) => list.map(({ x, y }) => ({ x_m: x, y_m: y }));
  return {
    radius_m: radius,
    ahead_m: ahead,
    up_m: up,
    down_m: down,
    watch_min: 60,
    direction: '',
    both_ways: bothWays,
    plan: 'seam',
    seam_m: points(seam),
    round_m: points(round),
    with_jet_m: points(withJet),
  };
}

const drawn = (bothWays: boolean, width: number) =>
  fireZoneDrawing({ zone: zoneOf(bothWays), units: 'metric', width, heightMost: 300 });

describe('the fire zone', () => {
  it.each([300, 700, 1200])('lies wholly on a drawing %d wide', (width) => {
    const drawing = drawn(false, width);
    const lines = drawing.marks.flatMap((mark) => (mark.kind === 'polyline' ? mark.points : []));
    for (const { x, y } of lines) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(drawing.width);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(drawing.height);
    }
  });

  it('shows its two lines, told apart by role and named with their reach', () => {
    const { marks, description } = drawn(false, 600);
    const roles = marks.map(({ role }) => role);
    expect(roles).toContain('fire-zone');
    expect(roles).toContain('jet-zone');
    expect(description).toContain('10.67 m all round');
    expect(description).toContain('22.86 m ahead of the torch');
  });

  it('has one arrow along the jet, or two where it may go either way', () => {
    const arrows = (bothWays: boolean): number =>
      drawn(bothWays, 600).marks.filter(({ kind, role }) => kind === 'area' && role === 'jet').length;
    expect([arrows(false), arrows(true)]).toEqual([1, 2]);
  });
});
