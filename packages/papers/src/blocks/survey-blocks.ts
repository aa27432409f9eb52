import type { Readings, SurveyReport, SurveySeam, UnitSystem } from '@furrow/engine';
import { seamCurveDrawing } from '../drawing/index.ts';
import {
  GAUGE_PARTS,
  gaugeCheckWords,
  measuredWords,
  recutWords,
  SURVEY_VERDICT_WORDS,
  seamPlace,
  seamVerdictWords,
  setAsideWords,
  stretchWords,
} from '../words/index.ts';
import type { PaperBlock, TableBlock } from './paper-document.ts';

/** Sections told one by one on a paper at most [-]. */
const SECTIONS_MOST = 40;

/** What was measured of a groove and what that says: the verdict, the curve, stretches, what mends them, and how it was measured. */
export function surveyBlocks(
  report: SurveyReport,
  readings: Readings | undefined,
  units: UnitSystem,
): PaperBlock[] {
  const { seam, sections } = report;
  return [
    ...(seam === null ? [] : seamBlocks(seam, units)),
    ...(sections.length === 0 ? [] : [sectionTable(sections, units)]),
    ...measuringBlocks(report, readings, units),
  ];
}

function seamBlocks(seam: SurveySeam, units: UnitSystem): PaperBlock[] {
  const aside = seam.readings.filter(({ used }) => !used).map((reading) => setAsideWords(reading, units));
  return [
    { kind: 'heading', level: 2, text: seamVerdictWords(seam, units) },
    ...(seam.remarks.length === 0 ? [] : [{ kind: 'list', tone: 'caution', items: seam.remarks } as const]),
    { kind: 'drawing', drawing: seamCurveDrawing({ seam, units, width: 540, height: 210 }) },
    ...(['width', 'remaining'] as const)
      .filter((of) => of === 'remaining' || seam.width.readings > 0)
      .map((of) => ({
        kind: 'drawing' as const,
        drawing: seamCurveDrawing({ seam, of, units, width: 540, height: 150 }),
      })),
    {
      kind: 'table',
      caption: 'Stretches of the seam',
      small: true,
      columns: [
        { title: 'From', align: 'end', weight: 0.7, strong: true },
        { title: 'To', align: 'end', weight: 0.7, strong: true },
        { title: 'With guard band', align: 'start', weight: 0.9, strong: true },
        { title: 'Simple acceptance', align: 'start', weight: 0.9 },
        { title: 'How sure', align: 'start', weight: 3 },
      ],
      rows: seam.stretches.map((stretch) => [
        seamPlace(stretch.from_mm, units),
        seamPlace(stretch.to_mm, units),
        SURVEY_VERDICT_WORDS[stretch.verdict],
        stretch.simple_acceptance,
        stretchWords(stretch),
      ]),
    },
    { kind: 'paragraph', tone: 'small', text: seam.rule },
    ...seam.recut.flatMap((each): PaperBlock[] => [
      {
        kind: 'heading',
        level: 2,
        text: `To mend ${seamPlace(each.from_mm, units)} to ${seamPlace(each.to_mm, units)}`,
      },
      { kind: 'list', tone: 'plain', items: recutWords(each, units) },
    ]),
    ...(aside.length === 0
      ? []
      : [
          { kind: 'heading', level: 2, text: 'Readings that do not count' } as const,
          { kind: 'list', tone: 'plain', items: aside } as const,
        ]),
    ...(seam.history.length === 0
      ? []
      : [
          { kind: 'heading', level: 2, text: 'What was said before' } as const,
          { kind: 'list', tone: 'plain', items: historyWords(seam, units) } as const,
        ]),
  ];
}

function historyWords({ history, cut_again }: SurveySeam, units: UnitSystem): string[] {
  return history.map(({ after_recut, verdict, readings_used }) => {
    const cut = cut_again[after_recut];
    const then =
      cut === undefined
        ? ''
        : ` Then it was cut again from ${seamPlace(cut.from_mm, units)} to ${seamPlace(cut.to_mm, units)}.`;
    const when = after_recut === 0 ? 'As first cut' : `After recut ${after_recut}`;
    return `${when}: ${SURVEY_VERDICT_WORDS[verdict]}, by ${readings_used} ${readings_used === 1 ? 'reading' : 'readings'}.${then}`;
  });
}

function sectionTable(sections: SurveyReport['sections'], units: UnitSystem): TableBlock {
  const cell = (
    quantity: Parameters<typeof measuredWords>[0],
    unit: Parameters<typeof measuredWords>[1],
  ): string => measuredWords(quantity, unit, units) ?? ('declined' in quantity ? quantity.declined : '');
  const more = sections.length - SECTIONS_MOST;
  return {
    kind: 'table',
    caption: `Sections as scanned, ± expanded uncertainty (95 %)${more > 0 ? `; the first ${SECTIONS_MOST} of ${sections.length}` : ''}`,
    small: true,
    columns: [
      { title: 'Place', align: 'end', weight: 0.7, strong: true },
      { title: 'Depth', align: 'end', weight: 1.1 },
      { title: 'Width', align: 'end', weight: 1.1 },
      { title: 'Root radius', align: 'end', weight: 1.1 },
      { title: 'Area', align: 'end', weight: 1.2 },
      { title: 'Step', align: 'end', weight: 1 },
      { title: 'Points: read, missing, apart', align: 'start', weight: 1.1 },
      { title: 'File', align: 'start', weight: 1.3 },
    ],
    rows: sections
      .slice(0, SECTIONS_MOST)
      .map((section) => [
        section.station_mm === null ? '' : seamPlace(section.station_mm, units),
        cell(section.depth_mm, 'mm'),
        cell(section.width_mm, 'mm'),
        cell(section.root_radius_mm, 'mm'),
        cell(section.area_mm2, 'mm2'),
        cell(section.plate_step_mm, 'mm'),
        `${section.points.read}, ${section.points.missing}, ${section.points.outliers.length}`,
        section.file,
      ]),
  };
}

/** With what was measured, how surely, by whom: the gauge and its check, the uncertainty budget, the files with their hashes. */
function measuringBlocks(
  { inputs, sections, seam }: SurveyReport,
  readings: Readings | undefined,
  units: UnitSystem,
): PaperBlock[] {
  const people = [
    ...new Set(
      [...(readings?.stations ?? []), ...(readings?.files ?? []), ...(readings?.recuts ?? [])].flatMap(
        ({ by }) => (by === undefined ? [] : [by]),
      ),
    ),
  ];
  const scans = (seam?.readings ?? []).filter(({ from }) => from === 'scan');
  const scanned = scans.map(({ depth_mm }) => depth_mm.u95 / 2);
  const files = inputs.files.filter(({ file }) => file !== 'readings');
  const rows: string[][] = [
    ...(inputs.gauge_u_mm === null
      ? []
      : [
          [
            'One depth reading by hand',
            fineLength(inputs.gauge_u_mm, units),
            fineLength(2 * inputs.gauge_u_mm, units),
            inputs.gauge_u_from,
          ],
          ...inputs.gauge_budget.map(({ what, u_mm }) => [
            '',
            fineLength(u_mm, units),
            '',
            `of it: ${GAUGE_PARTS[what]}`,
          ]),
        ]),
    ...(scanned.length === 0
      ? []
      : [
          [
            'Depth of a scanned section',
            `${fineLength(Math.min(...scanned), units)} to ${fineLength(Math.max(...scanned), units)}`,
            `${fineLength(2 * Math.min(...scanned), units)} to ${fineLength(2 * Math.max(...scanned), units)}`,
            'fit of plate line and floor to the points of the section (GUM)',
          ],
        ]),
    ...(seam === null ? [] : [curveRow(seam, units)]),
  ];
  return [
    ...(rows.length === 0
      ? []
      : [
          {
            kind: 'table',
            caption: 'Uncertainty of the depths',
            small: true,
            columns: [
              { title: 'Of', align: 'start', weight: 1.3, strong: true },
              { title: 'Standard', align: 'end', weight: 0.9 },
              { title: 'Expanded (k = 2)', align: 'end', weight: 0.9 },
              { title: 'From', align: 'start', weight: 2.6 },
            ],
            rows,
          } as const,
        ]),
    {
      kind: 'list',
      tone: 'plain',
      items: [
        `Measured by: ${people.length === 0 ? 'not stated' : people.join(', ')}.`,
        readings?.gauge_check === undefined
          ? 'No check of the gauge against a block is recorded.'
          : gaugeCheckWords(readings.gauge_check, units) + checkedBy(readings.gauge_check),
        ...files.map(({ file, sha256 }) => `File ${file}, SHA-256 ${sha256}.`),
        ...(sections.length === 0 ? [] : ['Wild points of a scan are counted, and do not count.']),
      ],
    },
  ];
}

function checkedBy({ by, when }: NonNullable<Readings['gauge_check']>): string {
  const parts = [...(by === undefined ? [] : [`by ${by}`]), ...(when === undefined ? [] : [when])];
  return parts.length === 0 ? '' : ` Checked ${parts.join(', ')}.`;
}

/** Where the depth along the seam is known best and least. */
function curveRow(seam: SurveySeam, units: UnitSystem): string[] {
  // a 90 % interval reaches 1.645 standard deviations to either side
  const spreads = seam.curve.map(({ depth_mm: { p05, p95 } }) => (p95 - p05) / (2 * 1.645));
  const [least, most] = [Math.min(...spreads), Math.max(...spreads)];
  return [
    'Depth along the seam',
    `${fineLength(least, units)} to ${fineLength(most, units)}`,
    `${fineLength(2 * least, units)} to ${fineLength(2 * most, units)}`,
    `readings and ${seam.prediction === 'run' ? 'the log of the run' : 'the plan'} together, by a Gaussian process along the seam`,
  ];
}

/** An uncertainty, finer than a reading. */
function fineLength(millimetres: number, units: UnitSystem): string {
  return units === 'inch' ? `${(millimetres / 25.4).toFixed(4)} in` : `${millimetres.toFixed(2)} mm`;
}
