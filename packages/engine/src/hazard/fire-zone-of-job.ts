import type { Job } from '../job/index.ts';
import type { PlanPoint } from './convex-hull.ts';
import { fireZone } from './fire-zone.ts';
import type { FireZoneOutcome } from './outcome.ts';
import { zoneOutlines } from './zone-outline.ts';

/** Longest watch after the last arc that the rules name [s]. */
const LONGEST_WATCH = 3600;

/** The fire zone of a job, outlined in the bay of the kit or around a straight seam. */
export function fireZoneOfJob({ site, seam }: Job, bay: readonly PlanPoint[] | undefined): FireZoneOutcome {
  const zone = fireZone(site.fire);
  const path = bay ?? [
    { x: 0, y: 0 },
    { x: seam.path === 'girth' ? (seam.diameter ?? seam.length) : seam.length, y: 0 },
  ];
  const bothWays = seam.path === 'girth';
  const { round, withJet } = zoneOutlines(path, zone, bothWays);
  return {
    ...zone,
    watch: LONGEST_WATCH,
    direction:
      DIRECTIONS[seam.position] + (bothWays ? ' Round a girth it turns through every direction.' : ''),
    bothWays,
    plan: bay === undefined ? 'seam' : 'bay',
    seam: path,
    round,
    withJet,
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
