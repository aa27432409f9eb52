import { formatConductor, parseAmount, type Sentence, sentenceText, type UnitSystem } from '@furrow/engine';

/** Size of a lead, named as the reader's trade names it with the other name in brackets; of a hose or a pipe, as it is. */
export function conductorWords(size: Sentence, units: UnitSystem): string {
  if (typeof size !== 'string') return sentenceText(size, units);
  const area = parseAmount(size, 'area');
  return area.ok ? formatConductor(area.value, units) : size;
}
