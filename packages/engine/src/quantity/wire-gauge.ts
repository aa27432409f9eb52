import type { Outcome } from '../issue/index.ts';
import { refuse } from './amount-issue.ts';
import { INCH } from './si.ts';

/**
 * Copper area of an American wire gauge size [m2], by the definition of the gauge: 36 AWG is 0.005 in across,
 * 4/0 is 0.46 in, 39 equal ratios between (ASTM B258). Sizes above 1 are written 1/0 to 4/0.
 */
function areaOfGauge(size: string): number | undefined {
  const oughts = /^([1-4]) ?\/ ?0$/.exec(size);
  const plain = /^\d{1,2}$/.test(size) ? Number(size) : undefined;
  const gauge = oughts ? 1 - Number(oughts[1]) : plain;
  if (gauge === undefined || gauge > 40) return undefined;
  return areaOf(gauge);
}

/** Area of the wire of a gauge, with 0 for 1/0 and -3 for 4/0 [m2]. */
function areaOf(gauge: number): number {
  const diameter = 0.005 * INCH * 92 ** ((36 - gauge) / 39);
  return (Math.PI / 4) * diameter ** 2;
}

/** How far an area may be off a gauge's to be called by it [-]: sizes of both systems lie further apart. */
const SAME = 0.01;

/** Name of the wire gauge that has an area; undefined where none has. */
export function gaugeName(area: number): string | undefined {
  const gauge = Math.round(
    36 - 39 * (Math.log(Math.sqrt((4 * area) / Math.PI) / (0.005 * INCH)) / Math.log(92)),
  );
  if (gauge < -3 || gauge > 40 || Math.abs(area / areaOf(gauge) - 1) > SAME) return undefined;
  return gauge > 0 ? `${gauge} AWG` : `${1 - gauge}/0 AWG`;
}

/** Reads `4/0 AWG`, `2 AWG` or `AWG 2`; undefined for a text that names no gauge. */
export function readWireGauge(text: string, plain: string): Outcome<number> | undefined {
  const size = /^(?:AWG ?#?([\d/ ]+)|#?([\d/ ]+?) ?AWG)$/i.exec(plain);
  if (!size) return undefined;
  const value = areaOfGauge((size[1] ?? size[2] ?? '').trim());
  if (value !== undefined) return { ok: true, value };
  const message = `"${text}" is not a wire gauge: sizes run from 4/0 AWG to 40 AWG.`;
  return refuse('AMOUNT_RANGE', text, 'area', message, '4/0 AWG');
}
