import {
  type CrewNoiseReport,
  type FieldReport,
  type FumeReport,
  formatStated,
  type HazardReport,
  type HazardRow,
  type HazardSection,
  type UnitSystem,
} from '@furrow/engine';
import { breachTexts, figureText, noteText, rangeText, sourceText } from '../words/index.ts';
import { plainLine } from './plain-line.ts';
import { type TextColumn, textTable } from './text-table.ts';
import { wrapped } from './wrapped.ts';

/** Letters per line. */
const WIDTH = 100;

const start = (title: string): TextColumn => ({ title, align: 'start' });
const end = (title: string): TextColumn => ({ title, align: 'end' });

/** Writes for the terminal what a job asks of the people around it. */
export function renderHazardText(report: HazardReport, title: string, units: UnitSystem): string {
  const { setting } = report;
  const lines = [
    ...wrapped(plainLine(title), WIDTH),
    ...wrapped(report.defers, WIDTH),
    '',
    ...wrapped(
      `${formatStated(setting.current_A, 'A', units)} ${setting.of === 'plan' ? 'in the plan' : 'at most from the source, for there is no plan'}, ` +
        `${setting.torches} ${setting.torches === 1 ? 'torch' : 'torches'} at once, ${setting.place.replace('_', ' ')}, ` +
        `push angle ${formatStated(setting.push_angle_deg, 'deg', units)}.`,
      WIDTH,
    ),
    '',
    ...(report.breaches.length === 0
      ? []
      : listLines(
          'Over or short of a figure named',
          breachTexts(report.breaches, units).map(plainLine),
          '!',
        )),
    ...report.noise.flatMap((crew) => crewLines(crew, units)),
    ...report.sections.flatMap((section) => [
      ...sectionLines(section, units),
      ...(section.id === 'fume' ? fumeLines(report.fume, units) : []),
      ...(section.id === 'field' ? fieldLines(report.field, units) : []),
      '',
    ]),
    ...listLines('Cautions', report.cautions, '!'),
    ...listLines('Stop work', report.stop_work, 'x'),
  ];
  return `${lines.join('\n')}\n`;
}

function listLines(title: string, items: readonly string[], mark: string): string[] {
  return [title, ...items.flatMap((item) => wrapped(item, WIDTH, `  ${mark} `)), ''];
}

function rowLines(rows: readonly HazardRow[], units: UnitSystem): string[] {
  if (rows.length === 0) return [];
  return [
    ...textTable(
      [start('Rule'), end('There is'), end('Figure named'), start('Verdict')],
      rows.map((row) => [
        plainLine(row.rule),
        formatStated(row.value, row.unit, units),
        figureText(row, units),
        row.verdict,
      ]),
    ),
    ...rows.flatMap((row) => wrapped(plainLine(`${row.rule}: ${noteText(row)}.`), WIDTH, '    ')),
  ];
}

function sectionLines({ title, figures, rows, rules }: HazardSection, units: UnitSystem): string[] {
  return [
    title,
    ...figures.flatMap(({ name, value, unit, note, source }) =>
      wrapped(
        plainLine(`${name}: ${formatStated(value, unit, units)}, ${noteText({ note, source })}.`),
        WIDTH,
        '  ',
      ),
    ),
    ...rowLines(rows, units),
    ...rules.flatMap(({ text, source }) => wrapped(`${text} [${sourceText(source)}]`, WIDTH, '  - ')),
  ];
}

function crewLines(crew: CrewNoiseReport, units: UnitSystem): string[] {
  const { five_dB: five, three_dB: three, protection } = crew;
  const minutes = (value: number | null): string => formatStated(value, 'min', units);
  return [
    ...wrapped(
      plainLine(
        `Noise: ${crew.name}${crew.people === null ? '' : `, ${crew.people} people`}, shift ${minutes(crew.shift_min)}` +
          `${crew.quiet_min > 0 ? `, of it ${minutes(crew.quiet_min)} counted as quiet` : ''}`,
      ),
      WIDTH,
    ),
    ...textTable(
      [
        start('Task'),
        end('Time'),
        end('Level'),
        end('5 dB rule sets'),
        end('3 dB rule sets'),
        start('Level from'),
      ],
      crew.tasks.map((task) => [
        plainLine(task.name),
        minutes(task.time_min),
        rangeText(task.level_dBA, 'dBA', units),
        minutes(task.osha_time_min),
        minutes(task.niosh_time_min),
        task.measured ? 'measured' : task.level_dBA === null ? 'not known' : sourceText(task.source),
      ]),
    ),
    ...(crew.missing === null ? [] : wrapped(plainLine(crew.missing), WIDTH, '  ! ')),
    ...(five === null || three === null
      ? []
      : [
          `  5 dB family (OSHA): ${rangeText(five.pel_dose_percent, '%', units)} of the permissible dose, ${rangeText(five.action_average_dBA, 'dBA', units)} average of the action level`,
          `  3 dB family (NIOSH, EU): dose ${rangeText(three.dose_percent, '%', units)}, L_EX,8h ${rangeText(three.exposure_level_dBA, 'dBA', units)}`,
        ]),
    ...wrapped(
      `Worn: ${protection.worn}${protection.attenuation_dB === null ? '' : `, ${protection.attenuation_dB.toFixed(1)} dB counted on`}. ${protection.says}`,
      WIDTH,
      '  ',
    ),
    ...(protection.gouging_time_min === null
      ? []
      : wrapped(
          `By the 3 dB rule ${minutes(protection.gouging_time_min)} at the loudest task bring 85 dBA under it: a planning figure, no permission.`,
          WIDTH,
          '  ',
        )),
    ...rowLines(crew.rows, units),
    '',
  ];
}

function fumeLines({ set, substances, mixtures }: FumeReport, units: UnitSystem): string[] {
  return [
    `  Substances to reckon with; air flows by the ${set}`,
    ...textTable(
      [
        start('Substance'),
        start('Set'),
        start('Limit'),
        end('Measured'),
        start('Verdict'),
        end('Air if all were it'),
      ],
      substances.flatMap(({ name, measured_mg_per_m3, highest_mg_per_m3, limits }) =>
        limits.map((limit, index) => [
          index === 0 ? name : '',
          limit.set,
          limit.written === '' ? 'none' : limit.written,
          formatStated(limit.ceiling ? highest_mg_per_m3 : measured_mg_per_m3, 'mg/m3', units),
          limit.verdict,
          formatStated(limit.flow_if_all_m3_per_min, 'm3/min', units),
        ]),
      ),
      '    ',
    ),
    ...substances.flatMap(({ name, why }) => wrapped(plainLine(`${name}: ${why}.`), WIDTH, '    ')),
    ...mixtures.flatMap(({ set: of, index, verdict, not_covered }) =>
      wrapped(
        `Additive index by ${of}: ${formatStated(index, '-', units)}, ${verdict}${index === null || not_covered.length === 0 ? '' : `; without ${not_covered.join(', ')}`}.`,
        WIDTH,
        '    ',
      ),
    ),
  ];
}

function fieldLines({ apart_mm, distances }: FieldReport, units: UnitSystem): string[] {
  return textTable(
    [
      start('Field'),
      start('For'),
      end('Single lead'),
      end(`Pair, ${formatStated(apart_mm, 'mm', units)} apart`),
      start('Source'),
    ],
    distances.map(({ field_mT, what, single_mm, pair_mm, source }) => [
      formatStated(field_mT, 'mT', units),
      what,
      formatStated(single_mm, 'mm', units),
      formatStated(pair_mm, 'mm', units),
      sourceText(source),
    ]),
    '    ',
  );
}
