/**
 * Level of several noises together.
 *
 * L = 10 log10(sum(10^(L_i / 10))), for sources that have nothing to do with each other.
 *
 * @param levels - levels [dBA], not empty
 * @returns level of all [dBA]
 * @source textbook acoustics (derived)
 * @example
 * levelOfAll([110, 105]) // => 111.1933105
 */
export function levelOfAll(levels: readonly number[]): number {
  return 10 * Math.log10(levels.reduce((sum, level) => sum + 10 ** (level / 10), 0));
}

/**
 * Level at a distance from a source of known sound power that stands on a hard floor.
 *
 * L_p = L_w + 10 log10(2 / (4 pi r2)): free field over a floor; a bay that reverberates is louder.
 *
 * @param power - sound power level re 1 pW [dBA], any
 * @param distance - distance from the source [m], > 0
 * @returns level [dBA]
 * @source textbook acoustics (derived)
 * @example
 * levelAtDistance(116, 3) // => 98.47577622
 */
export function levelAtDistance(power: number, distance: number): number {
  return power + 10 * Math.log10(2 / (4 * Math.PI * distance ** 2));
}

/**
 * Distance at which a source over a hard floor has fallen to a level; `levelAtDistance` solved for the distance.
 *
 * @param power - sound power level re 1 pW [dBA], any
 * @param level - level to fall to [dBA], any
 * @returns distance [m]
 * @source textbook acoustics (derived)
 * @example
 * distanceToLevel(116, 98.47577622) // => 3.00000000
 */
export function distanceToLevel(power: number, level: number): number {
  return Math.sqrt((2 * 10 ** ((power - level) / 10)) / (4 * Math.PI));
}
