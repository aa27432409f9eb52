import { type Axis, axisOf } from './axis.ts';
import type { HeatFrame } from './field.ts';
import { depthAt, type FloorLine } from './floor-line.ts';

/** How much deeper one side may be for a floor to count as the mirror of itself [m]. */
const SAME_DEPTH = 1e-6;

/** Whether a floor is the same on both sides of the groove's centre line, so that half of the section tells the whole. */
export function isMirrored(floor: FloorLine): boolean {
  return floor.every(
    ({ offset }) => Math.abs(depthAt(floor, offset) - depthAt(floor, -offset)) <= SAME_DEPTH,
  );
}

/** The floor from the centre line to the right; its cut end at the centre line is no face. */
export function rightHalf(floor: FloorLine): FloorLine {
  const right = floor.filter(({ offset }) => offset > 0);
  return right.length === 0 ? [] : [{ offset: 0, depth: depthAt(floor, 0) }, ...right];
}

/** Both sides of an axis that begins at the centre line. */
export function mirroredAxis({ edges }: Axis): Axis {
  return axisOf([...Array.from(edges.subarray(1), (edge) => -edge).reverse(), ...edges]);
}

/** Number of the cell in the half that stands for a cell of the whole, by column [-]. */
export function folded(column: number, halfColumns: number): number {
  return column < halfColumns ? halfColumns - 1 - column : column - halfColumns;
}

/** Both sides of rows of values that begin at the centre line. */
export function mirroredRows(half: Float32Array, halfColumns: number): Float32Array {
  const columns = 2 * halfColumns;
  const whole = new Float32Array(2 * half.length);
  for (let at = 0; at < whole.length; at += 1) {
    const row = Math.floor(at / columns);
    whole[at] = half[row * halfColumns + folded(at % columns, halfColumns)]!;
  }
  return whole;
}

/** Both sides of a frame. */
export function mirroredFrame(frame: HeatFrame, halfColumns: number): HeatFrame {
  return {
    ...frame,
    temperature: mirroredRows(frame.temperature, halfColumns),
    floor: mirroredRows(frame.floor, halfColumns),
  };
}
