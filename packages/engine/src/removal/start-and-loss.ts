/**
 * Dwell between arc and travel at a start, so that the first centimetre is not shallow.
 *
 * Energy balance over the starting pit: under way the arc removes the section A at the travel v; before
 * travel it must make the pit in front of its inclined face, of section A and length D / (2 sin angle).
 * The time is that length over the travel.
 *
 * @param diameter - electrode diameter [m], > 0
 * @param pushAngle - push angle [rad], above 0 and up to pi/2
 * @param travel - travel of the pass [m/s], > 0
 * @returns dwell [s]
 * @source derived: energy balance over the starting pit
 * @example
 * startDwell(0.0127, Math.PI / 4, 0.0148167) // => 0.60609...
 */
export function startDwell(diameter: number, pushAngle: number, travel: number): number {
  return diameter / (2 * Math.sin(pushAngle)) / travel;
}

/**
 * Length left ungouged when the arc goes out: the carriage runs on for the loss window.
 *
 * @param travel - travel of the pass [m/s], >= 0
 * @param lossWindow - time from losing the arc until the carriage stops [s], >= 0
 * @returns ungouged length [m]
 * @source derived: travel times time
 * @example
 * lossLength(35 * 0.0254 / 60, 0.4) // => 0.005926...
 */
export function lossLength(travel: number, lossWindow: number): number {
  return travel * lossWindow;
}
