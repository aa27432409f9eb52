import type { HeatFrame } from './field.ts';
import { depthAt, type FloorLine } from './floor-line.ts';
import type { StepSeen } from './march.ts';
import type { SectionCells } from './section-cells.ts';
import type { SectionGrid } from './section-grid.ts';
import { stateWithin } from './step-state.ts';
import { type ThermalTables, temperatureAt } from './thermal-tables.ts';

/** What is cut at a time. */
export interface CutState {
  /** Passes begun [-]. */
  readonly pass: number;
  readonly section: SectionCells;
  readonly floor: FloorLine;
}

/** One frame from the enthalpy of every cell. */
export function frameOf(
  time: number,
  grid: SectionGrid,
  tables: ThermalTables,
  { pass, section, floor }: CutState,
  enthalpy: (cell: number) => number,
): HeatFrame {
  const temperature = new Float32Array(section.holder.length);
  section.holder.forEach((holder, cell) => {
    temperature[cell] = holder < 0 ? Number.NaN : temperatureAt(tables, enthalpy(holder));
  });
  const depths = Float32Array.from(grid.across.centres, (offset) => depthAt(floor, offset));
  return { time, pass, temperature, floor: depths };
}

/** The same within a step. */
export function frameWithin(
  time: number,
  grid: SectionGrid,
  tables: ThermalTables,
  cut: CutState,
  step: StepSeen,
): HeatFrame {
  return frameOf(time, grid, tables, cut, (cell) => stateWithin(step, cell, time));
}
