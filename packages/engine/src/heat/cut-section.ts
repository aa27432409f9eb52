import { type CellShare, type HeatBody, layCells } from './heat-body.ts';
import type { SectionCells } from './section-cells.ts';

/** Cuts one place along down to other cells; returns the heat that leaves with the metal, over the start's [J]. */
export function cutSection(
  body: HeatBody,
  place: number,
  section: SectionCells,
  free: readonly CellShare[],
): number {
  const { plane, kernel, grid, reference } = body;
  const { now, peak } = kernel.memory;
  const before = body.sections[place]!;
  const start = place * plane;
  const heat = new Float64Array(plane);
  const length = grid.along.widths[place]!;
  const columns = grid.across.widths.length;
  let gone = 0;
  for (let cell = 0; cell < plane; cell += 1) {
    const holder = before.holder[cell]!;
    if (holder < 0) continue;
    const full =
      grid.across.widths[cell % columns]! * grid.below.widths[Math.floor(cell / columns)]! * length;
    const warmth = now[start + holder]! - reference;
    const to = section.holder[cell]!;
    const kept = to < 0 ? 0 : section.share[cell]!;
    if (to >= 0) heat[to] = heat[to]! + kept * full * warmth;
    gone += (before.share[cell]! - kept) * full * warmth;
  }
  body.sections[place] = section;
  body.free[place] = free;
  for (let cell = 0; cell < plane; cell += 1) {
    const held = section.area[cell]! * length;
    if (held === 0) continue;
    const at = start + cell;
    now[at] = reference + heat[cell]! / held;
    peak[at] = Math.max(peak[at]!, now[at]!);
  }
  layCells(body, place, place + 1);
  return gone;
}
