import type { QuantityKind } from './quantity-kind.ts';

/**
 * What an amount measures and how people read it: a kind that documents may state, or one that only results have.
 * `bore` is a length as hoses are sold, `depth` one of the groove as it is told, `reading` one as a gauge shows it, `spread` how far
 * readings lie apart, `length` one as a tape or a size is read, `seam_place` where something lies along a seam.
 */
export type AmountKind =
  | QuantityKind
  | 'bore'
  | 'density'
  | 'depth'
  | 'energy'
  | 'heat_per_length'
  | 'mass'
  | 'reading'
  | 'room_volume'
  | 'seam_place'
  | 'sound'
  | 'spread'
  | 'temperature_difference'
  | 'ventilation';

/** An amount in SI with what it measures, to be written when the reader's units are known. */
export interface Amount {
  /** In the SI unit of its kind [SI unit of the kind]. */
  readonly value: number;
  readonly kind: AmountKind;
  /** What it is held against: written with figures enough to tell the two apart [SI unit of the kind]. */
  readonly beside?: number;
  /** The side to which it is rounded where it bounds what may be: entered as it reads, it lies inside. */
  readonly bound?: 'least' | 'most';
  /** Whether a bound is told as a shop reads it off, a length in inches in fractions. */
  readonly readOff?: true;
  /** The scale it is read on, whatever the reader's units. */
  readonly scale?: {
    readonly unit: string;
    /** Decimals that the reading has [-]. */
    readonly decimals: number;
  };
}

/**
 * An amount for a sentence.
 *
 * @param value - in the SI unit of its kind [SI unit of the kind], any finite number
 * @param kind - what it measures [text], one of the AmountKind names
 * @returns the amount [record]
 * @source none: bookkeeping
 * @example
 * amountOf(0.5, 'length') // => {"value":0.5,"kind":"length"}
 */
export function amountOf(value: number, kind: AmountKind): Amount {
  return { value, kind };
}

/**
 * The least or the greatest amount that does, for a sentence: written so that what is read off it does as well.
 *
 * @param value - in the SI unit of its kind [SI unit of the kind], any finite number
 * @param kind - what it measures [text], one of the QuantityKind names
 * @param bound - which end of what does it is [text], least or most
 * @returns the amount [record]
 * @source none: bookkeeping
 * @example
 * sentenceText(say`up to ${boundOf(0.0222, 'length', 'least')} wide`, 'inch') // => "up to 0.8741 in wide"
 */
export function boundOf(value: number, kind: QuantityKind, bound: 'least' | 'most'): Amount {
  return { value, kind, bound };
}

/**
 * What would do, for a sentence that proposes it: as boundOf, but a length in inches in fractions of a tape.
 *
 * @param value - in the SI unit of its kind [SI unit of the kind], any finite number
 * @param kind - what it measures [text], one of the QuantityKind names
 * @param bound - which end of what does it is [text], least or most
 * @returns the amount [record]
 * @source none: bookkeeping
 * @example
 * sentenceText(say`up to ${readOffOf(0.0222, 'length', 'least')} wide`, 'inch') // => "up to 7/8 in wide"
 */
export function readOffOf(value: number, kind: QuantityKind, bound: 'least' | 'most'): Amount {
  return { value, kind, bound, readOff: true };
}
