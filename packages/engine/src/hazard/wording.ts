/** The only ways in which a figure is held against a rule: nothing here permits work. */
export const HAZARD_WORDINGS = [
  'within the figure named',
  'over the figure named',
  'short of the figure named',
  'not covered by the source',
] as const;

/** A value held against a rule, in words. */
export type HazardWording = (typeof HAZARD_WORDINGS)[number];

/**
 * Holds a value against the figure that a rule names, in one of four wordings.
 *
 * What is more than an at-most rule names is over, what is less than an at-least rule names is short of it.
 *
 * A missing value or figure is not covered; a value equal to the figure is within it.
 *
 * @param value - what there is, in the unit of the figure [any unit], finite, or null where nothing is known
 * @param figure - what the rule names [any unit], finite, or null where the source names none
 * @param sense - whether the rule asks for at most or at least the figure [text], most or least
 * @returns the wording [text]
 * @source none: bookkeeping
 * @example
 * hazardWording(92, 90, 'most') // => "over the figure named"
 * hazardWording(18, 22.86, 'least') // => "short of the figure named"
 * hazardWording(null, 90, 'most') // => "not covered by the source"
 */
export function hazardWording(
  value: number | null,
  figure: number | null,
  sense: 'most' | 'least',
): HazardWording {
  if (value === null || figure === null || !Number.isFinite(value) || !Number.isFinite(figure)) {
    return 'not covered by the source';
  }
  // what rounding uses up does not put a value over the figure
  const slack = 1e-9 * Math.abs(figure);
  if (sense === 'most') return value > figure + slack ? 'over the figure named' : 'within the figure named';
  return value < figure - slack ? 'short of the figure named' : 'within the figure named';
}

/**
 * Whether a wording says that a value breaks the rule it is held against.
 *
 * @param wording - the wording [text], from `hazardWording`
 * @returns true for over and short, false for within and not covered [-]
 * @source none: bookkeeping
 * @example
 * breaksRule(hazardWording(18, 22.86, 'least')) // => true
 * breaksRule(hazardWording(null, 90, 'most')) // => false
 */
export function breaksRule(wording: HazardWording): boolean {
  return wording === 'over the figure named' || wording === 'short of the figure named';
}
