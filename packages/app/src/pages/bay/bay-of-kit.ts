import type { AreaReport, BayReport, Kit, PointReport } from '@furrow/engine';

/** The bay of a kit as a plan view draws it; the kit itself, so that a change shows before it is planned. */
export function bayOfKit(kit: Kit): BayReport | undefined {
  const { bay, sources } = kit;
  if (bay === undefined) return undefined;
  const area = ({ name, outline }: { name: string; outline: readonly KitPoint[] }): AreaReport => ({
    name,
    outline_m: outline.map(placeOf),
  });
  return {
    outline_m: bay.outline.map(placeOf),
    obstacles: (bay.obstacles ?? []).map(area),
    walkways: (bay.walkways ?? []).map(area),
    workpiece: area(bay.workpiece),
    seam_m: bay.seam.map(placeOf),
    posts: [
      {
        name: sources.length === 1 ? 'power source' : 'power sources',
        kind: 'power',
        at_m: placeOf(bay.power),
      },
      { name: 'air drop', kind: 'air', at_m: placeOf(bay.air) },
      ...(bay.work_clamp === undefined
        ? []
        : [{ name: 'work clamp', kind: 'work clamp', at_m: placeOf(bay.work_clamp) } as const]),
    ],
    keep_out_m: bay.keep_out,
  };
}

interface KitPoint {
  readonly x: number;
  readonly y: number;
}

function placeOf({ x, y }: KitPoint): PointReport {
  return { x_m: x, y_m: y };
}
