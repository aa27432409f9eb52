import { fromUnit, parseAmount } from '@furrow/engine';
import { entriesAt, type TextFile, writtenAt } from '../../sheet/document/index.ts';

/** Lengths this near each other are the same electrode [m]. */
const SAME = 1e-6;

/** An electrode's diameter as the kit of the file writes it, `5/16 in` rather than 7.9375 mm. */
export function kitSpelling(file: TextFile, diameter_mm: number): string | undefined {
  const list = ['kit', 'electrodes'];
  for (let index = 0; index < entriesAt(file, list); index += 1) {
    const written = writtenAt(file, [...list, index, 'diameter']);
    const read = written === undefined ? undefined : parseAmount(written, 'length');
    if (read?.ok && Math.abs(read.value - fromUnit(diameter_mm, 'mm')) < SAME) return written;
  }
  return undefined;
}
