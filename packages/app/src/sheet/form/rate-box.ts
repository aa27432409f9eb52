import { type JobField, rateOf, type UnitSystem } from '@furrow/engine';

/** A number whose unit ends the name of its field, filled in by a reader who has another unit for it. */
export interface RateBox {
  /** The number of the file as the reader has it. */
  readonly shown: (stated: string) => string;
  /** The number of the file for one that the reader typed. */
  readonly stated: (typed: number) => number;
  /** A number of the file with the unit that the file has it in. */
  readonly inFile: (stated: string) => string | undefined;
}

/** Figures in which a number is shown, and in which what was typed goes into the file [-]. */
const FIGURES = { shown: 3, stated: 6 } as const;

/** How the number of a field is filled in; undefined where it is in the unit of the file, or has none. */
export function rateBox({ path }: JobField, units: UnitSystem): RateBox | undefined {
  const rate = rateOf(path, units);
  if (rate === undefined || rate.unit === rate.stated) return undefined;
  const isNumber = (text: string): boolean => text.trim() !== '' && Number.isFinite(Number(text));
  return {
    shown: (stated) =>
      isNumber(stated) ? String(Number(rate.of(Number(stated)).toPrecision(FIGURES.shown))) : stated,
    stated: (typed) => Number((typed / rate.of(1)).toPrecision(FIGURES.stated)),
    inFile: (stated) =>
      isNumber(stated) && Number(stated) !== 0 ? `${Number(stated)} ${rate.stated}` : undefined,
  };
}
