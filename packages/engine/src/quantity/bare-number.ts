import type { Outcome } from '../issue/index.ts';
import { figures, refuse } from './amount-issue.ts';
import type { QuantityKind } from './quantity-kind.ts';
import type { ReadNumber } from './read-number.ts';

/** Units a number without one is most often meant in. */
const LIKELY_UNITS: Readonly<Record<QuantityKind, readonly [string, ...string[]]>> = {
  length: ['mm', 'in'],
  speed: ['mm/min', 'in/min'],
  pressure: ['bar', 'psi'],
  current: ['A'],
  voltage: ['V'],
  time: ['s', 'min'],
  angle: ['deg'],
  area: ['mm2', 'kcmil'],
  temperature: ['°C', '°F'],
  air_flow: ['L/min', 'scfm'],
  power: ['kW', 'hp'],
  share: ['%'],
  volume: ['L', 'gal'],
  resistance: ['mohm', 'ohm'],
};

function readBareShare(text: string, value: number): Outcome<number> {
  if (value >= 0 && value < 1) return { ok: true, value: value + 0 };
  if (value < 0 || value > 100) {
    const message = `"${text}" is not a share: write it from 0 % to 100 %, or as a decimal from 0 to 1.`;
    return refuse('AMOUNT_RANGE', text, 'share', message, '95 %');
  }
  const percent = `${figures(value)} %`;
  const other = value === 1 ? '100 %' : figures(value / 100);
  const message = `"${text}" is not clear as a share: write "${percent}" or "${other}".`;
  return refuse('AMOUNT_AMBIGUOUS', text, 'share', message, percent);
}

/** A number without a unit: only a decimal share is clear; all else is shown with the units it may have had. */
export function readBareNumber(text: string, reading: ReadNumber, kind: QuantityKind): Outcome<number> {
  if (reading.kind === 'one' && kind === 'share') return readBareShare(text, reading.value);
  const numbers = reading.kind === 'one' ? [text] : reading.values.map((value) => figures(value));
  // nobody writes a fraction of a millimetre
  const likely =
    kind === 'length' && text.includes('/') ? LIKELY_UNITS.length.toReversed() : LIKELY_UNITS[kind];
  const forms = likely.flatMap((unit) => numbers.map((number) => `${number} ${unit}`));
  const also = reading.kind === 'two' ? ', and its comma may mark decimals or thousands' : '';
  const message = `"${text}" has no unit${also}: write ${forms.map((form) => `"${form}"`).join(' or ')}.`;
  return refuse('AMOUNT_AMBIGUOUS', text, kind, message, forms[0]);
}
