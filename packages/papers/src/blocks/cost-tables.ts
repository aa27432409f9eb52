import { type CostChangeReport, type CostReport, formatAmount, type UnitSystem } from '@furrow/engine';
import {
  byLength,
  difference,
  fineLength,
  metalMass,
  money,
  noteText,
  perLength,
  sectionArea,
  sharePercent,
  sourceText,
  workTime,
} from '../words/index.ts';
import type { ListBlock, TableBlock } from './paper-document.ts';

/** Time and money of the whole job, at an even chance and at nine in ten. */
export function totalTable(
  { time_s, cost, cost_per_m, currency }: CostReport,
  units: UnitSystem,
): TableBlock {
  const along = (perMetre: number): string => money(perLength(perMetre, units), currency);
  return {
    kind: 'table',
    caption: 'The whole job',
    columns: [
      { title: 'What', align: 'start', weight: 1 },
      { title: 'Even chance of no more', align: 'end', weight: 1 },
      { title: 'Nine in ten of no more', align: 'end', weight: 1 },
    ],
    rows: [
      ['Time', workTime(time_s.p50), workTime(time_s.p90)],
      ['Money', money(cost.p50, currency), money(cost.p90, currency)],
      [byLength(units), along(cost_per_m.p50), along(cost_per_m.p90)],
    ],
  };
}

/** Steps of the job, each with its time and money. */
export function stepTable({ steps, currency }: CostReport): TableBlock {
  return {
    kind: 'table',
    caption: 'Where minutes and money go, on average',
    small: true,
    columns: [
      { title: 'Step', align: 'start', weight: 2 },
      { title: 'Time', align: 'end', weight: 1 },
      { title: 'Part', align: 'end', weight: 0.7 },
      { title: 'Money', align: 'end', weight: 1 },
      { title: 'Part', align: 'end', weight: 0.7 },
    ],
    rows: steps
      .filter((step) => step.time_s.mean > 0 || step.cost.mean > 0)
      .map((step) => [
        step.title,
        workTime(step.time_s.mean),
        sharePercent(step.time_share),
        money(step.cost.mean, currency),
        sharePercent(step.cost_share),
      ]),
  };
}

/** What the money is for. */
export function itemTable({ items, currency, seam_length_m }: CostReport, units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption: 'What the money is for, on average',
    small: true,
    columns: [
      { title: 'For', align: 'start', weight: 2 },
      { title: 'Money', align: 'end', weight: 1, strong: true },
      { title: byLength(units), align: 'end', weight: 1 },
      { title: 'Part', align: 'end', weight: 0.7 },
    ],
    rows: items
      .filter((item) => item.cost.mean > 0)
      .map((item) => [
        item.title,
        money(item.cost.mean, currency),
        money(perLength(item.cost.mean / seam_length_m, units), currency),
        sharePercent(item.cost_share),
      ]),
  };
}

/** What a groove larger than planned adds. */
export function extraTable({ extra, currency }: CostReport, units: UnitSystem): TableBlock {
  const length = (mm: number): string => (mm === 0 ? '–' : fineLength(mm / 1000, units));
  return {
    kind: 'table',
    caption: 'What a larger groove than planned adds in grinding and refill',
    columns: [
      { title: 'Deeper by', align: 'end', weight: 1 },
      { title: 'Wider by', align: 'end', weight: 1 },
      { title: 'Weld metal', align: 'end', weight: 1 },
      { title: 'Part', align: 'end', weight: 0.7 },
      { title: 'Time', align: 'end', weight: 1 },
      { title: 'Money', align: 'end', weight: 1, strong: true },
    ],
    rows: extra.map((each) => [
      length(each.deeper_mm),
      length(each.wider_mm),
      `+${metalMass(each.weld_metal_kg, units)}`,
      `+${each.weld_metal_percent.toFixed(0)} %`,
      `+${workTime(each.time_s)}`,
      `+${money(each.cost, currency)}`,
    ]),
  };
}

/** What stands in for what the job does not state. */
export function assumptionTable({ assumptions }: CostReport): TableBlock {
  return {
    kind: 'table',
    caption: 'What the estimate rests on beside the job',
    small: true,
    columns: [
      { title: 'What', align: 'start', weight: 1 },
      { title: 'Taken as', align: 'start', weight: 1.4, strong: true },
      { title: 'Source', align: 'start', weight: 2 },
    ],
    rows: assumptions.map(({ topic, text, source }) => [topic, text, sourceText(source)]),
  };
}

/** The refill in two sentences. */
export function refillText({ refill }: CostReport, units: UnitSystem): string {
  return (
    `${metalMass(refill.weld_metal_kg, units)} of weld metal by ${refill.process} ` +
    `(${metalMass(refill.filler_kg, units)} of filler), ${workTime(refill.arc_time_s)} of arc in ` +
    `${workTime(refill.time_s)}. The gouged section is ${sectionArea(refill.gouged_area_mm2, units)}; grinding ` +
    `${fineLength(refill.skin_allowance_mm / 1000, units)} off makes it ${sectionArea(refill.ground_area_mm2, units)}, ` +
    `which is ${metalMass(refill.skin_weld_metal_kg, units)} of the weld metal.`
  );
}

/** Other ways to the same groove, beside the planned one. */
export function wayTable({ ways, currency }: CostReport, units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption: 'Other ways, the whole job at medians and usual durations',
    columns: [
      { title: 'Way', align: 'start', weight: 1.4 },
      { title: 'Rate', align: 'start', weight: 1 },
      { title: 'Groove', align: 'end', weight: 1 },
      { title: 'Whole job', align: 'end', weight: 1 },
      { title: 'Money', align: 'end', weight: 1 },
      { title: 'Planned is cheaper from', align: 'end', weight: 1 },
    ],
    rows: ways.map((way) => [
      way.title,
      way.rate,
      way.groove_time_s === null ? '–' : workTime(way.groove_time_s),
      way.time_s === null ? '–' : workTime(way.time_s),
      way.cost === null ? '–' : money(way.cost, currency),
      way.planned_cheaper_from_m === null ? '–' : formatAmount(way.planned_cheaper_from_m, 'length', units),
    ]),
  };
}

/** What must be known of each other way, with where it comes from. */
export function wayNotes({ ways }: CostReport): ListBlock {
  return {
    kind: 'list',
    tone: 'plain',
    items: ways
      .filter(({ way }) => way !== 'planned')
      .map(({ title, note, source }) => `${title}: ${noteText({ note, source })}.`),
  };
}

/** What changes of job or kit do to time and money. */
export function changeTable(
  changes: readonly CostChangeReport[],
  { currency }: CostReport,
  units: UnitSystem,
): TableBlock {
  const priced = (amount: number): string => money(amount, currency);
  return {
    kind: 'table',
    caption: 'Changes, planned anew',
    columns: [
      { title: 'Change', align: 'start', weight: 2 },
      { title: 'Time', align: 'end', weight: 1 },
      { title: 'Money', align: 'end', weight: 1 },
      { title: 'Setting', align: 'start', weight: 1.6 },
    ],
    rows: changes.map((change) => [
      change.title,
      change.time_change_s === null ? '–' : difference(change.time_change_s, workTime),
      change.cost_change === null ? '–' : difference(change.cost_change, priced),
      settingText(change, units),
    ]),
  };
}

function settingText({ outcome, setting }: CostChangeReport, units: UnitSystem): string {
  if (setting === null) return outcome === 'no_plan' ? 'no plan' : 'not tried';
  const electrode = formatAmount(setting.electrode_diameter_mm / 1000, 'length', units);
  return `${electrode}, ${setting.current_A.toFixed(0)} A, ${setting.passes} ${setting.passes === 1 ? 'pass' : 'passes'}`;
}
