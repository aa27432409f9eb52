/** How fast a shell turns under a torch that stands still. */
export interface Turning {
  /** Revolutions of the shell [1/s]. */
  readonly shell: number;
  /** Time of one turn [s]. */
  readonly turn: number;
  /** Revolutions of a roll that carries it on the gouged surface [1/s]; undefined where no roll is stated. */
  readonly roll: number | undefined;
}

/**
 * Revolutions at which a girth is gouged: its surface passes the torch at the travel of the pass.
 *
 * The roll runs on the gouged surface, so it has the same surface speed; for a seam gouged from inside it runs on the
 * outside, which is quicker by the share that the wall adds to the diameter.
 *
 * @param travel - travel of the pass, which is the speed of the surface [m/s], above 0
 * @param diameter - diameter of the shell at the gouged surface [m], above 0
 * @param roll - diameter of a turning roll [m], above 0; left out: not known
 * @returns revolutions and time of a turn [record]
 * @source speed of a point on a circle: v = pi d n
 * @example
 * const { shell, turn, roll } = turningOf(0.01, 2, 0.3);
 * [shell * 60, turn, roll * 60] // => [0.0954..., 628.3..., 0.636...]
 */
export function turningOf(travel: number, diameter: number, roll?: number): Turning {
  const around = Math.PI * diameter;
  return {
    shell: travel / around,
    turn: around / travel,
    roll: roll === undefined ? undefined : travel / (Math.PI * roll),
  };
}
