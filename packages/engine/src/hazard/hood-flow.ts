import { INCH } from '../quantity/index.ts';
/** Velocity that draws fume in at the arc, a welding figure: 100 ft/min [m/s]. */
export const CAPTURE_VELOCITY = 0.508;

/**
 * Air flow of a hood that reaches the capture velocity at a distance from its opening.
 *
 * Q = V (10 x2 + A); three quarters of it with a flange. x at most 1.5 opening diameters. The jet of the torch can
 * carry fume past any hood: it stands downstream.
 *
 * @param distance - distance from opening to arc [m], > 0
 * @param area - area of the opening [m2], > 0
 * @param flanged - whether the opening has a flange [-], true or false
 * @param velocity - velocity at the arc [m/s], > 0
 * @returns air flow [m3/s]
 * @source DallaValle; ACGIH, Industrial Ventilation (memory)
 * @example
 * hoodFlow(0.25, 0.03, true, 0.508) // => 0.249555
 */
export function hoodFlow(distance: number, area: number, flanged: boolean, velocity: number): number {
  return (flanged ? 0.75 : 1) * velocity * (10 * distance ** 2 + area);
}

/** One row of the rule for movable hoods. */
export interface MovableHoodRow {
  /** Greatest distance from the arc [m]. */
  readonly distance: number;
  /** Least air flow [m3/s]. */
  readonly flow: number;
  /** Diameter of the duct [m]. */
  readonly duct: number;
}

const CUBIC_FOOT_PER_MINUTE = (12 * INCH) ** 3 / 60;

/** Rows by distance up to 12 in, the flow for 100 ft/min at the arc with a flanged opening 3 in wide. */
const ROWS: readonly MovableHoodRow[] = (
  [
    [6, 150, 3],
    [8, 275, 3.5],
    [10, 425, 4.5],
    [12, 600, 5.5],
  ] as const
).map(([distance, flow, duct]) => ({
  distance: distance * INCH,
  flow: flow * CUBIC_FOOT_PER_MINUTE,
  duct: duct * INCH,
}));

/**
 * Least air flow of a movable hood near the arc by the rule for welding.
 *
 * 150, 275, 425, 600 ft3/min up to 6, 8, 10, 12 in; the table ends there.
 *
 * @param distance - distance from the arc [m], > 0
 * @returns row of the table, or null beyond it [record]
 * @source 29 CFR 1910.252(c)(3)(i) table (confirmed)
 * @example
 * movableHood(0.2).flow // => 0.12978554...
 * movableHood(0.5) // => null
 */
export function movableHood(distance: number): MovableHoodRow | null {
  return ROWS.find((row) => distance <= row.distance * (1 + 1e-9)) ?? null;
}
