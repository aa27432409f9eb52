import type { QuantityKind } from './quantity-kind.ts';

/**
 * What an amount measures and how people read it: a kind that documents may state, or one that only results have.
 * `bore` is a length as hoses are sold, `depth` one as a gauge reads it, `length` one as a tape or a size is read.
 */
export type AmountKind =
  | QuantityKind
  | 'bore'
  | 'depth'
  | 'energy'
  | 'heat_per_length'
  | 'mass'
  | 'room_volume'
  | 'sound'
  | 'temperature_difference'
  | 'ventilation';

/** An amount in SI with what it measures, to be written when the reader's units are known. */
export interface Amount {
  /** In the SI unit of its kind [SI unit of the kind]. */
  readonly value: number;
  readonly kind: AmountKind;
  /** What it is held against: written with figures enough to tell the two apart [SI unit of the kind]. */
  readonly beside?: number;
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
