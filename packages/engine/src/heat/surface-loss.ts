import { potentialAt, type ThermalTables } from './thermal-tables.ts';

/** How a free face loses heat to its surroundings. */
export interface SurfaceLoss {
  /** Temperature of the surroundings [K]. */
  readonly ambient: number;
  /** Film coefficient [W/(m2 K)]. */
  readonly film: number;
  /** Emissivity [-]. */
  readonly emissivity: number;
}

/** Constant of Stefan and Boltzmann [W/(m2 K4)]. */
const RADIATION = 5.670374419e-8;
/** Still air at a face that no fire heats, EN 1991-1-2 3.1, from memory [W/(m2 K)]. */
const STILL_AIR = 4;
/** Steel, EN 1993-1-2 2.2, from memory [-]. */
const STEEL_EMISSIVITY = 0.7;

/** Loss of a plate that stands in still air of a temperature [K]. */
export function stillAirLoss(ambient: number): SurfaceLoss {
  return { ambient, film: STILL_AIR, emissivity: STEEL_EMISSIVITY };
}

/** Loss of a face over the table's nodes. */
interface LossTable {
  /** Flux of a face as hot as its node [W/m2]. */
  readonly flux: Float64Array;
  /** Flux over potential from the surroundings: the ease of the film against that of the metal [1/m]. */
  readonly ratio: Float64Array;
}

/** Flux from each node, and what of it a half cell of metal in front of the face leaves. */
export function lossTable(tables: ThermalTables, loss: SurfaceLoss): LossTable {
  const { ambient, film, emissivity } = loss;
  const flux = tables.temperature.map(
    (hot) => film * (hot - ambient) + emissivity * RADIATION * (hot ** 4 - ambient ** 4),
  );
  const outside = potentialAt(tables, ambient);
  const conductivity = potentialAt(tables, ambient + 0.5) - potentialAt(tables, ambient - 0.5);
  const level = (film + 4 * emissivity * RADIATION * ambient ** 3) / conductivity;
  const ratio = flux.map((value, node) => {
    const gap = tables.temperature[node]! - ambient;
    return Math.abs(gap) < 0.1 ? level : value / (tables.potential[node]! - outside);
  });
  return { flux, ratio };
}
