/**
 * Air flow that keeps what is given off below a concentration.
 *
 * Q = K G / C, steady, clean air coming in; K above 1 for poor mixing is a judgement.
 *
 * @param emission - what is given off [mg/s], > 0
 * @param concentration - greatest concentration [mg/m3], > 0
 * @param mixing - mixing factor [-], 1 to 10
 * @returns air flow [m3/s]
 * @source general dilution equation, University of Toledo (confirmed)
 * @example
 * dilutionFlow(500 / 60, 5, 3) * 60 // => 300
 */
export function dilutionFlow(emission: number, concentration: number, mixing: number): number {
  return (mixing * emission) / concentration;
}

/** A room of one well-mixed zone. */
export interface MixedRoom {
  /** Volume [m3]. */
  readonly volume: number;
  /** Air flow over the mixing factor [m3/s]. */
  readonly flow: number;
}

/**
 * Concentration in a room some time after the arc was struck, from clean air.
 *
 * C = (G / Q)(1 - exp(-Q t / V)), Q the flow over the mixing factor.
 *
 * @param emission - what is given off [mg/s], >= 0
 * @param room - volume and flow [record], both > 0
 * @param time - time since the arc was struck [s], >= 0
 * @returns concentration [mg/m3]
 * @source Basic Concepts of Industrial Hygiene, equation 4 (confirmed)
 * @example
 * concentrationAfter(500 / 60, { volume: 1000, flow: 100 / 60 }, 600) // => 3.160602794
 */
export function concentrationAfter(emission: number, room: MixedRoom, time: number): number {
  return (emission / room.flow) * -Math.expm1((-room.flow * time) / room.volume);
}

/**
 * Time until the air of a room has cleared from one concentration to another.
 *
 * t = (V / Q) ln(C1 / C2), nothing given off any more.
 *
 * @param from - concentration at first [mg/m3], > 0
 * @param to - concentration to come down to [mg/m3], > 0 and <= from
 * @param room - volume and flow [record], both > 0
 * @returns time [s]
 * @source room purge equation (confirmed)
 * @example
 * purgeTime(5, 0.5, { volume: 1000, flow: 100 / 60 }) / 60 // => 23.02585093
 */
export function purgeTime(from: number, to: number, room: MixedRoom): number {
  return (room.volume / room.flow) * Math.log(from / to);
}
