/** The only three ways in which a figure is held against a rule: nothing here permits work. */
export type HazardWording = 'within the figure named' | 'over the figure named' | 'not covered by the source';

/**
 * Holds a value against the figure that a rule names, in one of three wordings.
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
  const over = sense === 'most' ? value > figure + slack : value < figure - slack;
  return over ? 'over the figure named' : 'within the figure named';
}
