import { type MetalFamily, metalOf } from '../material/index.ts';
import type { Coating } from './substance.ts';

/** Kinds of ventilation that the matrix knows. */
export type MatrixVentilation = 'natural' | 'mechanical' | 'capture at the source';

type Column = 'low' | 'high' | 'coated';
type Cell = Readonly<Record<'short' | 'long', MatrixVentilation>>;

const TABLE: Readonly<Record<'fixed' | 'changing', Readonly<Record<Column, Cell>>>> = {
  fixed: {
    low: { short: 'mechanical', long: 'capture at the source' },
    high: { short: 'capture at the source', long: 'capture at the source' },
    coated: { short: 'mechanical', long: 'capture at the source' },
  },
  changing: {
    low: { short: 'natural', long: 'mechanical' },
    high: { short: 'mechanical', long: 'capture at the source' },
    coated: { short: 'natural', long: 'mechanical' },
  },
};

/**
 * Ventilation that the German matrix asks for when metal is arc-air gouged.
 *
 * By workplace, duration and metal: un- or low-alloy, high-alloy, coated. High alloy counts before a coating. Lead and
 * cadmium are not covered: the line for coated metal would let natural ventilation do.
 *
 * @param workplace - fixed or changing place [text], or null where it is not stated
 * @param duration - short or long [text], or null where it is not stated
 * @param family - family of the metal [text], one of the MetalFamily names
 * @param coating - coating of the plate [text], one of the Coating names, or null where it is not known
 * @returns kind of ventilation, or null where the matrix does not cover the case [text]
 * @source BGR 500 chapter 2.26, table 2 (confirmed); TRGS 528 is newer
 * @example
 * matrixVentilation('changing', 'long', 'carbon_steel', 'none') // => "mechanical"
 * matrixVentilation('changing', 'short', 'carbon_steel', 'lead') // => null
 */
export function matrixVentilation(
  workplace: 'fixed' | 'changing' | null,
  duration: 'short' | 'long' | null,
  family: MetalFamily,
  coating: Coating,
): MatrixVentilation | null {
  const alloy = metalOf(family).ventilation;
  if (workplace === null || duration === null || alloy === null) return null;
  if (coating === 'lead' || coating === 'cadmium') return null;
  if (alloy === 'low' && coating === null) return null;
  const column = alloy === 'low' && coating !== 'none' ? 'coated' : alloy;
  return TABLE[workplace][column][duration];
}
