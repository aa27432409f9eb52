import type { Readings, SurveyReport, SurveySeam, UnitSystem } from '@furrow/engine';
import { seamCurveDrawing } from '../drawing/index.ts';
import {
  enoughWords,
  GAUGE_PARTS,
  gaugeCheckWords,
  gaugeLength,
  measuredWords,
  recutWords,
  riskWords,
  SURVEY_VERDICT_WORDS,
  seamMeasuresWords,
  seamPlace,
  seamVerdictWords,
  setAsideWords,
  spreadLength,
  stretchWords,
} from '../words/index.ts';
import type { ListBlock, PaperBlock, ParagraphBlock, TableBlock } from './paper-document.ts';

/** Sections told one by one at most [-]. */
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
    ...scannedBlocks(sections, units),
    ...measuringBlocks(report, readings, units),
  ];
}

function seamBlocks(seam: SurveySeam, units: UnitSystem): PaperBlock[] {
  return [
    { kind: 'heading', level: 2, text: seamVerdictWords(seam, units) },
    ...(seam.remarks.length === 0 ? [] : [{ kind: 'list', tone: 'caution', items: seam.remarks } as const]),
    { kind: 'drawing', drawing: seamCurveDrawing({ seam, units, width: 540, height: 150 }) },
    ...(['width', 'remaining'] as const)
      .filter((of) => of === 'remaining' || seam.width.readings > 0)
      .map((of) => ({
        kind: 'drawing' as const,
        drawing: seamCurveDrawing({ seam, of, units, width: 540, height: 120 }),
      })),
    stretchTable(seam, units),
    wantedBlock(seam, units),
    measuresList(seam, units),
    ...recutBlocks(seam, units),
    ...asideBlocks(seam, units),
    ...historyBlocks(seam, units),
  ];
}

/** The verdict on a stretch as a margin has it. */
const VERDICT_MARKS = { holds: 'holds', in_doubt: 'tight', fails: 'fails' } as const;

/** Stretches of the seam with the verdict of the rule and the plain one beside it. */
export function stretchTable({ stretches }: SurveySeam, units: UnitSystem): TableBlock {
  return {
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
    rows: stretches.map((stretch) => [
      seamPlace(stretch.from_mm, units),
      seamPlace(stretch.to_mm, units),
      SURVEY_VERDICT_WORDS[stretch.verdict],
      stretch.simple_acceptance,
      stretchWords(stretch),
    ]),
    marks: stretches.map(({ verdict }, row) => ({ row, column: 2, mark: VERDICT_MARKS[verdict] })),
  };
}

/** The depth that is wanted, and by which rule it is judged. */
export function wantedBlock({ limits, rule }: SurveySeam, units: UnitSystem): ParagraphBlock {
  return {
    kind: 'paragraph',
    tone: 'small',
    text: `Depth wanted: ${gaugeLength(limits.least_mm, units)} to ${gaugeLength(limits.most_mm, units)}. ${rule}`,
  };
}

/** What is said of width and plate left, each by itself. */
export function measuresList(seam: SurveySeam, units: UnitSystem): ListBlock {
  return { kind: 'list', tone: 'plain', items: seamMeasuresWords(seam, units) };
}

/** Where to measure next, the place that takes most risk away per minute first; or that it is enough. */
export function nextBlock(seam: SurveySeam, units: UnitSystem): TableBlock | ParagraphBlock {
  if (seam.enough) return { kind: 'paragraph', tone: 'plain', text: enoughWords(seam.stretches) };
  return {
    kind: 'table',
    caption: 'Places that take most risk away per minute',
    small: true,
    columns: [
      { title: 'Place', align: 'end', weight: 1, strong: true },
      { title: 'Risk taken away', align: 'end', weight: 2 },
    ],
    rows: seam.measure_next.map(({ at_mm, gain }) => [
      seamPlace(at_mm, units),
      riskWords(gain, seam.risk_unit, units),
    ]),
  };
}

/** What mends each stretch that fails. */
export function recutBlocks({ recut }: SurveySeam, units: UnitSystem): PaperBlock[] {
  return recut.flatMap((each): PaperBlock[] => [
    {
      kind: 'heading',
      level: 2,
      text: `To mend ${seamPlace(each.from_mm, units)} to ${seamPlace(each.to_mm, units)}`,
    },
    { kind: 'list', tone: 'plain', items: recutWords(each, units) },
  ]);
}

/** Readings that do not count, with the reason of each; nothing where all do. */
export function asideBlocks({ readings }: SurveySeam, units: UnitSystem): PaperBlock[] {
  const aside = readings.filter(({ used }) => !used).map((reading) => setAsideWords(reading, units));
  if (aside.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Readings that do not count' },
    { kind: 'list', tone: 'plain', items: aside },
  ];
}

/** What was said before each recut, and what is said now; nothing where nothing was cut again. */
export function historyBlocks(seam: SurveySeam, units: UnitSystem): PaperBlock[] {
  const { history, cut_again, verdict, readings } = seam;
  if (history.length === 0) return [];
  const used = readings.filter((each) => each.used).length;
  const all = [...history, { after_recut: cut_again.length, verdict, readings_used: used }];
  return [
    { kind: 'heading', level: 2, text: 'What was said before' },
    {
      kind: 'list',
      tone: 'plain',
      items: all.map((each) => {
        const cut = cut_again[each.after_recut];
        const then =
          cut === undefined
            ? ''
            : ` Then it was cut again from ${seamPlace(cut.from_mm, units)} to ${seamPlace(cut.to_mm, units)}.`;
        const when = each.after_recut === 0 ? 'As first cut' : `After recut ${each.after_recut}`;
        return `${when}: ${SURVEY_VERDICT_WORDS[each.verdict]}, by ${each.readings_used} ${each.readings_used === 1 ? 'reading' : 'readings'}.${then}`;
      }),
    },
  ];
}

type Section = SurveyReport['sections'][number];

/** What is measured of a section: its key in the report, its name, its unit. */
const QUANTITIES = [
  { key: 'depth_mm', title: 'Depth', unit: 'mm' },
  { key: 'width_mm', title: 'Width', unit: 'mm' },
  { key: 'root_radius_mm', title: 'Root radius', unit: 'mm' },
  { key: 'wall_left_deg', title: 'Left wall', unit: 'deg' },
  { key: 'wall_right_deg', title: 'Right wall', unit: 'deg' },
  { key: 'area_mm2', title: 'Area', unit: 'mm2' },
  { key: 'plate_step_mm', title: 'Step between the plates', unit: 'mm' },
  { key: 'tilt_deg', title: 'Tilt of the scan', unit: 'deg' },
] as const;

/** Those that a table of many sections has room for; the rest is told section by section. */
const BESIDE = QUANTITIES.slice(0, 6);

/** Sections as scanned, what was declined of them and why; nothing where none was. */
export function scannedBlocks(sections: readonly Section[], units: UnitSystem): PaperBlock[] {
  if (sections.length === 0) return [];
  const reasons = new Map<string, number>();
  for (const section of sections) {
    const own = BESIDE.flatMap(({ key }) => ('declined' in section[key] ? [section[key].declined] : []));
    for (const why of new Set(own)) reasons.set(why, (reasons.get(why) ?? 0) + 1);
  }
  const items = [...reasons].map(([why, count]) => `Declined in ${count} of ${sections.length}: ${why}.`);
  return [
    sectionTable(sections, units),
    ...(items.length === 0 ? [] : [{ kind: 'list', tone: 'plain', items } as const]),
  ];
}

function sectionTable(sections: readonly Section[], units: UnitSystem): TableBlock {
  const more = sections.length - SECTIONS_MOST;
  return {
    kind: 'table',
    caption: `Sections as scanned, ± expanded uncertainty (95 %)${more > 0 ? `; the first ${SECTIONS_MOST} of ${sections.length}` : ''}`,
    small: true,
    columns: [
      { title: 'Place', align: 'end', weight: 0.7, strong: true },
      ...BESIDE.map(({ title }) => ({ title, align: 'end', weight: 1.1 }) as const),
      { title: 'Points: read, missing, apart', align: 'start', weight: 1 },
      { title: 'File', align: 'start', weight: 1.2, below: 'once' },
    ],
    rows: sections
      .slice(0, SECTIONS_MOST)
      .map((section) => [
        section.station_mm === null ? '' : seamPlace(section.station_mm, units),
        ...BESIDE.map(({ key, unit }) => measuredWords(section[key], unit, units) ?? 'declined'),
        `${section.points.read}, ${section.points.missing}, ${section.points.outliers.length}`,
        section.file,
      ]),
  };
}

/** Everything that was measured of one section, or why not. */
export function quantityTable(section: Section, units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption: 'Quantities of the section',
    small: true,
    columns: [
      { title: 'Quantity', align: 'start', weight: 1, strong: true },
      { title: 'Value ± expanded uncertainty (95 %)', align: 'start', weight: 2 },
    ],
    rows: QUANTITIES.map(({ key, title, unit }) => {
      const quantity = section[key];
      const told = measuredWords(quantity, unit, units);
      return [title, told ?? `declined: ${'declined' in quantity ? quantity.declined : ''}`];
    }),
  };
}

/** How each file was read, with every choice that a person should look at. */
export function filesList({ reading }: Pick<SurveyReport, 'reading'>): ListBlock {
  return {
    kind: 'list',
    tone: 'plain',
    items: reading.map(({ file, rows_read: rows, choices }) => {
      const told = choices
        .filter(({ about, sure }) => !sure || about === 'kind' || about === 'unit')
        .map(({ says, sure }) => `${sure ? '' : 'Look at this: '}${says}`);
      return [`${file}: ${rows} rows`, ...told].join('; ');
    }),
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
            spreadLength(inputs.gauge_u_mm, units),
            spreadLength(2 * inputs.gauge_u_mm, units),
            inputs.gauge_u_from,
          ],
        ]),
    ...(scanned.length === 0
      ? []
      : [
          [
            'Depth of a scanned section',
            `${spreadLength(Math.min(...scanned), units)} to ${spreadLength(Math.max(...scanned), units)}`,
            `${spreadLength(2 * Math.min(...scanned), units)} to ${spreadLength(2 * Math.max(...scanned), units)}`,
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
        ...budgetWords(inputs.gauge_budget, units),
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

/** What the uncertainty of a reading by hand is made of, as standard uncertainties; none where nothing was studied. */
function budgetWords(budget: SurveyReport['inputs']['gauge_budget'], units: UnitSystem): string[] {
  if (budget.length === 0) return [];
  const parts = budget.map(({ what, u_mm }) => `${GAUGE_PARTS[what]} ${spreadLength(u_mm, units)}`);
  return [`A reading by hand, standard uncertainties: ${parts.join('; ')}.`];
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
    `${spreadLength(least, units)} to ${spreadLength(most, units)}`,
    `${spreadLength(2 * least, units)} to ${spreadLength(2 * most, units)}`,
    `readings and ${seam.prediction === 'run' ? 'the log of the run' : 'the plan'} together, by a Gaussian process along the seam`,
  ];
}
