import { fireZone, zoneOutlines } from '../hazard/index.ts';
import type { Job } from '../job/index.ts';
import type { Kit } from '../kit/index.ts';
import type { FireZoneReport, PointReport } from '../result/index.ts';

/** Longest watch after the last arc that the rules name [min]. */
const LONGEST_WATCH = 60;

/** The fire zone of a job, outlined in the bay of the kit or around a straight seam. */
export function reportFireZone({ site, seam }: Job, kit: Kit | undefined): FireZoneReport {
  const zone = fireZone(site.fire);
  const bay = kit?.bay?.seam;
  const path = bay ?? [
    { x: 0, y: 0 },
    { x: seam.path === 'girth' ? (seam.diameter ?? seam.length) : seam.length, y: 0 },
  ];
  const bothWays = seam.path === 'girth';
  const { round, withJet } = zoneOutlines(path, zone, bothWays);
  return {
    radius_m: zone.radius,
    ahead_m: zone.ahead,
    up_m: zone.up,
    down_m: zone.down,
    watch_min: LONGEST_WATCH,
    direction:
      DIRECTIONS[seam.position] + (bothWays ? ' Round a girth it turns through every direction.' : ''),
    both_ways: bothWays,
    plan: bay === undefined ? 'seam' : 'bay',
    seam_m: path.map(pointOf),
    round_m: round.map(pointOf),
    with_jet_m: withJet.map(pointOf),
  };
}

const DIRECTIONS: Readonly<Record<Job['seam']['position'], string>> = {
  flat: 'The torch pushes: the jet lies along the electrode and throws the melt ahead of the travel, low over the plate.',
  horizontal:
    'The torch pushes: the jet throws the melt ahead of the travel along the wall, from where it falls.',
  vertical_down:
    'The torch pushes downwards: the jet throws the melt down the wall and out over the floor below.',
  overhead: 'The torch pushes: the jet throws the melt ahead of the travel, and all of it falls.',
};

function pointOf({ x, y }: { readonly x: number; readonly y: number }): PointReport {
  return { x_m: x, y_m: y };
}
