import { type ColumnQuantity, KIND_OF_QUANTITY, readHeading } from './column-name.ts';
import { type ColumnUnit, readColumnUnit } from './column-unit.ts';
import type { GivenClock } from './given-clock.ts';
import type { Layout } from './guess-layout.ts';
import { type DateOrder, guessMoment, type MomentParts } from './moment-cell.ts';
import { type NumberMarks, readNumberCell } from './number-cell.ts';

/** What a column of a table is. */
export interface TableColumn {
  /** As the header has it; empty where there is none. */
  readonly name: string;
  /** What it holds that Furrow has a use for; undefined where nothing, or where it cannot be told. */
  readonly quantity: ColumnQuantity | undefined;
  /** Unit of its numbers; undefined for moments, and where it cannot be told. */
  readonly unit: ColumnUnit | undefined;
  readonly holds: 'number' | 'moment' | 'text';
  /** How its moments are written. */
  readonly moment?:
    | {
        readonly parts: MomentParts;
        readonly order: DateOrder;
        /** Whether a zone stands behind its times. */
        readonly zoned: boolean;
      }
    | undefined;
  /** Why it was taken for what it is, in words. */
  readonly says: string;
  /** Whether a person should look at it; the words say what at. */
  readonly asks: boolean;
}

/** What a person says of a column. */
export interface GivenColumn {
  /** Its name in the header. */
  readonly name?: string | undefined;
  /** Its place, from 1; needed where it has no name [-]. */
  readonly number?: number | undefined;
  readonly quantity?: ColumnQuantity | 'none' | undefined;
  /** Its unit as written, such as `0.1 V`. */
  readonly unit?: string | undefined;
}

/** Where the middle of what a rig shows lies in each unit, for a column whose unit is not stated (common practice, no source). */
const USUAL: Partial<
  Record<ColumnQuantity, readonly (readonly [unit: string, least: number, most: number])[]>
> = {
  voltage: [['V', 12, 100]],
  current: [
    ['A', 60, 4000],
    ['kA', 0.06, 4],
  ],
  air_pressure: [
    ['bar', 2, 14],
    ['psi', 35, 200],
    ['kPa', 250, 1400],
    ['MPa', 0.2, 1.4],
  ],
};

interface Seen {
  readonly cells: readonly string[];
  readonly values: readonly number[];
}

function seenIn(layout: Layout, index: number, marks: NumberMarks): Seen {
  const cells = layout.data.map(({ cells: row }) => row[index]!.trim()).filter((cell) => cell !== '');
  const values = cells.flatMap((cell) => {
    const reading = readNumberCell(cell, marks);
    return reading.kind === 'number' ? [reading.value] : [];
  });
  return { cells, values };
}

/** Middle of the values that are not near zero, as arc-off rows are. */
function middle(values: readonly number[]): number {
  const sizes = values.map(Math.abs).sort((a, b) => a - b);
  const largest = sizes[Math.floor(0.98 * (sizes.length - 1))] ?? 0;
  const on = sizes.filter((size) => size > 0.2 * largest);
  return on[Math.floor(on.length / 2)] ?? 0;
}

const SECONDS: ColumnUnit = { kind: 'time', name: 's', top: 1, bottom: 1, offset: 0 };

/** Unit of a clock of plain numbers, by their size and their steps. */
function clockUnit(values: readonly number[]): { unit: ColumnUnit; says: string; sure: boolean } {
  const size = Math.abs(values[values.length - 1] ?? 0);
  const unit = (text: string): ColumnUnit => readColumnUnit(text)!;
  for (const [text, seconds] of [
    ['s', 1],
    ['ms', 1e3],
    ['us', 1e6],
    ['ns', 1e9],
  ] as const) {
    // from 2001 to 2065
    if (size > 9.8e8 * seconds && size < 3e9 * seconds)
      return { unit: unit(text), says: `seconds since 1970 in ${text}, by their size`, sure: true };
  }
  const steps = values
    .slice(1)
    .map((value, index) => value - values[index]!)
    .filter((step) => step > 0)
    .sort((a, b) => a - b);
  const step = steps[Math.floor(steps.length / 2)] ?? 0;
  const fractions = values.some((value) => !Number.isInteger(value));
  if (size > 3e4 && size < 7e4 && fractions && step < 0.01)
    return { unit: unit('d'), says: 'days of a spreadsheet, by their size', sure: true };
  if (!fractions && step >= 10)
    return {
      unit: unit('ms'),
      says: `unit not stated, ms taken: whole numbers that rise by ${step}`,
      sure: false,
    };
  return {
    unit: SECONDS,
    says: `unit not stated, s taken: they rise by ${Number(step.toPrecision(6))}`,
    sure: false,
  };
}

interface Draft extends TableColumn {
  readonly weight: number;
}

function draftOf(layout: Layout, index: number, marks: NumberMarks, dateOrder: DateOrder | undefined): Draft {
  const heading = readHeading(layout.names[index]!, layout.units[index]);
  const { cells, values } = seenIn(layout, index, marks);
  const { name, weight } = heading;
  const base = { name, weight, says: heading.says, asks: false };
  const moment = values.length < cells.length / 2 ? guessMoment(cells.slice(-60), dateOrder) : undefined;
  if (moment) {
    const { parts, order, zoned, sure } = moment;
    const what = parts === 'both' ? 'date and time' : parts === 'date' ? 'dates' : 'times of day';
    const day =
      parts === 'time' || sure ? '' : `, ${order === 'mdy' ? 'month before day' : 'day before month'} taken`;
    return {
      ...base,
      quantity: parts === 'date' ? 'date' : 'time',
      unit: undefined,
      holds: 'moment',
      moment: { parts, order, zoned },
      // when something else happened, such as the arrival of a reading, is the clock only where there is no other
      weight: heading.quantity === 'time' || heading.quantity === 'date' || name === '' ? 1 : 0.4,
      says: `${what} such as ${cells[0]}${day}`,
      asks: parts !== 'time' && !sure,
    };
  }
  if (
    cells.length > 0 &&
    values.length < cells.length / 2 &&
    !cells.every((cell) => readNumberCell(cell, marks).kind !== 'unreadable')
  ) {
    return {
      ...base,
      quantity: undefined,
      unit: undefined,
      holds: 'text',
      weight: 0,
      says: `text such as "${cells[0]!.slice(0, 30)}"`,
    };
  }
  const { quantity, unit } = heading;
  if (quantity === 'date')
    return { ...base, quantity: undefined, unit: undefined, holds: 'number', weight: 0 };
  if (quantity === undefined || unit !== undefined) return { ...base, quantity, unit, holds: 'number' };
  if (quantity === 'time') {
    const clock = clockUnit(values);
    return {
      ...base,
      quantity,
      unit: clock.unit,
      holds: 'number',
      says: `${heading.says}: ${clock.says}`,
      asks: !clock.sure,
    };
  }
  const usual = USUAL[quantity];
  const size = middle(values);
  const fits = (usual ?? []).filter(([, least, most]) => size >= least && size <= most);
  if (fits.length === 1) {
    const [text] = fits[0]!;
    return {
      ...base,
      quantity,
      unit: readColumnUnit(text)!,
      holds: 'number',
      says: `${heading.says}; unit not stated, ${text} taken as values about ${Number(size.toPrecision(3))} can only be that`,
    };
  }
  return {
    ...base,
    quantity,
    unit: undefined,
    holds: 'number',
    says: `${heading.says}; unit not stated: which is it?`,
    asks: true,
  };
}

/** A first column of numbers that rise by even steps is a clock, whatever it is called. */
function looksLikeClock(values: readonly number[]): boolean {
  if (values.length < 4) return false;
  const steps = values.slice(1).map((value, index) => value - values[index]!);
  const sorted = [...steps].sort((a, b) => a - b);
  const usual = sorted[Math.floor(sorted.length / 2)]!;
  return (
    usual > 0 && steps.filter((step) => Math.abs(step - usual) <= 0.5 * usual).length >= 0.8 * steps.length
  );
}

function corrected(column: Draft, index: number, given: readonly GivenColumn[]): Draft {
  const by = given.find(({ number, name }) =>
    number !== undefined ? number === index + 1 : name === column.name && name !== '',
  );
  if (!by) return column;
  const quantity = by.quantity === 'none' ? undefined : (by.quantity ?? column.quantity);
  const unit = by.unit === undefined ? column.unit : readColumnUnit(by.unit);
  const kind = quantity === undefined ? undefined : KIND_OF_QUANTITY[quantity];
  const agrees = column.holds !== 'number' || unit === undefined || unit.kind === kind;
  return {
    ...column,
    quantity,
    unit: agrees ? unit : undefined,
    weight: 2,
    says: agrees ? 'as given' : `given as ${quantity}, but ${unit!.name} is no unit of it`,
    asks: !agrees || (column.holds === 'number' && quantity !== undefined && unit === undefined),
  };
}

/** What the columns of a table are, by their header, their unit row and their numbers; each quantity once. */
export function guessColumns(
  layout: Layout,
  marks: NumberMarks,
  given: {
    readonly columns?: readonly GivenColumn[] | undefined;
    readonly clock?: GivenClock | undefined;
  } = {},
): readonly TableColumn[] {
  const { columns = [], clock } = given;
  const drafts = layout.names.map((_, index) =>
    corrected(draftOf(layout, index, marks, clock?.dateOrder), index, columns),
  );
  const timed = drafts.some(({ quantity }) => quantity === 'time' || quantity === 'date');
  if (!timed) {
    const first = drafts.findIndex(({ holds, weight }) => holds === 'number' && weight < 2);
    const values = first < 0 ? [] : seenIn(layout, first, marks).values;
    const column = drafts[first];
    if (column && column.quantity === undefined && column.unit === undefined && looksLikeClock(values)) {
      const clock = clockUnit(values);
      drafts[first] = {
        ...column,
        quantity: 'time',
        unit: clock.unit,
        weight: 0.3,
        says: `it rises by even steps, so that it is taken for the clock; ${clock.says}`,
        asks: true,
      };
    }
  }
  return drafts.map(({ weight, ...column }, index) => {
    if (column.quantity === undefined) return column;
    const rivals = drafts.filter(
      ({ quantity, holds }, other) =>
        other !== index && quantity === column.quantity && usable(holds, drafts[other]!),
    );
    const better = rivals.find(
      (rival) => rival.weight > weight || (rival.weight === weight && drafts.indexOf(rival) < index),
    );
    if (!better) return column;
    return {
      ...column,
      quantity: undefined,
      says: `${column.says}; not used, as "${better.name}" is the ${column.quantity}`,
    };
  });
}

/** Whether numbers of the column can be brought to SI. */
function usable(holds: TableColumn['holds'], column: TableColumn): boolean {
  return holds === 'moment' || (holds === 'number' && column.unit !== undefined);
}
