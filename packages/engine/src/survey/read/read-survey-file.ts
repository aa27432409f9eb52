import {
  type Choice,
  type ColumnQuantity,
  type GivenColumn,
  type GivenReading,
  guessTable,
  markLength,
  type TableBatch,
  type TableEnd,
  TableReader,
  type TableReading,
  textOf,
} from '../../delimited/index.ts';
import type { Issue, Outcome } from '../../issue/index.ts';
import { INCH, MM } from '../../quantity/index.ts';
import { type FloorMap, unrollCloud } from '../cloud/unroll-cloud.ts';
import { readReadings } from '../record/read-readings.ts';
import type { Readings } from '../record/readings-schema.ts';
import type { SectionScan } from '../section/scan.ts';
import { isGrid, readGrid } from './read-grid.ts';
import { type CloudPoints, isPly, readPly } from './read-ply.ts';

/** What was gauged by hand at one place; SI. */
export interface HandReading {
  /** Place along the seam [m]. */
  readonly at: number;
  /** Depth [m]. */
  readonly depth?: number;
  /** Width at the surface [m]. */
  readonly width?: number;
  /** Root radius [m]. */
  readonly rootRadius?: number;
  /** Remark. */
  readonly note?: string;
  /** Recuts done before it was measured; left out: none [-]. */
  readonly afterRecut?: number;
  /** Track across the groove, from 1 [-]. */
  readonly track?: number;
  /** Pass after which it was gauged; left out: all were done [-]. */
  readonly afterPass?: number;
  /** Row of the file, from 1 [-]. */
  readonly row: number;
}

/** What a person says of how a file is read; the rest is found. */
export interface GivenSurvey extends GivenReading {
  /** Unit of lengths whose unit the file does not state. */
  readonly unit?: LengthUnit | undefined;
  /** What the second coordinate of a scan is: heights upwards, ranges from the sensor, or depths downwards. */
  readonly vertical?: 'height' | 'range' | undefined;
  /** Place along the seam of a single scan [m]. */
  readonly station?: number | undefined;
}

/** Units in which a length without a unit may be. */
export type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'um';

/** One file as it was read. */
export interface SurveyFile {
  readonly name: string;
  readonly kind: 'sections' | 'stations' | 'cloud';
  readonly sections: readonly SectionScan[];
  readonly stations: readonly HandReading[];
  /** Rows or points read [-]. */
  readonly rows: number;
  /** How it was read: each choice with its reason. */
  readonly choices: readonly SurveyChoice[];
  /** The floor unrolled; left out for a file that is no cloud. */
  readonly floor?: FloorMap;
  /** What became of the table; left out for files that are none. */
  readonly table?: TableEnd;
  /** The whole of it, where it is a readings file. */
  readonly record?: Readings;
}

/** One choice of how a file is read. */
export interface SurveyChoice {
  readonly about: Choice['about'] | 'kind' | 'unit' | 'vertical' | 'station' | 'format';
  readonly says: string;
  /** False where a person should look at it. */
  readonly sure: boolean;
}

const METRES: Readonly<Record<LengthUnit, number>> = { um: 1e-6, mm: MM, cm: 1e-2, m: 1, in: INCH };
/** Bytes by which a table is judged. */
const HEAD = 1 << 18;
/** Points of one place along the seam from which they are a section [-]. */
const SECTION_LEAST = 20;

function refused(message: string, accepted: string): Outcome<never> {
  return { ok: false, issues: [{ code: 'SURVEY_NOT_READABLE', message, path: '', accepted }] };
}

/**
 * Reads one file of what was measured: a gauge table, scanned sections, a cloud as XYZ or PLY, a height map as an
 * ASCII grid, or a readings file.
 *
 * @param name - name of the file, from which the place of a scan is taken where it tells it [text], any
 * @param bytes - its content [bytes], any
 * @param given - what a person says of it [record], any part
 * @param progress - called with the share of a cloud that is unrolled [-], 0 to 1; left out: nobody is told
 * @returns what was read and how, or what is wrong [record]
 * @source none: bookkeeping
 * @example
 * const bytes = Uint8Array.from('station (mm);depth (mm)\n100;12,4\n200;12,1\n', (c) => c.charCodeAt(0));
 * readSurveyFile('gauge.csv', bytes).value.stations[0].depth // => 0.0124
 */
export function readSurveyFile(
  name: string,
  bytes: Uint8Array,
  given: GivenSurvey = {},
  progress?: (share: number) => void,
): Outcome<SurveyFile> {
  if (isPly(bytes)) {
    const outcome = readPly(bytes);
    return outcome.ok
      ? cloudFile(
          name,
          outcome.value,
          given,
          [{ about: 'format', says: 'a PLY file', sure: true }],
          {},
          progress,
        )
      : outcome;
  }
  if (isGrid(bytes)) {
    const outcome = readGrid(bytes);
    const about = { about: 'format', says: 'a height map as an ASCII grid', sure: true } as const;
    return outcome.ok ? cloudFile(name, outcome.value, given, [about], {}, progress) : outcome;
  }
  if (isReadingsFile(bytes)) return readingsFile(name, bytes);
  return tableFile(name, bytes, given, progress);
}

/**
 * Whether a file is a readings file, by what it begins with.
 *
 * @param bytes - its content [bytes], any
 * @returns whether it states the version of one near its start [-]
 * @source none: bookkeeping
 * @example
 * isReadingsFile(Uint8Array.from('furrow_readings: 1', (c) => c.charCodeAt(0))) // => true
 */
export function isReadingsFile(bytes: Uint8Array): boolean {
  const head = textOf(bytes, 0, Math.min(bytes.length, 4096), 'windows-1252');
  return /^\s*["']?furrow_readings["']?\s*:/mu.test(head);
}

function readingsFile(name: string, bytes: Uint8Array): Outcome<SurveyFile> {
  const outcome = readReadings(textOf(bytes, markLength('utf-8', bytes), bytes.length, 'utf-8'));
  if (!outcome.ok) return outcome;
  const stations = (outcome.value.readings.stations ?? []).map(
    ({ at, depth, width, root_radius, note, track, after_pass, after_recut }, i): HandReading => ({
      at,
      depth,
      row: i + 1,
      ...(track === undefined ? {} : { track }),
      ...(after_pass === undefined ? {} : { afterPass: after_pass }),
      ...(width === undefined ? {} : { width }),
      ...(root_radius === undefined ? {} : { rootRadius: root_radius }),
      ...(note === undefined ? {} : { note }),
      ...(after_recut === undefined ? {} : { afterRecut: after_recut }),
    }),
  );
  const record = outcome.value.readings;
  return {
    ok: true,
    value: {
      name,
      kind: 'stations',
      sections: [],
      stations,
      rows: stations.length,
      choices: [
        {
          about: 'kind',
          says: `a readings file with ${stations.length === 1 ? 'one station' : `${stations.length} stations`} that ${stations.length === 1 ? 'was' : 'were'} gauged`,
          sure: true,
        },
      ],
      record,
    },
  };
}

function tableFile(
  name: string,
  bytes: Uint8Array,
  given: GivenSurvey,
  progress: ((share: number) => void) | undefined,
): Outcome<SurveyFile> {
  const first = guessTable(headOf(bytes), given);
  if (!first.ok) {
    const [issue] = first.issues as readonly [Issue];
    return {
      ok: false,
      issues: [
        {
          ...issue,
          code: 'SURVEY_NOT_READABLE',
          accepted: 'a gauge table, scanned sections (x and z), points (x, y, z) or a PLY file',
        },
      ],
    };
  }
  const named = nameColumns(first.value, given);
  if (!named.ok) return named;
  const { columns, unstated, vertical } = named.value;
  const reader = new TableReader({ ...given, columns });
  const batches = [...reader.push(bytes)];
  const end = reader.end();
  if (!end.ok) return end;
  batches.push(...end.value.batches);
  const { reading } = end.value.end;
  const ended = { table: end.value.end };
  const { table, choices } = inUnit(joinedOf(batches), unstated, given.unit);
  const told: SurveyChoice[] = [
    ...reading.choices
      .filter(({ about }) => about !== 'column' && about !== 'clock')
      .map(({ about, says, sure }) => ({ about, says, sure })),
    ...reading.columns.flatMap((column) =>
      column.quantity === undefined
        ? []
        : [
            {
              about: 'column' as const,
              says: `${column.name || 'a column'}: ${column.quantity}, ${column.says}`,
              sure: !column.asks || choices.length > 0,
            },
          ],
    ),
    ...choices,
  ];
  const { x, y, z, depth } = table;
  const station = table.station ?? table.position;
  const rows = table.row.length;
  if (depth !== undefined && (station !== undefined || x !== undefined)) {
    const at = station ?? x!;
    const stations = handReadings(table, at, depth);
    if (stations.length === 0)
      return refused(
        'No row of the gauge table has a place and a depth.',
        'a place along the seam and a depth in each row',
      );
    return {
      ok: true,
      value: {
        name,
        kind: 'stations',
        sections: [],
        stations,
        rows,
        choices: [
          ...told,
          { about: 'kind', says: 'a gauge table: a place and a depth in each row', sure: true },
        ],
        ...ended,
      },
    };
  }
  if (z === undefined || (x === undefined && y === undefined)) {
    const names = reading.columns.map((column, i) =>
      column.name === '' ? `column ${i + 1}` : `"${column.name}"`,
    );
    return refused(
      `No columns could be told to be a place and a depth, or the points of a scan. The file has ${names.join(', ')}.`,
      'station and depth, or x and z, or x, y and z, with units',
    );
  }
  const heights = withoutSentinels(z);
  const height = vertical.sign === 1 ? heights : heights.map((value) => -value);
  const along = station ?? (x !== undefined && y !== undefined ? placesAmong(x, y) : undefined);
  if (along === undefined && x !== undefined && y !== undefined)
    return cloudFile(name, { x, y, z: height }, { ...given, unit: 'm' }, told, ended, progress);
  const across = along === x || x === undefined ? y! : x;
  const sections = sectionsOf(table.row, along, across, height, given.station ?? stationOfName(name));
  const choice: SurveyChoice = {
    about: 'kind',
    says:
      sections.length === 1
        ? 'one scanned section'
        : `${sections.length} scanned sections, by their place along the seam`,
    sure: true,
  };
  return {
    ok: true,
    value: {
      name,
      kind: 'sections',
      sections,
      stations: [],
      rows,
      choices: [...told, choice, vertical.choice],
      ...ended,
    },
  };
}

interface NamedColumns {
  readonly columns: readonly GivenColumn[];
  /** Lengths whose unit the file does not state. */
  readonly unstated: readonly ColumnQuantity[];
  readonly vertical: { readonly sign: 1 | -1; readonly choice: SurveyChoice };
}

const LENGTHS: readonly ColumnQuantity[] = ['station', 'position', 'depth', 'width', 'radius', 'x', 'y', 'z'];

/** Names columns without a header, and gives a unit to lengths that have none. */
function nameColumns(reading: TableReading, given: GivenSurvey): Outcome<NamedColumns> {
  const own = [...(given.columns ?? [])];
  const numbers = reading.columns.flatMap((column, i) => (column.holds === 'number' ? [i] : []));
  let quantities = reading.columns.map(({ quantity }) => quantity);
  const bare = reading.columns.every((column) => column.name === '' || /^[-+\d.,eE]+$/u.test(column.name));
  if (bare && own.length === 0) {
    const named: readonly ColumnQuantity[] = numbers.length === 2 ? ['x', 'z'] : ['x', 'y', 'z'];
    if (numbers.length < 2)
      return refused('The file has one column of numbers; a scan has two.', 'x and z, or x, y and z');
    quantities = reading.columns.map((_, i) =>
      numbers.indexOf(i) < 0 ? undefined : named[numbers.indexOf(i)],
    );
  }
  // an upright of another name beside x: height, range, distance
  const upright = reading.columns.findIndex(({ name }) => /range|dist|profile|height|elev/iu.test(name));
  if (
    !quantities.includes('z') &&
    !quantities.includes('depth') &&
    upright >= 0 &&
    quantities[upright] !== 'x'
  )
    quantities = quantities.map((quantity, i) => (i === upright ? 'z' : quantity));
  const unstated = quantities.flatMap((quantity, i) =>
    quantity !== undefined && LENGTHS.includes(quantity) && reading.columns[i]!.unit?.kind !== 'length'
      ? [i]
      : [],
  );
  const columns = quantities.flatMap((quantity, i): GivenColumn[] => {
    const column = reading.columns[i]!;
    if (
      quantity === undefined ||
      own.some((each) => each.number === i + 1 || (each.name !== undefined && each.name === column.name))
    )
      return [];
    const changed = quantity !== column.quantity;
    if (!changed && !unstated.includes(i)) return [];
    return [{ number: i + 1, quantity, ...(unstated.includes(i) ? { unit: given.unit ?? 'mm' } : {}) }];
  });
  const name = reading.columns[quantities.indexOf('z')]?.name ?? '';
  const isRange = given.vertical === 'range' || (given.vertical === undefined && /range|dist/iu.test(name));
  const vertical = {
    sign: isRange ? (-1 as const) : (1 as const),
    choice: {
      about: 'vertical' as const,
      says:
        given.vertical !== undefined
          ? `${given.vertical}, as given`
          : isRange
            ? `ranges from the sensor, by the name "${name}"`
            : 'heights, upwards',
      sure: given.vertical !== undefined || isRange || name !== '',
    },
  };
  return {
    ok: true,
    value: { columns: [...own, ...columns], unstated: unstated.map((i) => quantities[i]!), vertical },
  };
}

/** Gives lengths without a stated unit the one that was named, or the one that their size tells. */
function inUnit(
  table: Joined,
  unstated: readonly ColumnQuantity[],
  given: LengthUnit | undefined,
): { readonly table: Joined; readonly choices: readonly SurveyChoice[] } {
  if (unstated.length === 0) return { table, choices: [] };
  if (given !== undefined)
    return { table, choices: [{ about: 'unit', says: `${given}, as given`, sure: true }] };
  const unit = unitBySize(table);
  const scaled = { ...table };
  for (const quantity of unstated) {
    const values = table[quantity];
    if (values !== undefined) scaled[quantity] = values.map((value) => (value * METRES[unit]) / METRES.mm);
  }
  const says = `no unit is stated: ${unit} taken by the size of the numbers`;
  return { table: scaled, choices: [{ about: 'unit', says, sure: false }] };
}

/** Numbers as written that a unit is told by: a groove is some millimetres deep, its scan some tens wide. */
function unitBySize(table: Joined): LengthUnit {
  const raw = (values: Float64Array): number => spanOf(values) / METRES.mm;
  const most = (values: Float64Array): number =>
    values.reduce((best, value) => Math.max(best, Math.abs(value)), 0) / METRES.mm;
  const by = (size: number, mm: number, inch: number, um: number): LengthUnit =>
    size > um ? 'um' : size > mm ? 'mm' : size > inch ? 'in' : 'm';
  if (table.depth !== undefined) return by(most(table.depth), 2, 0.08, 400);
  if (table.x !== undefined && table.y !== undefined && table.z !== undefined)
    return by(raw(table.z), 2, 0.08, 1000);
  const across = table.x ?? table.y;
  return across === undefined ? 'mm' : by(raw(across), 13, 0.45, 2500);
}

/** Range of values without the outermost hundredth at either end. */
function spanOf(values: Float64Array): number {
  const sorted = values.filter(Number.isFinite).sort();
  const cut = Math.floor(0.01 * sorted.length);
  return sorted.length === 0 ? 0 : sorted[sorted.length - 1 - cut]! - sorted[cut]!;
}

type Joined = { readonly row: Float64Array } & { readonly [Q in ColumnQuantity]?: Float64Array };

function joinedOf(batches: readonly TableBatch[]): Joined {
  const join = (parts: readonly Float64Array[]): Float64Array => {
    const out = new Float64Array(parts.reduce((sum, part) => sum + part.length, 0));
    let at = 0;
    for (const part of parts) {
      out.set(part, at);
      at += part.length;
    }
    return out;
  };
  const out: { row: Float64Array } & { [Q in ColumnQuantity]?: Float64Array } = {
    row: join(batches.map(({ row }) => row)),
  };
  for (const quantity of LENGTHS) {
    const parts = batches.map(({ columns }) => columns[quantity]);
    if (parts.every((part) => part !== undefined) && parts.length > 0)
      out[quantity] = join(parts as Float64Array[]);
  }
  return out;
}

function handReadings(table: Joined, at: Float64Array, depth: Float64Array): HandReading[] {
  const out: HandReading[] = [];
  for (let i = 0; i < at.length; i += 1) {
    if (!Number.isFinite(at[i]!) || !Number.isFinite(depth[i]!)) continue;
    const width = table.width?.[i];
    const radius = table.radius?.[i];
    out.push({
      at: at[i]!,
      depth: depth[i]!,
      row: table.row[i]!,
      ...(width === undefined || !Number.isFinite(width) ? {} : { width }),
      ...(radius === undefined || !Number.isFinite(radius) ? {} : { rootRadius: radius }),
    });
  }
  return out;
}

/** Times that one and the same value far from all others stands before it is a mark for no value [-]. */
const SENTINEL_LEAST = 3;

/** Heights without numbers that stand for no value, such as -999 or 0: one value, often, far from all the others. */
function withoutSentinels(values: Float64Array): Float64Array {
  const sorted = values.filter(Number.isFinite).sort();
  let low = 0;
  let high = sorted.length - 1;
  for (let round = 0; round < 4 && high - low > SECTION_LEAST; round += 1) {
    let up = low;
    while (up < high && sorted[up + 1] === sorted[low]) up += 1;
    let down = high;
    while (down > low && sorted[down - 1] === sorted[high]) down -= 1;
    const lowIsMark =
      up - low + 1 >= SENTINEL_LEAST &&
      sorted[up + 1]! - sorted[low]! > 3 * (sorted[down - 1]! - sorted[up + 1]!);
    const highIsMark =
      high - down + 1 >= SENTINEL_LEAST &&
      sorted[high]! - sorted[down - 1]! > 3 * (sorted[down - 1]! - sorted[up + 1]!);
    if (lowIsMark) low = up + 1;
    if (highIsMark) high = down - 1;
    if (!lowIsMark && !highIsMark) break;
  }
  const [least, most] = [sorted[low]!, sorted[high]!];
  return values.map((value) => (value < least || value > most ? Number.NaN : value));
}

/** Steps of two coordinates that differ by less than this are those of one raster [-]. */
const RASTER = 3;

/**
 * Which of two coordinates is the place of each section along the seam; undefined where the points are no sections but a
 * cloud. Where both take few values the coarser steps along the seam, and a raster of even steps is a cloud.
 */
function placesAmong(x: Float64Array, y: Float64Array): Float64Array | undefined {
  const few = [y, x].flatMap((values) => fewValues(values) ?? []);
  if (few.length < 2) return few[0];
  const [ofY, ofX] = [stepOf(y), stepOf(x)];
  if (Math.max(ofX, ofY) < RASTER * Math.min(ofX, ofY)) return undefined;
  return ofX > ofY ? x : y;
}

/** Mean step between the values that a coordinate takes [m]. */
function stepOf(values: Float64Array): number {
  const taken = Float64Array.from(new Set(values)).filter(Number.isFinite).sort();
  return taken.length < 2 ? Number.POSITIVE_INFINITY : (taken.at(-1)! - taken[0]!) / (taken.length - 1);
}

/** A coordinate that takes few values, each with points enough for a section; undefined where it does not. */
function fewValues(values: Float64Array): Float64Array | undefined {
  const seen = new Set(values);
  return seen.size * SECTION_LEAST <= values.length ? values : undefined;
}

function sectionsOf(
  row: Float64Array,
  along: Float64Array | undefined,
  across: Float64Array,
  height: Float64Array,
  station: number | undefined,
): SectionScan[] {
  if (along === undefined)
    return [{ across, height, rows: row, ...(station === undefined ? {} : { station }) }];
  const of = new Map<number, number[]>();
  along.forEach((place, i) => {
    if (!Number.isFinite(place)) return;
    const rows = of.get(place);
    if (rows === undefined) of.set(place, [i]);
    else rows.push(i);
  });
  return [...of]
    .sort(([a], [b]) => a - b)
    .map(([place, rows]) => ({
      station: place,
      across: Float64Array.from(rows, (i) => across[i]!),
      height: Float64Array.from(rows, (i) => height[i]!),
      rows: Float64Array.from(rows, (i) => row[i]!),
    }));
}

/** The place of a scan by the name of its file, such as section-1200mm.csv [m]. */
function stationOfName(name: string): number | undefined {
  const found = /(\d+(?:\.\d+)?)\s*(mm|cm|m|in)(?![a-z])/iu.exec(name);
  return found === null ? undefined : Number(found[1]) * METRES[found[2]!.toLowerCase() as LengthUnit];
}

function cloudFile(
  name: string,
  points: CloudPoints,
  given: GivenSurvey,
  choices: readonly SurveyChoice[],
  ended: Pick<SurveyFile, 'table'>,
  progress: ((share: number) => void) | undefined,
): Outcome<SurveyFile> {
  const span = extentOf(points.x) + extentOf(points.y);
  const unit = given.unit ?? (span > 8 ? 'mm' : span > 0 ? 'm' : 'mm');
  const scale = METRES[unit];
  const up = given.vertical === 'range' ? -1 : 1;
  const metres = {
    x: scale === 1 ? points.x : points.x.map((value) => value * scale),
    y: scale === 1 ? points.y : points.y.map((value) => value * scale),
    z: points.z.map((value) => value * scale * up),
  };
  const unrolled = unrollCloud(metres, progress === undefined ? {} : { progress });
  if (unrolled === undefined)
    return refused(
      'No groove can be told in the points: too few, or none lie below a plate.',
      'points of a groove and of the plate on both sides of it',
    );
  return {
    ok: true,
    value: {
      name,
      kind: 'cloud',
      sections: unrolled.sections,
      floor: unrolled.map,
      stations: [],
      rows: points.x.length,
      choices: [
        ...choices,
        {
          about: 'kind',
          says: `a cloud of points, cut into ${unrolled.sections.length} sections along its seam`,
          sure: true,
        },
        ...(given.unit === undefined
          ? [
              {
                about: 'unit' as const,
                says: `no unit is stated: ${unit} taken by the size of the cloud`,
                sure: false,
              },
            ]
          : []),
      ],
      ...ended,
    },
  };
}

function extentOf(values: Float64Array): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return high - low;
}

function headOf(bytes: Uint8Array): Uint8Array {
  if (bytes.length <= HEAD) return bytes;
  const end = bytes.lastIndexOf(10, HEAD);
  return bytes.subarray(0, end > 0 ? end + 1 : HEAD);
}
