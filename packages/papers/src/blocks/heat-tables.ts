import {
  formatAmount,
  formatBand,
  formatBound,
  formatStated,
  fromUnit,
  type HeatRange,
  type HeatReport,
  type StatedUnit,
  type UnitSystem,
  type Written,
} from '@furrow/engine';
import { balanceWords, rangeText, skinText, sourceText } from '../words/index.ts';
import type { ListBlock, PaperBlock, ParagraphBlock, TableBlock, TableColumn } from './paper-document.ts';

/** The report with its sentences in the reader's units. */
type Told = Written<HeatReport>;

const start = (title: string, weight = 1): TableColumn => ({ title, align: 'start', weight });
const end = (title: string, weight = 1): TableColumn => ({ title, align: 'end', weight });
const paragraph = (text: string): ParagraphBlock => ({ kind: 'paragraph', tone: 'plain', text });
const list = (items: readonly string[]): ListBlock => ({ kind: 'list', tone: 'plain', items });

/** Each pass as the plate feels it at the station: energy, temperature before it, and the wait that the job asks for. */
export function heatPassTable({ passes }: Told, units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption: 'Passes as the plate feels them here',
    columns: [
      end('Pass', 0.5),
      end('Comes by'),
      end('Arc'),
      end('Leaves with the melt'),
      end('Plate keeps'),
      end('Beside the groove before'),
      end('Waits'),
    ],
    rows: passes.map((pass) => [
      String(pass.number),
      formatStated(pass.at_station_s.middle, 's', units),
      formatStated(pass.gross_kJ_per_mm, 'kJ/mm', units),
      formatStated(pass.with_melt_kJ_per_mm, 'kJ/mm', units),
      rangeText(pass.kept_kJ_per_mm, 'kJ/mm', units),
      rangeText(pass.before_degC, 'degC', units),
      pass.wait_s.most < WAIT_LEAST ? 'none' : rangeText(pass.wait_s, 's', units),
    ]),
  };
}

/** A wait below this is none [s]. */
const WAIT_LEAST = 0.5;

/** What the heat does to the plate where little, middle and much of it is kept. */
export function heatTable(report: Told, units: UnitSystem): TableBlock {
  const { transformation } = report;
  const [ac1, ac3] = [transformation?.ac1_degC, transformation?.ac3_degC].map((value) =>
    value === undefined ? '' : ` (${formatStated(value, 'degC', units)})`,
  );
  const row = (what: string, range: HeatRange | null, unit: StatedUnit): string[][] =>
    range === null
      ? []
      : [[what, ...[range.least, range.middle, range.most].map((value) => formatStated(value, unit, units))]];
  return {
    kind: 'table',
    caption: 'What it does to the plate',
    columns: [start('What', 2), end('Least'), end('Middle'), end('Most')],
    rows: [
      ...row('Back face, highest', report.back_face_degC, 'degC'),
      ...row(`Width past Ac1${ac1}, both sides`, report.width_past_ac1_mm, 'mm'),
      ...row(`Width past Ac3${ac3}, both sides`, report.width_past_ac3_mm, 'mm'),
      ...row('Depth past Ac1 below the floor', report.depth_past_ac1_mm, 'mm'),
      ...row('t8/5 at the groove’s surface', report.t85_s, 's'),
    ],
  };
}

/** The end of the seam, or the whole of a short one, beside the section: heat flows along the seam as well. */
export function endBlocks(
  ends: NonNullable<Told['ends']>,
  units: UnitSystem,
): readonly [TableBlock, ParagraphBlock] {
  const { t85_s: cooling } = ends;
  return [
    {
      kind: 'table',
      caption: ends.whole_seam
        ? 'The whole seam, with heat that flows along it'
        : `The end of the seam, over ${formatStated(ends.window_mm, 'mm', units, 'length')}, with heat that flows along it`,
      columns: [start('What', 2), end('There'), end('In the section')],
      rows: [
        [
          'Back face, highest',
          formatStated(ends.back_face_degC, 'degC', units),
          formatStated(ends.section_back_face_degC, 'degC', units),
        ],
        [
          'Width past Ac1, greatest',
          formatStated(ends.width_past_ac1_mm, 'mm', units),
          formatStated(ends.section_width_past_ac1_mm, 'mm', units),
        ],
        ['t8/5', rangeText(cooling, 's', units), formatStated(ends.section_t85_s, 's', units)],
      ],
    },
    paragraph(ends.note),
  ];
}

/** The cooling time by formula beside the field's own, and where they part company. */
export function coolingBlocks(
  { t85_s, cooling_formulas: formulas, cooling_remarks: remarks }: Told,
  units: UnitSystem,
): readonly [TableBlock, ListBlock] {
  return [
    {
      kind: 'table',
      caption: 'Cooling time t8/5 at the groove’s surface',
      columns: [
        start('By', 1.4),
        end('t8/5'),
        start('Range of the formula'),
        { ...start('Note and source', 3), below: 'by_row' },
      ],
      rows: [
        [
          'field',
          t85_s === null ? 'does not pass both' : rangeText(t85_s, 's', units),
          '–',
          'solved on this section',
        ],
        ...formulas.map((formula) => [
          formula.name,
          formula.t85_s === null ? 'does not apply' : rangeText(formula.t85_s, 's', units),
          formula.inside_range ? 'inside' : 'outside',
          `${formula.note} ${sourceText(formula.source)}`,
        ]),
      ],
      marks: [{ row: 0, mark: 'chosen' }],
    },
    list(remarks),
  ];
}

/** Hardness at the groove's surface: a band over several formulas, never one number; or why there is none. */
export function hardnessBlocks(
  { hardness, hardness_missing: missing }: Told,
  units: UnitSystem,
): PaperBlock[] {
  if (hardness === null) return missing === null ? [] : [paragraph(`Hardness: ${missing}`)];
  const { least_HV: least, most_HV: most, skin_HV, formulas, note } = hardness;
  return [
    paragraph(
      `Hardness at the groove’s surface: ${rangeText({ least, most }, 'HV', units)}, the formulas’ own scatter included; ` +
        `of the carburised film if it is left on ${formatStated(skin_HV, 'HV', units)}.`,
    ),
    list(
      formulas.map(
        ({ name, value_HV, source }) =>
          `${name}: ${rangeText(value_HV, 'HV', units)} [${sourceText(source)}]`,
      ),
    ),
    paragraph(note),
  ];
}

/** A temperature that a plate must have at least, never rounded below it. */
function leastDegrees(celsius: number, units: UnitSystem): string {
  return formatBound(fromUnit(celsius, 'degC'), 'temperature', units, 'least');
}

/** The preheat of the re-weld by each method side by side, why they differ, and what it means for gouging. */
export function preheatBlocks({ preheat, preheat_missing: missing }: Told, units: UnitSystem): PaperBlock[] {
  if (preheat === null) return missing === null ? [] : [paragraph(`Preheat: ${missing}`)];
  const { methods, differences, gouging } = preheat;
  return [
    {
      kind: 'table',
      caption: 'Preheat for the re-weld, methods side by side; the code that governs the job decides',
      columns: [
        { ...start('Method', 1.4), strong: true },
        { ...end('Preheat'), strong: true },
        start('What the method is for'),
        { ...start('Worked out from', 2.4), below: 'by_row' },
        { ...start('Remarks and source', 2.4), below: 'by_row' },
      ],
      rows: methods.map(({ method, temperature_degC: asked, inside_range, parts, remarks, source }) => [
        method,
        asked === null ? 'cannot be used' : leastDegrees(asked, units),
        inside_range ? 'inside' : 'outside',
        parts.map(({ name, value, unit }) => `${name} ${formatStated(value, unit, units)}`).join(', '),
        [...remarks, sourceText(source)].join(' '),
      ]),
      marks: methods.flatMap(({ inside_range }, row) =>
        inside_range ? [] : [{ row, column: 2, mark: 'broken' } as const],
      ),
    },
    ...(differences.length === 0
      ? []
      : ([
          {
            kind: 'heading',
            level: 2,
            text: methods.length > 1 ? 'Why they differ' : 'What is missing',
          },
          list(differences),
        ] as const)),
    paragraph(
      `For gouging: ${gouging.known ? leastDegrees(gouging.temperature_degC, units) : 'not known'}` +
        `${gouging.stated ? ', as the job states' : ''} [${sourceText(gouging.source)}]`,
    ),
  ];
}

/** The carburised skin: what is ground away and what that adds to the refill. */
export function skinBlock(report: Told, units: UnitSystem): ParagraphBlock {
  const { allowance_mm: allowance, source } = report.skin;
  return paragraph(
    `Grind ${formatStated(allowance, 'mm', units)} off all round the groove (${sourceText(source)}). ${skinText(report, units)}`,
  );
}

/** What the heat rests on, each with its source, and whether the energy adds up. */
export function restList({ assumptions, transformation, balance }: Told, units: UnitSystem): ListBlock {
  const per = (value: number): string => formatStated(value, 'kJ/m', units);
  // a plate that was preheated can lose more than it is given
  const stored =
    balance.stored_kJ_per_m >= 0
      ? `${per(balance.stored_kJ_per_m)} still in the section`
      : `${per(-balance.stored_kJ_per_m)} of it out of the preheat`;
  return list([
    ...assumptions.map(({ topic, text, source }) => `${topic}: ${text} [${sourceText(source)}]`),
    ...(transformation === null
      ? []
      : [
          `Ac1 and Ac3: ${formatStated(transformation.ac1_degC, 'degC', units)} and ` +
            `${formatStated(transformation.ac3_degC, 'degC', units)} [${sourceText(transformation.source)}]`,
        ]),
    `Energy: ${per(balance.given_kJ_per_m)} given, ${per(balance.cut_out_kJ_per_m)} cut out with hot metal, ` +
      `${per(balance.lost_kJ_per_m)} lost at the faces, ${stored}; ${balanceWords(balance.error)}.`,
  ]);
}

/** Which section it is, how well it is solved, and how much of the arc's energy the plate keeps. */
export function heatGround(report: Told, units: UnitSystem): readonly [string, string] {
  const place = formatStated(report.station_mm, 'mm', units, 'length');
  const error = report.grid_error_percent;
  const { least, middle, most } = report.kept_share;
  const [low, between, high] = [least, middle, most].map((share) => formatAmount(share, 'share', units));
  return [
    report.quality === 'quick'
      ? `Section ${place} from the start of the seam; a quick look.`
      : `Section ${place} from the start of the seam; refined${error === null ? '' : `, peak temperatures within about ${error.toPrecision(2)} % of the grid’s own limit`}.`,
    `The plate keeps ${formatBand(least, most, 'share', units)} of the arc energy; least, middle and most below stand for ${low}, ${between} and ${high}.`,
  ];
}
