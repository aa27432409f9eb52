import type { SurveyReport, UnitSystem } from '@furrow/engine';
import {
  enoughWords,
  gaugeLength,
  measuredWords,
  recutWords,
  riskWords,
  SURVEY_VERDICT_WORDS,
  seamMeasuresWords,
  seamPlace,
  seamVerdictWords,
  setAsideWords,
  stretchWords,
  teachesWords,
} from '../words/index.ts';
import { plainLine } from './plain-line.ts';
import { type TextColumn, textTable } from './text-table.ts';
import { wrapped } from './wrapped.ts';

/** Letters per line. */
const WIDTH = 100;
/** Sections told one by one at most [-]. */
const SECTIONS_MOST = 40;

const start = (title: string): TextColumn => ({ title, align: 'start' });
const end = (title: string): TextColumn => ({ title, align: 'end' });

/** Writes what was measured of a groove for the terminal: the verdict first, in words. */
export function renderSurveyText(report: SurveyReport, units: UnitSystem): string {
  const lines = [...seamLines(report, units), ...sectionLines(report, units), ...readingLines(report)];
  const remarks = report.remarks.flatMap((remark) => wrapped(plainLine(remark), WIDTH));
  return `${[...lines, ...remarks].join('\n')}\n`;
}

function seamLines({ seam }: SurveyReport, units: UnitSystem): string[] {
  if (seam === null) return [];
  return [
    ...wrapped(seamVerdictWords(seam, units), WIDTH),
    ...seam.remarks.flatMap((remark) => wrapped(remark, WIDTH)),
    '',
    ...textTable(
      [end('From'), end('To'), start('Verdict'), start('By best estimate alone'), start('')],
      seam.stretches.map((stretch) => [
        seamPlace(stretch.from_mm, units),
        seamPlace(stretch.to_mm, units),
        SURVEY_VERDICT_WORDS[stretch.verdict],
        stretch.simple_acceptance,
        stretchWords(stretch),
      ]),
      WIDTH,
    ),
    '',
    ...wrapped(
      `Depth wanted: ${gaugeLength(seam.limits.least_mm, units)} to ${gaugeLength(seam.limits.most_mm, units)}. ${seam.rule}`,
      WIDTH,
    ),
    ...seamMeasuresWords(seam, units).flatMap((line) => wrapped(line, WIDTH)),
    '',
    'Measure next',
    ...(seam.enough
      ? wrapped(enoughWords(seam.stretches), WIDTH, '  ')
      : seam.measure_next.map(
          ({ at_mm, gain }) =>
            `  at ${seamPlace(at_mm, units)}: takes away a risk of ${riskWords(gain, seam.risk_unit, units)}`,
        )),
    ...seam.recut.flatMap((each) => [
      '',
      `To mend ${seamPlace(each.from_mm, units)} to ${seamPlace(each.to_mm, units)}`,
      ...recutWords(each, units).flatMap((line) => wrapped(line, WIDTH, '  ')),
    ]),
    ...seam.readings
      .filter(({ used }) => !used)
      .flatMap((reading) => ['', ...wrapped(setAsideWords(reading, units), WIDTH)]),
    '',
    ...teachesWords(seam.teaches).flatMap((line) => wrapped(line, WIDTH)),
  ];
}

/** Why nothing more is to be measured; what stays in doubt is not told as settled. */
function sectionLines({ sections }: SurveyReport, units: UnitSystem): string[] {
  if (sections.length === 0) return [];
  const cell = (
    quantity: Parameters<typeof measuredWords>[0],
    unit: Parameters<typeof measuredWords>[1],
  ): string => measuredWords(quantity, unit, units) ?? 'declined';
  const reasons = new Map<string, number>();
  for (const { depth_mm, width_mm, root_radius_mm, wall_left_deg, wall_right_deg, area_mm2 } of sections) {
    const own = new Set(
      [depth_mm, width_mm, root_radius_mm, wall_left_deg, wall_right_deg, area_mm2].flatMap((quantity) =>
        'declined' in quantity ? [quantity.declined] : [],
      ),
    );
    for (const why of own) reasons.set(why, (reasons.get(why) ?? 0) + 1);
  }
  const missing = sections.reduce((sum, { points }) => sum + points.missing, 0);
  const wild = sections.reduce((sum, { points }) => sum + points.outliers.length, 0);
  return [
    sections.length === 1 ? 'The section' : `${sections.length} sections`,
    ...textTable(
      [
        end('At'),
        end('Depth'),
        end('Width'),
        end('Root radius'),
        end('Left wall'),
        end('Right wall'),
        end('Area'),
      ],
      sections
        .slice(0, SECTIONS_MOST)
        .map((section) => [
          section.station_mm === null ? '-' : seamPlace(section.station_mm, units),
          cell(section.depth_mm, 'mm'),
          cell(section.width_mm, 'mm'),
          cell(section.root_radius_mm, 'mm'),
          cell(section.wall_left_deg, 'deg'),
          cell(section.wall_right_deg, 'deg'),
          cell(section.area_mm2, 'mm2'),
        ]),
      132,
    ),
    ...(sections.length > SECTIONS_MOST
      ? [`  and ${sections.length - SECTIONS_MOST} more: --json tells all.`]
      : []),
    ...[...reasons].flatMap(([why, count]) =>
      wrapped(`Declined in ${count} of ${sections.length}: ${why}.`, WIDTH),
    ),
    `Points missing: ${missing}; wild points marked: ${wild}. Uncertainties are of 95 %.`,
    '',
  ];
}

function readingLines({ reading }: SurveyReport): string[] {
  return [
    'How the files were read',
    ...reading.flatMap(({ file, rows_read, choices }) => [
      ...wrapped(plainLine(`${file}: ${rows_read} rows`), WIDTH, '  '),
      ...choices
        .filter(({ about, sure }) => !sure || about === 'kind' || about === 'unit')
        .flatMap(({ says, sure }) =>
          wrapped(plainLine(`${sure ? '' : 'Look at this: '}${says}`), WIDTH, '    '),
        ),
    ]),
    '',
  ];
}
