import type { PointReport } from '@furrow/engine';

/** A rectangle of the plan. */
export interface PlanFrame {
  /** Left and lower corner [m]. */
  readonly least: PointReport;
  /** Right and upper corner [m]. */
  readonly most: PointReport;
}

/** The stretches of a line that lie in a frame, each cut where it leaves it (Liang and Barsky). */
export function clipLine(
  points: readonly PointReport[],
  frame: PlanFrame,
): readonly (readonly PointReport[])[] {
  const stretches: PointReport[][] = [];
  let open = false;
  points.slice(1).forEach((to, index) => {
    const from = points[index]!;
    const part = partInside(from, to, frame);
    if (part === undefined) {
      open = false;
      return;
    }
    const [start, end] = part;
    if (open && start === 0) stretches.at(-1)?.push(between(from, to, end));
    else stretches.push([between(from, to, start), between(from, to, end)]);
    open = end === 1;
  });
  return stretches;
}

/** From where to where a piece lies in the frame, as shares of its length; undefined if nowhere. */
function partInside(
  from: PointReport,
  to: PointReport,
  { least, most }: PlanFrame,
): readonly [start: number, end: number] | undefined {
  const dx = to.x_m - from.x_m;
  const dy = to.y_m - from.y_m;
  let start = 0;
  let end = 1;
  for (const [step, room] of [
    [-dx, from.x_m - least.x_m],
    [dx, most.x_m - from.x_m],
    [-dy, from.y_m - least.y_m],
    [dy, most.y_m - from.y_m],
  ] as const) {
    if (step === 0) {
      if (room < 0) return undefined;
    } else if (step < 0) start = Math.max(start, room / step);
    else end = Math.min(end, room / step);
  }
  return start < end ? [start, end] : undefined;
}

function between(from: PointReport, to: PointReport, share: number): PointReport {
  if (share === 0) return from;
  if (share === 1) return to;
  return {
    x_m: from.x_m + share * (to.x_m - from.x_m),
    y_m: from.y_m + share * (to.y_m - from.y_m),
  };
}
