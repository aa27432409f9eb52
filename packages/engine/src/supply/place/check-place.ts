import type { Issue } from '../../issue/index.ts';
import type { BayPoint, StationTask } from './bay.ts';
import { sideOf } from './plane.ts';

/** Places that one search may look at. */
const CELLS_MOST = 250_000;

/** What is wrong with a task, empty when nothing is. */
export function checkPlace(task: StationTask): readonly Issue[] {
  const { bay, stock } = task;
  const issues: Issue[] = [];
  const report = (path: string, message: string): void =>
    void issues.push({ code: 'PLACE_VALUE', path, message });
  const area = (path: string, what: string, corners: readonly BayPoint[]): void => {
    if (corners.length < 3 || corners.some(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y))) {
      report(path, `${what} has ${corners.length} corners that can be read; at least three are needed.`);
    } else if (Math.abs(signedArea(corners)) < 1e-6)
      report(path, `${what} has no area; give its corners in their order.`);
  };
  area('bay.outline', 'The bay', bay.outline);
  area('bay.workpiece', 'The workpiece', bay.workpiece.corners);
  for (const [i, { id, corners }] of bay.obstacles.entries()) area(`bay.obstacles[${i}]`, id, corners);
  for (const [i, { id, corners }] of bay.walkways.entries()) area(`bay.walkways[${i}]`, id, corners);
  if (bay.seam.length < 2)
    report('bay.seam', `The seam has ${bay.seam.length} points; at least two are needed.`);
  for (const [path, value, such] of [
    ['current', task.current, '400 A'],
    ['grid', task.grid, '0.25 m'],
    ['cleatEvery', task.cleatEvery, '2 m'],
  ] as const) {
    if (!(value > 0 && Number.isFinite(value))) {
      report(path, `${path} is ${value}; a value above 0 is needed, such as ${such}.`);
    }
  }
  for (const [path, value] of [
    ['bay.keepOut', bay.keepOut],
    ['bay.clearance', bay.clearance],
    ['bay.leadClearance', bay.leadClearance ?? 0],
    ['bay.jet.ahead', bay.jet?.ahead ?? 0],
    ['jointResistance', task.jointResistance],
    ['jointPressureLoss', task.jointPressureLoss],
    ['pressureWeight', task.pressureWeight],
    ['slack', task.slack],
    ['tail', task.tail],
    ['stock.covers', stock.covers],
  ] as const) {
    if (!(value >= 0 && Number.isFinite(value))) report(path, `${path} is ${value}; 0 or more is needed.`);
  }
  for (const [path, kinds] of [
    ['stock.leads', stock.leads.map((lead) => ({ ...lead, perLength: lead.resistance }))],
    ['stock.hoses', stock.hoses.map((hose) => ({ ...hose, perLength: hose.pressureLoss }))],
  ] as const) {
    for (const [i, { id, length, count, perLength }] of kinds.entries()) {
      if (length > 0 && Number.isFinite(length) && Number.isInteger(count) && count >= 0 && perLength >= 0)
        continue;
      report(
        `${path}[${i}]`,
        `${id} has a length of ${length} m, a count of ${count} and a loss of ${perLength} per metre; a length above 0, a whole count and no negative loss are needed.`,
      );
    }
  }
  if (issues.length > 0) return issues;
  for (const [path, what, points] of [
    ['bay.powerSource', 'The power source', [bay.powerSource]],
    ['bay.airDrop', 'The air drop', [bay.airDrop]],
    ['bay.seam', 'The seam', bay.seam],
    ['bay.workClamp', 'The work clamp', bay.workClamp === undefined ? [] : [bay.workClamp]],
  ] as const) {
    const out = points.find((point) => sideOf(point, bay.outline) === 'outside');
    if (out !== undefined) report(path, `${what} lies at ${out.x} m, ${out.y} m, outside the bay.`);
    const blocked = points.flatMap((point) =>
      bay.obstacles.filter(({ corners }) => sideOf(point, corners) === 'inside').map(({ id }) => id),
    );
    if (blocked.length > 0) report(path, `${what} lies inside ${blocked[0]}, where no lead can reach it.`);
  }
  const cells = cellsOf(bay.outline, task.grid);
  if (cells > CELLS_MOST) {
    const message = `A grid of ${task.grid} m gives ${cells} places; at most ${CELLS_MOST} are looked at. Use a coarser grid.`;
    issues.push({ code: 'SEARCH_TOO_LARGE', path: 'grid', message });
  }
  return issues;
}

function cellsOf(outline: readonly BayPoint[], grid: number): number {
  const span = (axis: 'x' | 'y'): number =>
    Math.max(...outline.map((p) => p[axis])) - Math.min(...outline.map((p) => p[axis]));
  return Math.ceil(span('x') / grid) * Math.ceil(span('y') / grid);
}

function signedArea(corners: readonly BayPoint[]): number {
  return corners.reduce((sum, a, i) => {
    const b = corners[(i + 1) % corners.length]!;
    return sum + (a.x * b.y - b.x * a.y) / 2;
  }, 0);
}
