import { type Connection, formatStated, type UnitSystem } from '@furrow/engine';
import { conductorWords } from './conductor-words.ts';

/** What is known of a connection, in the units of the reader; empty where it is not known. */
export interface ConnectionWords {
  /** Size of the conductor or hose, with how many lie side by side. */
  readonly size: string;
  readonly length: string;
  /** What the electric loop loses there at the set current. */
  readonly loss: string;
}

/** Size, length and loss of a connection. */
export function connectionWords(
  { size, parallels, length_mm, voltage_V }: Connection,
  units: UnitSystem,
): ConnectionWords {
  const many = parallels === null || parallels === 1 ? '' : `${parallels} × `;
  return {
    size: size === null ? '' : `${many}${conductorWords(size, units)}`,
    length: length_mm === null ? '' : formatStated(length_mm, 'mm', units, 'length'),
    loss: voltage_V === null ? '' : formatStated(voltage_V, 'V', units),
  };
}
