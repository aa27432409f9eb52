import {
  type Answer,
  formatAmount,
  formatStated,
  formatStatedApart,
  type Plan,
  planTables,
  type ReadJob,
  tryoutText,
  type UnitSystem,
} from '@furrow/engine';
import {
  expectationFigures,
  type Figure,
  gaugeTable,
  passesNote,
  passTable,
  settingFigures,
  type TableBlock,
} from '../blocks/index.ts';
import { adviceWords, chanceWords, fineLength, gaugePlaces, jobWords, sourceWords } from '../words/index.ts';
import { plainLine } from './plain-line.ts';
import { textTable } from './text-table.ts';
import { wrapped } from './wrapped.ts';

/** Letters per line. */
const WIDTH = 100;

/** Writes a result for the terminal: the plan or the refusal, and what it rests on. */
export function renderText(answer: Answer, read: ReadJob, units: UnitSystem): string {
  const { job } = read;
  const { inputs } = answer;
  const lines = [
    ...wrapped(plainLine(job.title), WIDTH),
    ...wrapped(plainLine(job.groove.purpose), WIDTH),
    ...wrapped(jobWords(job, units), WIDTH),
    '',
    ...(answer.plan === undefined ? refusalLines(answer, units) : planLines(read, answer.plan, units)),
    ...(answer.supply === undefined ? [] : [...wrapped(plainLine(answer.supply.time.says), WIDTH), '']),
    ...alternativeLines(answer.alternatives, units),
    ...listed('For this metal', answer.advice.map(adviceWords), '- '),
    ...listed('Cautions', answer.cautions, '! '),
    ...listed(
      'Defaults used',
      inputs.defaults_used.map(({ path, value, why }) => `${path} = ${value}: ${why}`),
      '- ',
    ),
    ...wrapped(
      `Furrow ${inputs.program_version}, job revision ${inputs.revision.slice(0, 12)}, seed ${inputs.seed}, ` +
        `removal law ${inputs.posterior_id}.`,
      WIDTH,
    ),
    ...wrapped('Local codes and licensed practice govern; the software never signs.', WIDTH),
  ];
  return `${lines.join('\n')}\n`;
}

function planLines(read: ReadJob, plan: Plan, units: UnitSystem): string[] {
  const { assurance } = plan;
  return [
    plan.kind === 'blind'
      ? `PLAN: ${passesNote(plan)}, run as set`
      : `PLAN: ${passesNote(plan)}, gauge and adjust between layers`,
    '',
    ...figureLines([...settingFigures(read, plan, units), ...expectationFigures(plan, units)]),
    '',
    ...tableLines(passTable(plan, units)),
    '',
    ...planTables(plan).flatMap((stop) => [
      ...(stop.after_layer === 0 ? wrapped(tryoutText(plan, units)!, WIDTH, '  ') : []),
      ...tableLines(gaugeTable(stop, units)),
      ...wrapped(gaugePlaces(stop, units), WIDTH, '  '),
      ...(stop.stations_choice.length === 0
        ? []
        : [
            '  What stations buy:',
            ...textTable(
              [
                { title: 'Stations', align: 'end' },
                { title: 'Reached', align: 'end' },
                { title: 'Not too deep', align: 'end' },
              ],
              stop.stations_choice.map((choice) => [
                String(choice.stations),
                chanceWords(choice.depth_reached),
                chanceWords(choice.not_too_deep),
              ]),
            ),
          ]),
      '',
    ]),
    'How sure',
    ...textTable(
      [
        { title: 'What', align: 'start' },
        { title: 'Chance', align: 'end' },
      ],
      [
        ['depth reached everywhere', chanceWords(assurance.depth_reached)],
        ['no point too deep', chanceWords(assurance.not_too_deep)],
        ['ligament kept', chanceWords(assurance.ligament_kept)],
        ['width in its band', chanceWords(assurance.width_in_band)],
      ],
    ),
    '',
    'Margins',
    ...textTable(
      [
        { title: 'Limit', align: 'start' },
        { title: 'Asks for', align: 'end' },
        { title: '', align: 'start' },
        { title: 'There is', align: 'end' },
        { title: 'Verdict', align: 'start' },
      ],
      plan.limits.map((limit) => {
        const [demand, capacity] = formatStatedApart(limit.demand, limit.capacity, limit.unit, units);
        return [limit.title, demand, limit.sense === 'most' ? '≤' : '≥', capacity, limit.verdict];
      }),
    ),
    ...wrapped(`Sources: ${sourceWords(plan.limits).join('; ')}.`, WIDTH, '  '),
    '',
  ];
}

function refusalLines({ refusal }: Answer, units: UnitSystem): string[] {
  return [
    'NO PLAN: nothing to run',
    ...wrapped(refusal?.summary ?? '', WIDTH),
    '',
    ...(refusal?.binding ?? []).flatMap((binding) => [
      ...wrapped(
        `${binding.constraint.replaceAll('_', ' ')}: asks for ${formatStated(binding.demand, binding.unit, units)}, ` +
          `there is ${formatStated(binding.limit, binding.unit, units)}`,
        WIDTH,
        '  - ',
      ),
      ...wrapped(`what would free it: ${binding.remedy}`, WIDTH, '    '),
    ]),
    '',
  ];
}

function alternativeLines(alternatives: readonly Plan[], units: UnitSystem): string[] {
  if (alternatives.length === 0) return [];
  const rows = alternatives.map((plan) => [
    formatAmount(plan.electrode_diameter_mm / 1000, 'length', units),
    `${plan.layers}×${plan.tracks}${plan.dominated ? ' *' : ''}`,
    formatAmount(plan.job_time_s.p50, 'time', units),
    `${plan.cost.p50.toFixed(2)} ${plan.currency}`,
    `${plan.whole_cost.p50.toFixed(0)} ${plan.currency}`,
    `${(plan.arc_energy_kJ / 1000).toFixed(1)} MJ`,
    fineLength(plan.floor_depth_mm.p50 / 1000, units),
    chanceWords(plan.assurance.depth_reached),
    chanceWords(plan.assurance.not_too_deep),
  ]);
  const columns = [
    'Electrode',
    'Passes',
    'Job time',
    'Arc cost',
    'Whole job',
    'Energy',
    'Floor',
    'Reached',
    'Not too deep',
  ];
  return [
    'Plans to choose from, quickest first (passes: layers×tracks; *: beaten in time, cost and heat)',
    ...textTable(
      columns.map((title, index) => ({ title, align: index < 2 ? 'start' : 'end' })),
      rows,
    ),
    '',
  ];
}

function figureLines(figures: readonly Figure[]): string[] {
  const widest = Math.max(...figures.map((figure) => figure.label.length));
  return figures.map(({ label, value, unit, note }) => {
    const amount = unit === undefined ? value : `${value} ${unit}`;
    return `  ${label.padEnd(widest)}  ${amount}${note === undefined ? '' : `  (${note})`}`;
  });
}

function tableLines({ caption, columns, rows }: TableBlock): string[] {
  return [caption, ...textTable(columns, rows)];
}

function listed(title: string, items: readonly string[], mark: string): string[] {
  if (items.length === 0) return [];
  return [title, ...items.flatMap((item) => wrapped(plainLine(item), WIDTH, `  ${mark}`)), ''];
}
