import type { GaugeRow, GaugeStop, UnitSystem } from '@furrow/engine';
import {
  actionText,
  deepenText,
  fineUnit,
  NARROW_RISK_HEADS,
  RISK_HEADS,
  readingText,
  reasonText,
  riskTexts,
} from '../words/index.ts';
import type { TableBlock, TableColumn } from './paper-document.ts';
import { bandText } from './pass-table.ts';

/**
 * The decision table of a gauge stop: a reading, what to do about it, and what may still go wrong.
 *
 * The `narrow` form, for tables side by side, leaves the depth to expect out; neither leaves a chance out.
 */
export function gaugeTable(
  stop: GaugeStop,
  units: UnitSystem,
  form: 'whole' | 'narrow' = 'whole',
): TableBlock {
  const unit = fineUnit(units);
  const expected: TableColumn[] =
    form === 'whole' ? [{ title: `Then expect, ${unit}`, align: 'end', weight: 1.7 }] : [];
  const heads = form === 'narrow' ? NARROW_RISK_HEADS : RISK_HEADS;
  const risks = heads.map((title): TableColumn => ({ title, align: 'end', weight: 0.8 }));
  const outcome = [...expected, ...risks];
  const shown = askedTogether(stop.table);
  return {
    kind: 'table',
    ...(form === 'narrow' && { close: true }),
    caption: `${
      stop.after_layer === 0
        ? 'Reading of the first cut, and what to do'
        : `Reading after layer ${stop.after_layer}, and what to do`
    }${form === 'narrow' ? '; chances in 100' : ''}`,
    columns: [
      { title: `Reading, ${unit}`, align: 'start', weight: 1.5, strong: true },
      { title: 'Do this', align: 'start', weight: 1.9, strong: true },
      ...outcome,
    ],
    rows: shown.map((row) => [
      readingText(row, units),
      form === 'narrow' && row.action === 'ask'
        ? `stop and ask${reasonText(row)}`
        : `${actionText(row, units)}${deepenText(row, units)}`,
      ...(row.action === 'ask'
        ? outcome.map(() => '–')
        : [...expected.map(() => bandText(row.expected_depth_mm, units)), ...riskTexts(row)]),
    ]),
    marks: shown.flatMap(({ action }, row) => (action === 'ask' ? [{ row, mark: 'ask' } as const] : [])),
  };
}

/** Neighbouring rows that send to the engineer for the same reason are one; all others stand alone, each with its own chances. */
function askedTogether(rows: readonly GaugeRow[]): GaugeRow[] {
  const found: GaugeRow[] = [];
  for (const row of rows) {
    const last = found.at(-1);
    if (last?.action === 'ask' && row.action === 'ask' && last.reason === row.reason)
      found[found.length - 1] = { ...last, reading_to_mm: row.reading_to_mm };
    else found.push(row);
  }
  return found;
}
