import { type Observation, type RegressionBelief, updateBelief } from '../numeric/index.ts';
import { depthRegressors, type PassSetting } from './setting.ts';

/** One published operating point: how a pass was run and what it left. */
export interface RemovalRow {
  /** Identifier in the published table. */
  readonly id: string;
  readonly setting: PassSetting;
  /** Depth of the groove [m]. */
  readonly depth: number;
  /** Width of the groove, where the row has one [m]. */
  readonly width?: number;
  /** Electrode burnt off per time, where the row has one [m/s]. */
  readonly wear?: number;
}

/** What operating rows of many rigs say of depth, width and wear: least squares with a weak prior. */
export interface RowFit {
  /** ln(h / D) = a + b ln q + c (angle - 45 deg) / 15 deg. */
  readonly depth: RegressionBelief;
  /** Width less the electrode diameter [m]. */
  readonly extraWidth: RegressionBelief;
  /** ln of the electrode volume burnt per ampere-second [ln(m3/(A s))]. */
  readonly wear: RegressionBelief;
}

/**
 * What is held before any row is seen: flat in level and slope of the depth law, weak in the angle.
 * c: mean 0.05, standard deviation 0.10 at s = 0.23 (a steeper electrode digs a little deeper: judgement).
 * Extra width: the 3.2 mm rule of thumb, worth one row. Wear: 15.5 mm3 per A min, worth one row.
 */
const BEFORE_ROWS: RowFit = {
  depth: {
    mean: [-0.84, 1.5, 0.05],
    precision: [
      [0.01, 0, 0],
      [0, 0.01, 0],
      [0, 0, 5.3],
    ],
    shape: 1,
    scale: 0.0529,
  },
  extraWidth: { mean: [3.2e-3], precision: [[1]], shape: 1, scale: 1e-6 },
  wear: { mean: [Math.log(15.5e-9 / 60)], precision: [[1]], shape: 1, scale: 0.04 },
};

/**
 * Fits the prior of the removal law to operating rows.
 *
 * @param rows - operating points [list], depths, widths and wear > 0
 * @param meltingEnergy - energy to heat and melt a unit volume of the rows' metal [J/m3], > 0
 * @returns beliefs of depth, extra width and wear [record]
 * @source derived: conjugate update of a weak prior
 * @example
 * fitRemovalPrior([], 10.5e9).extraWidth.mean // => [0.0032]
 */
export function fitRemovalPrior(rows: readonly RemovalRow[], meltingEnergy: number): RowFit {
  const { depth, extraWidth, wear } = removalObservations(rows, meltingEnergy);
  return {
    depth: updateBelief(BEFORE_ROWS.depth, depth),
    extraWidth: updateBelief(BEFORE_ROWS.extraWidth, extraWidth),
    wear: updateBelief(BEFORE_ROWS.wear, wear),
  };
}

/**
 * One measured pass as an observation of the depth law.
 *
 * @param row - how the pass was run and how deep it came out [record], depth > 0
 * @param meltingEnergy - energy to heat and melt a unit volume [J/m3], > 0
 * @returns regressors and ln(h / D) [record]
 * @source derived: the log-linear depth law
 * @example
 * depthObservation({ id: 'x', setting: { diameter: 0.01, current: 1050, voltage: 10, travel: 0.01, pushAngle: Math.PI / 4 }, depth: 0.01 }, 10.5e9) // => {"x":[1,0.000,0],"y":0}
 */
export function depthObservation(row: RemovalRow, meltingEnergy: number): Observation {
  return { x: depthRegressors(row.setting, meltingEnergy), y: Math.log(row.depth / row.setting.diameter) };
}

/** What operating rows say of depth, extra width and wear; a row says of the last two only what it has. */
function removalObservations(
  rows: readonly RemovalRow[],
  meltingEnergy: number,
): { readonly [law in keyof RowFit]: readonly Observation[] } {
  return {
    depth: rows.map((row) => depthObservation(row, meltingEnergy)),
    extraWidth: rows.flatMap((row): Observation[] =>
      row.width === undefined ? [] : [{ x: [1], y: row.width - row.setting.diameter }],
    ),
    wear: rows.flatMap((row): Observation[] =>
      row.wear === undefined ? [] : [{ x: [1], y: Math.log(wearVolume(row.wear, row.setting)) }],
    ),
  };
}

function wearVolume(wear: number, setting: PassSetting): number {
  return (wear * Math.PI * setting.diameter ** 2) / 4 / setting.current;
}
