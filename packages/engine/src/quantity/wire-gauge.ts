import type { Outcome } from '../issue/index.ts';
import { refuse } from './amount-issue.ts';

/**
 * Copper area of an American wire gauge size [m2], by the definition of the gauge: 36 AWG is 0.005 in across,
 * 4/0 is 0.46 in, 39 equal ratios between (ASTM B258). Sizes above 1 are written 1/0 to 4/0.
 */
function areaOfGauge(size: string): number | undefined {
  const oughts = /^([1-4]) ?\/ ?0$/.exec(size);
  const plain = /^\d{1,2}$/.test(size) ? Number(size) : undefined;
  const gauge = oughts ? 1 - Number(oughts[1]) : plain;
  if (gauge === undefined || gauge > 40) return undefined;
  const diameter = 0.005 * 0.0254 * 92 ** ((36 - gauge) / 39);
  return (Math.PI / 4) * diameter ** 2;
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
