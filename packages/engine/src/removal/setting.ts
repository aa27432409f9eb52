/** What one pass is run with; SI. */
export interface PassSetting {
  /** Electrode diameter [m]. */
  readonly diameter: number;
  /** Current [A]. */
  readonly current: number;
  /** Arc voltage [V]. */
  readonly voltage: number;
  /** Travel [m/s]. */
  readonly travel: number;
  /** Push angle between electrode and surface [rad]. */
  readonly pushAngle: number;
}

/** Angle of the published rows [rad]. */
const ANGLE_CENTRE = Math.PI / 4;
/** Angle that counts as one unit of the law [rad]. */
const ANGLE_UNIT = Math.PI / 12;

/**
 * Specific energy of a pass: arc energy against the energy to melt a bar of D x D.
 *
 * q = U I / (v D2 e_m).
 *
 * @param setting - how the pass is run [record], all values > 0
 * @param meltingEnergy - energy to heat and melt a unit volume [J/m3], > 0
 * @returns specific energy [-]
 * @source derived: dimensional analysis of the arc's energy balance
 * @example
 * specificEnergy({ diameter: 0.0127, current: 850, voltage: 42, travel: 0.0148, pushAngle: 0.785 }, 10.5e9) // => 1.42432...
 */
export function specificEnergy(setting: PassSetting, meltingEnergy: number): number {
  return (setting.voltage * setting.current) / (setting.travel * setting.diameter ** 2 * meltingEnergy);
}

/**
 * Regressors of the depth law: 1, ln q and the push angle from 45 deg in units of 15 deg.
 *
 * @param setting - how the pass is run [record], all values > 0
 * @param meltingEnergy - energy to heat and melt a unit volume [J/m3], > 0
 * @returns the three regressors [list]
 * @source derived: the log-linear depth law
 * @example
 * depthRegressors({ diameter: 0.01, current: 1050, voltage: 10, travel: 0.01, pushAngle: Math.PI / 4 }, 10.5e9) // => [1, 0.000, 0]
 */
export function depthRegressors(setting: PassSetting, meltingEnergy: number): number[] {
  return [
    1,
    Math.log(specificEnergy(setting, meltingEnergy)),
    (setting.pushAngle - ANGLE_CENTRE) / ANGLE_UNIT,
  ];
}
