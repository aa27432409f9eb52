import {
  formatStated,
  type HazardBreach,
  type HazardReport,
  type HazardRow,
  type Source,
  type UnitSystem,
} from '@furrow/engine';

/** A source with how far it can be trusted, once. */
export function sourceText({ text, provenance }: Source): string {
  return text.includes(provenance) ? text : `${text} (${provenance})`;
}

/** What a rule names, with the way it bounds: `at most 90.0 dBA`. */
export function figureText(
  { figure, unit, sense }: Pick<HazardRow, 'figure' | 'unit' | 'sense'>,
  units: UnitSystem,
): string {
  return figure === null ? '–' : `at ${sense} ${formatStated(figure, unit, units)}`;
}

/** What must be known beside a value, and where its rule stands. */
export function noteText({ note, source }: Pick<HazardRow, 'note' | 'source'>): string {
  return note === '' ? sourceText(source) : `${note.replace(/\.$/u, '')}; ${sourceText(source)}`;
}

/** Rules named in a brief sentence; noise alone has more of them [-]. */
const BRIEF_MOST = 2;

/**
 * What is over or short of a figure named, a sentence for each hazard and crew and way of breaking a rule.
 *
 * The `brief` form, for a permit that must keep to its page, names the first rules of each and how many more there are.
 */
export function breachTexts(
  breaches: readonly HazardBreach[],
  units: UnitSystem,
  form: 'whole' | 'brief' = 'whole',
): readonly string[] {
  const groups = new Map<string, string[]>();
  for (const breach of breaches) {
    const { of, rule, value, unit, verdict } = breach;
    const head = `${of}, ${verdict}`;
    const told = `${rule} ${formatStated(value, unit, units)} (${figureText(breach, units)})`;
    groups.set(head, [...(groups.get(head) ?? []), told]);
  }
  return [...groups].map(([head, told]) => {
    const more = form === 'brief' ? told.length - BRIEF_MOST : 0;
    const rules = more > 1 ? [...told.slice(0, BRIEF_MOST), `${more} more rules in the annex`] : told;
    return `${head}: ${rules.join('; ')}.`;
  });
}

/** The filter shade to wear, as advice asks for it, with the least that the rule allows beside it. */
export function shadeFigure({ sections }: HazardReport): { readonly value: string; readonly note: string } {
  const eyes = sections.find(({ id }) => id === 'eyes');
  const least = eyes?.rows.find(({ id }) => id === 'shade_least')?.figure ?? null;
  const asked = (eyes?.figures ?? []).flatMap(({ value }) => (value === null ? [] : [value]));
  const ends = [...new Set([Math.min(...asked), Math.max(...asked)])];
  return {
    value: asked.length === 0 ? (least === null ? 'no row' : String(least)) : ends.join('–'),
    note:
      least === null
        ? 'no row in the table of least shades: a competent person decides'
        : asked.length === 0
          ? 'at least'
          : `asked for by advice; at least ${least}`,
  };
}
