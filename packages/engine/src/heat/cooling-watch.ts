import type { StepSeen } from './march.ts';
import { fallThrough } from './step-state.ts';
import { enthalpyAt, type ThermalTables } from './thermal-tables.ts';

/** 800 degC [K]. */
const UPPER = 1073.15;
/** 500 degC [K]. */
const LOWER = 773.15;

/** Watches cells fall from 800 to 500 degC. */
export interface CoolingWatch {
  readonly see: (step: StepSeen) => void;
  /** Time from 800 to 500 degC of each cell, the last time it fell through 800; NaN where it did not reach both [s]. */
  readonly times: () => Float64Array;
}

/** A watch over the cells given. */
export function coolingWatch(tables: ThermalTables, cells: readonly number[]): CoolingWatch {
  const upper = enthalpyAt(tables, UPPER);
  const lower = enthalpyAt(tables, LOWER);
  const from = new Float64Array(cells.length).fill(Number.NaN);
  const took = new Float64Array(cells.length).fill(Number.NaN);
  return {
    see: (step) => {
      cells.forEach((cell, at) => {
        const above = fallThrough(step, cell, upper);
        if (above !== undefined) {
          from[at] = above;
          took[at] = Number.NaN;
        }
        const below = fallThrough(step, cell, lower);
        if (below !== undefined && Number.isNaN(took[at]!)) took[at] = below - from[at]!;
      });
    },
    times: () => took,
  };
}
