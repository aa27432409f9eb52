import {
  type AnswerInputs,
  type CostAnswer,
  type CostChangeReport,
  type CostReport,
  formatAmount,
  jobFields,
  type ReadJob,
  type UnitSystem,
} from '@furrow/engine';
import { costDefaults, defaultsTable } from '../blocks/index.ts';
import {
  byLength,
  difference,
  fineLength,
  metalMass,
  money,
  NEVER_IN_COST,
  perLength,
  sectionArea,
  sharePercent,
  workTime,
} from '../words/index.ts';
import { plainLine } from './plain-line.ts';
import { type TextColumn, textTable } from './text-table.ts';
import { wrapped } from './wrapped.ts';

/** Letters per line. */
const WIDTH = 100;

/** Writes time and money of a job for the terminal, and what changes of it would do. */
export function renderCostText(
  cost: CostAnswer,
  changes: readonly CostChangeReport[],
  { read, inputs }: { readonly read: ReadJob; readonly inputs: AnswerInputs },
  units: UnitSystem,
): string {
  const lines = [
    ...wrapped(plainLine(read.job.title), WIDTH),
    '',
    ...(cost.kind === 'no_plan'
      ? [...wrapped(plainLine(cost.says), WIDTH), '']
      : [
          ...reportLines(cost, changes, units),
          ...defaultLines(inputs),
          ...cost.cautions.flatMap((caution) => wrapped(plainLine(caution), WIDTH, '  ! ')),
        ]),
    ...wrapped('Local codes and licensed practice govern; the software never signs.', WIDTH),
  ];
  return `${lines.join('\n')}\n`;
}

const start = (title: string): TextColumn => ({ title, align: 'start' });
const end = (title: string): TextColumn => ({ title, align: 'end' });

function reportLines(cost: CostReport, changes: readonly CostChangeReport[], units: UnitSystem): string[] {
  const { currency } = cost;
  return [
    ...headLines(cost, units),
    'Where minutes and money go, on average',
    ...textTable(
      [start('Step'), end('Time'), end('Part'), end('Money'), end('Part')],
      cost.steps
        .filter((step) => step.time_s.mean > 0 || step.cost.mean > 0)
        .map((step) => [
          step.title,
          workTime(step.time_s.mean),
          sharePercent(step.time_share),
          money(step.cost.mean, currency),
          sharePercent(step.cost_share),
        ]),
    ),
    '',
    'What the money is for, on average',
    ...textTable(
      [start('For'), end('Money'), end('Part'), end(byLength(units))],
      cost.items
        .filter((item) => item.cost.mean > 0)
        .map((item) => [
          item.title,
          money(item.cost.mean, currency),
          sharePercent(item.cost_share),
          money(perLength(item.cost.mean / cost.seam_length_m, units), currency),
        ]),
    ),
    '',
    ...refillLines(cost, units),
    ...extraLines(cost, units),
    ...wayLines(cost, units),
    ...changeLines(changes, cost, units),
    'What stands in for what the job does not state',
    ...cost.assumptions.flatMap(({ topic, text, source }) =>
      wrapped(plainLine(`${topic}: ${text} (${source.text}; ${source.provenance}).`), WIDTH, '  - '),
    ),
    '',
  ];
}

/** The defaults that time and money rest on, and what no estimate holds, as the quote lists them. */
function defaultLines(inputs: AnswerInputs): string[] {
  const [table] = defaultsTable('Taken because the job does not state it', costDefaults(inputs), jobFields());
  return [
    ...(table === undefined
      ? []
      : [
          table.caption,
          ...table.rows.flatMap(([field, taken, why]) =>
            wrapped(plainLine(`${field}: ${taken} (${why}).`), WIDTH, '  - '),
          ),
          '',
        ]),
    'What is not in it',
    ...NEVER_IN_COST.flatMap((each) => wrapped(plainLine(each), WIDTH, '  - ')),
    '',
  ];
}

function headLines(cost: CostReport, units: UnitSystem): string[] {
  const { currency, time_s, trials, seed } = cost;
  const halves = [
    workTime(time_s.p50_half_width),
    money(cost.cost.p50_half_width, currency),
    workTime(time_s.p90_half_width),
    money(cost.cost.p90_half_width, currency),
  ];
  return [
    ...textTable(
      [start('Whole job'), end('Even chance of no more'), end('Nine in ten of no more')],
      [
        ['Time', workTime(time_s.p50), workTime(time_s.p90)],
        ['Money', money(cost.cost.p50, currency), money(cost.cost.p90, currency)],
        [
          byLength(units),
          money(perLength(cost.cost_per_m.p50, units), currency),
          money(perLength(cost.cost_per_m.p90, units), currency),
        ],
      ],
    ),
    ...wrapped(
      `${formatAmount(cost.seam_length_m, 'length', units)} of seam; ${trials} trials, seed ${seed}. By the number of trials alone ` +
        `the first column can be off by ${halves[0]} and ${halves[1]}, the second by ${halves[2]} and ${halves[3]} (95 %). ` +
        `In ${sharePercent(cost.reworked)} of the trials the depth was not reached at first.`,
      WIDTH,
      '  ',
    ),
    '',
  ];
}

function refillLines({ refill }: CostReport, units: UnitSystem): string[] {
  return [
    'Refill',
    ...wrapped(
      `${metalMass(refill.weld_metal_kg, units)} of weld metal by ${refill.process} ` +
        `(${metalMass(refill.filler_kg, units)} of filler), ${workTime(refill.arc_time_s)} of arc in ` +
        `${workTime(refill.time_s)}. The gouged section is ${sectionArea(refill.gouged_area_mm2, units)}; grinding ` +
        `${fineLength(refill.skin_allowance_mm / 1000, units)} off makes it ${sectionArea(refill.ground_area_mm2, units)}, ` +
        `which is ${metalMass(refill.skin_weld_metal_kg, units)} of the weld metal.`,
      WIDTH,
      '  ',
    ),
    '',
  ];
}

function extraLines({ extra, currency }: CostReport, units: UnitSystem): string[] {
  const length = (mm: number): string => (mm === 0 ? '–' : fineLength(mm / 1000, units));
  return [
    'What a larger groove takes more in grinding and refill, over the whole seam',
    ...textTable(
      [end('Deeper'), end('Wider'), end('Weld metal'), end('Part'), end('Time'), end('Money')],
      extra.map((each) => [
        length(each.deeper_mm),
        length(each.wider_mm),
        `+${metalMass(each.weld_metal_kg, units)}`,
        `+${each.weld_metal_percent.toFixed(0)} %`,
        `+${workTime(each.time_s)}`,
        `+${money(each.cost, currency)}`,
      ]),
    ),
    '',
  ];
}

function wayLines({ ways, currency }: CostReport, units: UnitSystem): string[] {
  return [
    'Other ways, the whole job at medians and usual durations',
    ...textTable(
      [
        start('Way'),
        start('Rate'),
        end('Groove'),
        end('Whole job'),
        end('Money'),
        end('Planned is cheaper from'),
      ],
      ways.map((each) => [
        each.title,
        each.rate,
        each.groove_time_s === null ? '–' : workTime(each.groove_time_s),
        each.time_s === null ? '–' : workTime(each.time_s),
        each.cost === null ? '–' : money(each.cost, currency),
        each.planned_cheaper_from_m === null
          ? '–'
          : formatAmount(each.planned_cheaper_from_m, 'length', units),
      ]),
    ),
    ...ways
      .filter(({ way }) => way !== 'planned')
      .flatMap(({ title, note, source }) =>
        wrapped(plainLine(`${title}: ${note} (${source.text}; ${source.provenance}).`), WIDTH, '  - '),
      ),
    '',
  ];
}

function changeLines(
  changes: readonly CostChangeReport[],
  { currency }: CostReport,
  units: UnitSystem,
): string[] {
  if (changes.length === 0) return [];
  return [
    'Changes, planned anew',
    ...textTable(
      [start('Change'), end('Time'), end('Money'), start('Setting')],
      changes.map((change) => [
        change.title,
        change.time_change_s === null ? '–' : difference(change.time_change_s, workTime),
        change.cost_change === null
          ? '–'
          : difference(change.cost_change, (amount) => money(amount, currency)),
        settingText(change, units),
      ]),
    ),
    ...changes.flatMap(({ title, says }) => wrapped(plainLine(`${title}: ${says}.`), WIDTH, '  - ')),
    '',
  ];
}

function settingText({ outcome, setting }: CostChangeReport, units: UnitSystem): string {
  if (setting === null) return outcome === 'no_plan' ? 'no plan' : 'not tried';
  const electrode = formatAmount(setting.electrode_diameter_mm / 1000, 'length', units);
  return `${electrode}, ${setting.current_A.toFixed(0)} A, ${setting.passes} ${setting.passes === 1 ? 'pass' : 'passes'}`;
}
