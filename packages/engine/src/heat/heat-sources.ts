import type { HeatBody } from './heat-body.ts';

/** Heat put into one cell. */
export interface CellSource {
  /** Number of the cell in the whole body [-]. */
  readonly cell: number;
  /** Power [W]. */
  readonly power: number;
}

/** Lays the sources down that work from now on; none switches all off. */
export function laySources(body: HeatBody, sources: readonly CellSource[]): void {
  const { sourceCell, sourcePower } = body.kernel.memory;
  sources.forEach(({ cell, power }, at) => {
    sourceCell[at] = cell;
    sourcePower[at] = power;
  });
  body.kernel.countSources(sources.length);
}

/** Heat in the body over that at the start [J]. */
export function storedHeat({ kernel, volume, reference }: HeatBody): number {
  const { now } = kernel.memory;
  let heat = 0;
  for (let cell = 0; cell < volume.length; cell += 1) heat += volume[cell]! * (now[cell]! - reference);
  return heat;
}
