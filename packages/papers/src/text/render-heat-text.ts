import {
  formatAmount,
  formatStated,
  type HeatRange,
  type HeatReport,
  type PreheatMethod,
  type Source,
  sentencesWritten,
  type UnitSystem,
  type Written,
} from '@furrow/engine';
import { balanceWords, fineStated, fineUnit, skinText } from '../words/index.ts';
import { WIDTH } from './block-to-text.ts';
import { limitLines } from './limit-lines.ts';
import { plainLine } from './plain-line.ts';
import { type TextColumn, textTable } from './text-table.ts';
import { wrapped } from './wrapped.ts';

/** The report with its sentences in the reader's units. */
type Told = Written<HeatReport>;

/** Writes for the terminal what the plan does to the plate, and what it asks for before and after. */
export function renderHeatText(heat: HeatReport, title: string, units: UnitSystem): string {
  const report = sentencesWritten(heat, units);
  const lines = [
    ...wrapped(plainLine(title), WIDTH),
    ...wrapped(whereText(report, units), WIDTH),
    ...wrapped(
      `The plate keeps ${percent(report.kept_share.least)} to ${percent(report.kept_share.most)} % of the arc ` +
        `energy; least, middle and most below stand for ${percent(report.kept_share.least)}, ` +
        `${percent(report.kept_share.middle)} and ${percent(report.kept_share.most)} %.`,
      WIDTH,
    ),
    '',
    ...passLines(report, units),
    ...fieldLines(report, units),
    ...endLines(report, units),
    ...coolingLines(report),
    ...hardnessLines(report),
    ...preheatLines(report, units),
    ...skinLines(report, units),
    ...limitLines(report.limits, units),
    ...balanceLines(report),
    'What it rests on',
    ...report.assumptions.flatMap(({ topic, text, source }) =>
      wrapped(plainLine(`${topic}: ${text} ${sourced(source)}`), WIDTH, '  - '),
    ),
    '',
    ...report.cautions.flatMap((caution) => wrapped(plainLine(caution), WIDTH, '  ! ')),
    ...wrapped('Local codes and licensed practice govern; the software never signs.', WIDTH),
  ];
  return `${lines.join('\n')}\n`;
}

const start = (title: string): TextColumn => ({ title, align: 'start' });
const end = (title: string): TextColumn => ({ title, align: 'end' });
const percent = (share: number): string => String(Number((100 * share).toPrecision(2)));
const degrees = (celsius: number, units: UnitSystem): string => formatStated(celsius, 'degC', units);
const time = (seconds: number): string => formatAmount(seconds, 'time', 'metric');
const sourced = ({ text, provenance }: Source): string =>
  text.includes(provenance) ? `(${text})` : `(${text}; ${provenance})`;

function whereText(report: Told, units: UnitSystem): string {
  const place = formatStated(report.station_mm, 'mm', units, 'length');
  if (report.quality === 'quick') return `Section ${place} from the start of the seam; a quick look.`;
  const error = report.grid_error_percent;
  return (
    `Section ${place} from the start of the seam; refined` +
    `${error === null ? '' : `, peak temperatures within about ${error.toPrecision(2)} % of the grid's own limit`}.`
  );
}

/** Energy per length in the reader's units. */
function perLength(kilojoules: number, units: UnitSystem): string {
  return units === 'inch' ? `${(kilojoules * 25.4).toFixed(1)} kJ/in` : `${kilojoules.toFixed(2)} kJ/mm`;
}

/** A band with its unit once; one value where both ends read the same. */
function band({ least, most }: HeatRange, text: (value: number) => string): string {
  const [from, to] = least <= most ? [text(least), text(most)] : [text(most), text(least)];
  if (from === to) return to;
  const unit = / [^\s\d]+$/u.exec(to)?.[0] ?? '';
  return `${unit !== '' && from.endsWith(unit) ? from.slice(0, -unit.length) : from} to ${to}`;
}

function passLines({ passes }: Told, units: UnitSystem): string[] {
  return [
    'Passes as the plate feels them here',
    ...textTable(
      [
        end('Pass'),
        end('Arrives'),
        end('Arc'),
        end('With the melt'),
        end('Kept'),
        end('Before'),
        end('Waits'),
      ],
      passes.map((pass) => [
        String(pass.number),
        time(pass.at_station_s.middle),
        perLength(pass.gross_kJ_per_mm, units),
        perLength(pass.with_melt_kJ_per_mm, units),
        band(pass.kept_kJ_per_mm, (value) => perLength(value, units)),
        band(pass.before_degC, (value) => degrees(value, units)),
        pass.wait_s.most < 0.5 ? '–' : band(pass.wait_s, time),
      ]),
      WIDTH,
    ),
    '',
  ];
}

function fieldLines(report: Told, units: UnitSystem): string[] {
  const unit = fineUnit(units);
  const length = (millimetres: number): string => fineStated(millimetres, units);
  const seconds = (value: number): string => value.toPrecision(2);
  const row = (
    what: string,
    range: HeatRange | null,
    text: (value: number) => string,
    unitText: string,
  ): string[][] =>
    range === null ? [] : [[what, text(range.least), text(range.middle), text(range.most), unitText]];
  const { transformation } = report;
  const [ac1, ac3] = [transformation?.ac1_degC, transformation?.ac3_degC].map((value) =>
    value === undefined ? '' : ` (${degrees(value, units)})`,
  );
  return [
    'What it does to the plate',
    ...textTable(
      [start('What'), end('Least'), end('Middle'), end('Most'), start('')],
      [
        ...row('Back face, highest', report.back_face_degC, (value) => degrees(value, units), ''),
        ...row(`Width past Ac1${ac1}, both sides`, report.width_past_ac1_mm, length, unit),
        ...row(`Width past Ac3${ac3}, both sides`, report.width_past_ac3_mm, length, unit),
        ...row('Depth past Ac1 below the floor', report.depth_past_ac1_mm, length, unit),
        ...row("t8/5 at the groove's surface", report.t85_s, seconds, 's'),
      ],
      WIDTH,
    ),
    ...(transformation === null
      ? []
      : wrapped(`Ac1 and Ac3: ${sourced(transformation.source)}.`, WIDTH, '  ')),
    '',
  ];
}

function endLines({ ends }: Told, units: UnitSystem): string[] {
  if (ends === undefined) return [];
  const length = (value: number | null): string => (value === null ? '–' : formatStated(value, 'mm', units));
  const seconds = (value: number): string => value.toPrecision(2);
  const { t85_s: cooling, section_t85_s: plain } = ends;
  return [
    ends.whole_seam
      ? 'The whole seam, with heat that flows along it'
      : `The end of the seam, over ${length(ends.window_mm)}, with heat that flows along it`,
    ...textTable(
      [start('What'), end('There'), end('In the section')],
      [
        [
          'Back face, highest',
          degrees(ends.back_face_degC, units),
          degrees(ends.section_back_face_degC, units),
        ],
        ['Width past Ac1, greatest', length(ends.width_past_ac1_mm), length(ends.section_width_past_ac1_mm)],
        [
          't8/5',
          cooling === null ? '–' : `${seconds(cooling.least)} to ${seconds(cooling.most)} s`,
          plain === null ? '–' : `${seconds(plain)} s`,
        ],
      ],
      WIDTH,
    ),
    ...wrapped(plainLine(ends.note), WIDTH, '  '),
    '',
  ];
}

function coolingLines({ cooling_formulas, cooling_remarks }: Told): string[] {
  if (cooling_formulas.length === 0) return [];
  return [
    't8/5 by formula, beside the field’s own',
    ...textTable(
      [start('Formula'), end('t8/5'), start('Range')],
      cooling_formulas.map(({ name, t85_s, inside_range }) => [
        plainLine(name),
        t85_s === null ? 'does not apply' : band(t85_s, (value) => `${value.toPrecision(2)} s`),
        inside_range ? 'inside' : 'outside',
      ]),
      WIDTH,
    ),
    ...[
      ...cooling_formulas.map(({ name, note, source }) => `${name}: ${note} ${sourced(source)}`),
      ...cooling_remarks,
    ].flatMap((text) => wrapped(plainLine(text), WIDTH, '  - ')),
    '',
  ];
}

function hardnessLines({ hardness, hardness_missing }: Told): string[] {
  if (hardness === null) {
    return hardness_missing === null
      ? []
      : [...wrapped(`Hardness: ${plainLine(hardness_missing)}`, WIDTH), ''];
  }
  return [
    `Hardness at the groove's surface: ${hardness.least_HV.toFixed(0)} to ${hardness.most_HV.toFixed(0)} HV; of the skin if it is left on ${hardness.skin_HV.toFixed(0)} HV`,
    ...hardness.formulas.flatMap(({ name, value_HV, source }) =>
      wrapped(
        plainLine(`${name}: ${band(value_HV, (value) => `${value.toFixed(0)} HV`)} ${sourced(source)}`),
        WIDTH,
        '  - ',
      ),
    ),
    ...wrapped(plainLine(hardness.note), WIDTH, '  '),
    '',
  ];
}

function preheatLines({ preheat, preheat_missing }: Told, units: UnitSystem): string[] {
  if (preheat === null) {
    return preheat_missing === null ? [] : [...wrapped(`Preheat: ${plainLine(preheat_missing)}`, WIDTH), ''];
  }
  const { gouging } = preheat;
  return [
    'Preheat for the re-weld, methods side by side',
    ...preheat.methods.flatMap((method) => methodLines(method, units)),
    ...preheat.differences.flatMap((text) => wrapped(plainLine(text), WIDTH, '  - ')),
    ...wrapped(
      plainLine(
        `For gouging: ${gouging.known ? degrees(gouging.temperature_degC, units) : 'not known'}${gouging.stated ? ', as the job states' : ''} ${sourced(gouging.source)}`,
      ),
      WIDTH,
      '  ',
    ),
    '',
  ];
}

function methodLines(method: Written<PreheatMethod>, units: UnitSystem): string[] {
  const { temperature_degC: temperature, inside_range, source } = method;
  const asked = temperature === null ? 'cannot be used' : degrees(temperature, units);
  return [
    ...wrapped(
      plainLine(
        `${method.method}: ${asked}${inside_range ? '' : ', outside what it is for'} ${sourced(source)}`,
      ),
      WIDTH,
      '  ',
    ),
    ...(method.parts.length === 0
      ? []
      : wrapped(
          plainLine(
            method.parts
              .map(({ name, value, unit }) => `${name} ${formatStated(value, unit, units)}`)
              .join(', '),
          ),
          WIDTH,
          '    ',
        )),
    ...method.remarks.flatMap((remark) => wrapped(plainLine(remark), WIDTH, '    ')),
  ];
}

function skinLines(report: Told, units: UnitSystem): string[] {
  const { allowance_mm: allowance, source } = report.skin;
  return [
    'Carburised skin',
    ...wrapped(
      plainLine(
        `Grind ${formatStated(allowance, 'mm', units)} off all round ${sourced(source)}. ${skinText(report, units)}`,
      ),
      WIDTH,
      '  ',
    ),
    '',
  ];
}

function balanceLines({ balance }: Told): string[] {
  const per = (value: number): string => `${value.toFixed(0).replace(/^-0$/u, '0')} kJ/m`;
  // a plate that was preheated can lose more than it is given
  const stored = (value: number): string =>
    value >= 0 ? `${per(value)} still in the section` : `${per(-value)} of it out of the preheat`;
  return [
    ...wrapped(
      `Energy: ${per(balance.given_kJ_per_m)} given, ${per(balance.cut_out_kJ_per_m)} cut out with hot metal, ` +
        `${per(balance.lost_kJ_per_m)} lost at the faces, ${stored(balance.stored_kJ_per_m)}; ` +
        `${balanceWords(balance.error)}.`,
      WIDTH,
    ),
    '',
  ];
}
