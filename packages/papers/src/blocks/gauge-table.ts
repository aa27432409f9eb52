import { deepenText, type GaugeRow, type GaugeStop, type UnitSystem } from '@furrow/engine';
import { actionText, chanceWords, fineStated, fineUnit, readingText } from '../words/index.ts';
import type { TableBlock, TableColumn } from './paper-document.ts';
import { bandText } from './pass-table.ts';

/**
 * The decision table of a gauge stop: a reading, and what to do about it.
 *
 * The `narrow` form, for tables side by side, leaves the chances out and gathers neighbouring rows that say the same.
 */
export function gaugeTable(
  stop: GaugeStop,
  units: UnitSystem,
  form: 'whole' | 'narrow' = 'whole',
): TableBlock {
  const unit = fineUnit(units);
  const whole = form === 'whole';
  const outcome: TableColumn[] = whole
    ? [
        { title: `Then expect, ${unit}`, align: 'end', weight: 1.7 },
        { title: 'Reached', align: 'end', weight: 1.4 },
        { title: 'Not too deep', align: 'end', weight: 1.4 },
      ]
    : [{ title: `Then 90 in 100, ${unit}`, align: 'end', weight: 1.7 }];
  const key = (row: GaugeRow): string => (row.action === 'ask' || !whole ? actionText(row, units) : '');
  return {
    kind: 'table',
    caption:
      stop.after_layer === 0
        ? 'Reading of the first cut, and what to do'
        : `Reading after layer ${stop.after_layer}, and what to do`,
    columns: [
      { title: `Reading, ${unit}`, align: 'start', weight: 1.5, strong: true },
      { title: 'Do this', align: 'start', weight: 1.9, strong: true },
      ...outcome,
    ],
    rows: gathered(stop.table, key).map((row) => [
      readingText(row, units),
      `${actionText(row, units)}${deepenText(row, units)}`,
      ...(row.action === 'ask' ? outcome.map(() => '–') : outcomeTexts(row, units, whole)),
    ]),
  };
}

function outcomeTexts(row: GaugeRow, units: UnitSystem, whole: boolean): string[] {
  const { expected_depth_mm: depth, depth_reached, not_too_deep } = row;
  if (whole) return [bandText(depth, units), chanceWords(depth_reached), chanceWords(not_too_deep)];
  return [`${fineStated(depth.p05, units)}–${fineStated(depth.p95, units)}`];
}

/** Neighbouring rows with the same key become one, whose band holds the bands of all; an empty key stands alone. */
function gathered(rows: readonly GaugeRow[], key: (row: GaugeRow) => string): GaugeRow[] {
  const found: GaugeRow[] = [];
  for (const row of rows) {
    const last = found.at(-1);
    if (last === undefined || key(row) === '' || key(last) !== key(row)) {
      found.push(row);
      continue;
    }
    const [a, b] = [last.expected_depth_mm, row.expected_depth_mm];
    found[found.length - 1] = {
      ...last,
      reading_to_mm: row.reading_to_mm,
      expected_depth_mm: { ...a, p05: Math.min(a.p05, b.p05), p95: Math.max(a.p95, b.p95) },
    };
  }
  return found;
}
