import {
  type CostChangeReport,
  type CostReport,
  formatAmount,
  formatStated,
  sentenceText,
  type UnitSystem,
  type WayReport,
} from '@furrow/engine';
import {
  byLength,
  cheaperFrom,
  difference,
  money,
  noteText,
  perLength,
  sharePercent,
  sourceText,
  workTime,
} from '../words/index.ts';
import type { ListBlock, TableBlock, TableColumn } from './paper-document.ts';

/** A column and what stands in it. */
interface CostColumn<Row> extends TableColumn {
  readonly of: (row: Row) => string;
  /** Whether it tells money: left out where no price is stated. */
  readonly money?: boolean;
}

/** Sets rows under columns; those that tell money stand only where there are prices. */
function tableOf<Row>(
  { caption, small }: Pick<TableBlock, 'caption' | 'small'>,
  { priced }: Pick<CostReport, 'priced'>,
  columns: readonly CostColumn<Row>[],
  rows: readonly Row[],
): TableBlock {
  const shown = columns.filter((column) => priced || column.money !== true);
  return {
    kind: 'table',
    caption,
    ...(small !== undefined && { small }),
    columns: shown.map(({ title, align, weight, strong }) => ({
      title,
      align,
      weight,
      ...(strong !== undefined && { strong }),
    })),
    rows: rows.map((row) => shown.map(({ of }) => of(row))),
  };
}

/** Time and money of the whole job, at an even chance and at nine in ten; without prices, time alone. */
export function totalTable(
  { time_s, cost, cost_per_m, currency, priced }: CostReport,
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
      ...(priced
        ? [
            ['Money', money(cost.p50, currency), money(cost.p90, currency)],
            [byLength(units), along(cost_per_m.p50), along(cost_per_m.p90)],
          ]
        : []),
    ],
  };
}

/** Steps of the job, each with its time and money. */
export function stepTable(cost: CostReport): TableBlock {
  const { steps, currency, priced } = cost;
  return tableOf(
    { caption: `Where ${priced ? 'minutes and money' : 'the minutes'} go, on average`, small: true },
    cost,
    [
      { title: 'Step', align: 'start', weight: 2, of: ({ title }) => title },
      { title: 'Time', align: 'end', weight: 1, of: ({ time_s }) => workTime(time_s.mean) },
      { title: 'Part', align: 'end', weight: 0.7, of: ({ time_share }) => sharePercent(time_share) },
      { title: 'Money', align: 'end', weight: 1, money: true, of: (step) => money(step.cost.mean, currency) },
      {
        title: 'Part',
        align: 'end',
        weight: 0.7,
        money: true,
        of: ({ cost_share }) => sharePercent(cost_share),
      },
    ],
    steps.filter((step) => step.time_s.mean > 0 || step.cost.mean > 0),
  );
}

/** What the money is for; nothing where no price is stated. */
export function itemTable(
  { items, currency, seam_length_m, priced }: CostReport,
  units: UnitSystem,
): TableBlock[] {
  if (!priced) return [];
  return [
    {
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
    },
  ];
}

/** What a groove larger than planned adds. */
export function extraTable(cost: CostReport, units: UnitSystem): TableBlock {
  const { extra, currency } = cost;
  const length = (mm: number): string => (mm === 0 ? '–' : formatStated(mm, 'mm', units));
  return tableOf(
    { caption: 'What a larger groove than planned adds in grinding and refill' },
    cost,
    [
      { title: 'Deeper by', align: 'end', weight: 1, of: (each) => length(each.deeper_mm) },
      { title: 'Wider by', align: 'end', weight: 1, of: (each) => length(each.wider_mm) },
      {
        title: 'Weld metal',
        align: 'end',
        weight: 1,
        of: (each) => `+${formatStated(each.weld_metal_kg, 'kg', units)}`,
      },
      { title: 'Part', align: 'end', weight: 0.7, of: (each) => `+${each.weld_metal_percent.toFixed(0)} %` },
      { title: 'Time', align: 'end', weight: 1, of: (each) => `+${workTime(each.time_s)}` },
      {
        title: 'Money',
        align: 'end',
        weight: 1,
        strong: true,
        money: true,
        of: (each) => `+${money(each.cost, currency)}`,
      },
    ],
    extra,
  );
}

/** What stands in for what the job does not state. */
export function assumptionTable({ assumptions }: CostReport, units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption: 'What the estimate rests on beside the job',
    small: true,
    columns: [
      { title: 'What', align: 'start', weight: 1 },
      { title: 'Taken as', align: 'start', weight: 1.4, strong: true },
      { title: 'Source', align: 'start', weight: 2 },
    ],
    rows: assumptions.map(({ topic, text, source }) => [
      topic,
      sentenceText(text, units),
      sourceText(source),
    ]),
  };
}

/** The refill in two sentences. */
export function refillText({ refill }: CostReport, units: UnitSystem): string {
  return (
    `${formatStated(refill.weld_metal_kg, 'kg', units)} of weld metal by ${refill.process} ` +
    `(${formatStated(refill.filler_kg, 'kg', units)} of filler), ${workTime(refill.arc_time_s)} of arc in ` +
    `${workTime(refill.time_s)}. The gouged section is ${formatStated(refill.gouged_area_mm2, 'mm2', units)}; grinding ` +
    `${formatStated(refill.skin_allowance_mm, 'mm', units)} off makes it ${formatStated(refill.ground_area_mm2, 'mm2', units)}, ` +
    `which is ${formatStated(refill.skin_weld_metal_kg, 'kg', units)} of the weld metal.`
  );
}

/** Where the rate of a way comes from. */
const RATES: Readonly<Record<WayReport['rate'], string>> = {
  planned: 'planned',
  stated: 'stated by the job',
  assumed: 'assumed',
  missing: 'not known',
};

/** Other ways to the same groove, beside the planned one. */
export function wayTable(cost: CostReport, units: UnitSystem): TableBlock {
  const { ways, currency } = cost;
  return tableOf(
    { caption: 'Other ways, the whole job at medians and usual durations' },
    cost,
    [
      { title: 'Way', align: 'start', weight: 1.4, of: ({ title }) => title },
      { title: 'Rate', align: 'start', weight: 1, of: ({ rate }) => RATES[rate] },
      {
        title: 'Groove',
        align: 'end',
        weight: 1,
        of: ({ groove_time_s }) => (groove_time_s === null ? '–' : workTime(groove_time_s)),
      },
      {
        title: 'Whole job',
        align: 'end',
        weight: 1,
        of: ({ time_s }) => (time_s === null ? '–' : workTime(time_s)),
      },
      {
        title: 'Money',
        align: 'end',
        weight: 1,
        money: true,
        of: (way) => (way.cost === null ? '–' : money(way.cost, currency)),
      },
      {
        title: 'Planned way cheaper',
        align: 'end',
        weight: 1,
        money: true,
        of: (way) => cheaperFrom(way, units),
      },
    ],
    ways,
  );
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
  cost: CostReport,
  units: UnitSystem,
): TableBlock {
  const priced = (amount: number): string => money(amount, cost.currency);
  return tableOf(
    { caption: 'Changes, planned anew' },
    cost,
    [
      { title: 'Change', align: 'start', weight: 2, of: ({ title }) => title },
      {
        title: 'Time',
        align: 'end',
        weight: 1,
        of: ({ time_change_s }) => (time_change_s === null ? '–' : difference(time_change_s, workTime)),
      },
      {
        title: 'Money',
        align: 'end',
        weight: 1,
        money: true,
        of: ({ cost_change }) => (cost_change === null ? '–' : difference(cost_change, priced)),
      },
      { title: 'Setting', align: 'start', weight: 1.6, of: (change) => settingText(change, units) },
    ],
    changes,
  );
}

/** What each change is, in a sentence. */
export function changeNotes(changes: readonly CostChangeReport[], units: UnitSystem): ListBlock {
  return {
    kind: 'list',
    tone: 'plain',
    items: changes.map(({ title, says }) => `${title}: ${sentenceText(says, units)}.`),
  };
}

function settingText({ outcome, setting }: CostChangeReport, units: UnitSystem): string {
  if (setting === null) return outcome === 'no_plan' ? 'no plan' : 'not tried';
  const electrode = formatStated(setting.electrode_diameter_mm, 'mm', units, 'length');
  return `${electrode}, ${formatStated(setting.current_A, 'A', units)}, ${setting.passes} ${setting.passes === 1 ? 'pass' : 'passes'}`;
}

/** How the figures were drawn, and how far they can be off by that alone. */
export function trialText(
  { time_s, cost, currency, seam_length_m, trials, seed, reworked, priced }: CostReport,
  units: UnitSystem,
): string {
  const off = (time: number, amount: number): string =>
    priced ? `${workTime(time)} and ${money(amount, currency)}` : workTime(time);
  return (
    `${formatAmount(seam_length_m, 'length', units)} of seam; ${trials} trials, seed ${seed}. By the number of trials alone ` +
    `the first column can be off by ${off(time_s.p50_half_width, cost.p50_half_width)}, ` +
    `the second by ${off(time_s.p90_half_width, cost.p90_half_width)} (95 %). ` +
    `In ${sharePercent(reworked)} of the trials the depth was not reached at first.`
  );
}
