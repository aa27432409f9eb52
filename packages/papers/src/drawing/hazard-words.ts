import {
  formatReported,
  type HazardRange,
  type HazardRow,
  type Source,
  type UnitSystem,
} from '@furrow/engine';

/** A source with how far it can be trusted, once. */
export function sourceText({ text, provenance }: Source): string {
  return text.includes(provenance) ? text : `${text} (${provenance})`;
}

/** What a rule names, with the way it bounds: `at most 90.0 dBA`. */
export function figureText({ figure, unit, sense }: HazardRow, units: UnitSystem): string {
  return figure === null ? '–' : `at ${sense} ${formatReported(figure, unit, units)}`;
}

/** A band with one unit at its end; one number where both ends are the same. */
export function rangeText(range: HazardRange | null, unit: string, units: UnitSystem): string {
  if (range === null) return '–';
  const [least, most] = [formatReported(range.least, unit, units), formatReported(range.most, unit, units)];
  if (least === most) return most;
  const tail = / \S+$/u.exec(most)?.[0] ?? '';
  return `${tail !== '' && least.endsWith(tail) ? least.slice(0, -tail.length) : least} to ${most}`;
}

/** What must be known beside a value, and where its rule stands. */
export function noteText({ note, source }: Pick<HazardRow, 'note' | 'source'>): string {
  return note === '' ? sourceText(source) : `${note.replace(/\.$/u, '')}; ${sourceText(source)}`;
}
