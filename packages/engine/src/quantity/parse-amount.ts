import type { Outcome } from '../issue/index.ts';
import { figures, refuse, WRITTEN_EXAMPLES } from './amount-issue.ts';
import { readBareNumber } from './bare-number.ts';
import { readCompound } from './compound-amount.ts';
import { findUnit } from './find-unit.ts';
import { refuseLookAlike } from './look-alike-unit.ts';
import { plainText } from './plain-text.ts';
import type { QuantityKind } from './quantity-kind.ts';
import { readNumber } from './read-number.ts';
import { splitTerm } from './split-term.ts';
import { refuseUnit } from './unknown-unit.ts';
import { refuseOpenInches, refuseUnreadable } from './unreadable-amount.ts';
import { readWireGauge } from './wire-gauge.ts';

/** Longest amount that is read; no amount a person writes comes near it. */
const LONGEST = 60;

function accept(value: number, text: string, kind: QuantityKind): Outcome<number> {
  if (!Number.isFinite(value)) {
    return refuse(
      'AMOUNT_RANGE',
      text,
      kind,
      `"${text}" is too large to be an amount.`,
      WRITTEN_EXAMPLES[kind][0],
    );
  }
  if (kind === 'temperature' && value < 0) {
    return refuse(
      'AMOUNT_RANGE',
      text,
      kind,
      `"${text}" is colder than absolute zero, -273.15 °C.`,
      '-273.15 °C',
    );
  }
  // the sum turns a negative zero into zero
  return { ok: true, value: value + 0 };
}

function readTerm(text: string, plain: string, kind: QuantityKind): Outcome<number> {
  const { number, unit: spelling } = splitTerm(plain);
  const reading = readNumber(number);
  if (reading.kind === 'none') return refuseUnreadable(text, plain, kind);
  if (spelling === '') return readBareNumber(text, reading, kind);
  const first = reading.kind === 'one' ? reading.value : reading.values[0];
  const refused = refuseLookAlike(text, spelling, first, kind) ?? refuseOpenInches(text, plain, kind);
  if (refused) return refused;
  const unit = findUnit(spelling);
  if (unit?.kind !== kind) return refuseUnit(text, spelling, reading, kind);
  if (reading.kind === 'one') return accept(unit.scale.toSi(reading.value), text, kind);
  const [decimal, thousands] = reading.values.map((value) => `${figures(value)} ${unit.name}`);
  const message = `"${text}" can be read as ${decimal} or as ${thousands}: write "${decimal}" or "${thousands}".`;
  return refuse('AMOUNT_AMBIGUOUS', text, kind, message, decimal);
}

/**
 * Reads an amount as a person in the shop writes it and gives it in SI.
 *
 * Fractions (`3/8 in`, `1-1/2"`, `5' 6"`), decimal points and commas (`9,5 mm`), typographic signs and the
 * trade's units are read. What can be read in two ways, such as `12` or `1,500 mm`, is refused with both
 * readings. Pressures are gauge; an absolute one is refused. Air flow is free air at 20 degC, 100 kPa absolute,
 * dry (ISO 1217); scfm is taken at that same reference, and a flow in Nm3 (0 degC, 101.325 kPa) is brought to it.
 * A bare decimal is accepted for a share only.
 *
 * @param text - amount as written [text], at most 60 characters
 * @param kind - kind of quantity wanted [text], one of the QuantityKind names
 * @returns the amount in m, m/s, Pa gauge, A, V, s, rad, m2, K, m3/s, W or as a share of 1, or why not [SI unit of the kind]
 * @source unitmath 0.8.8 for sizes of units; AWG by ASTM B258 (memory); air reference ISO 1217 and the derived scfm figures
 * @example
 * parseAmount('3/8 in', 'length') // => {"ok":true,"value":0.009525}
 */
export function parseAmount(text: string, kind: QuantityKind): Outcome<number> {
  // control characters are not echoed into a terminal
  const read = text.replace(/\p{Cc}/gu, ' ').trim();
  if (read.length > LONGEST) {
    const start = `${[...read.slice(0, LONGEST)].slice(0, 20).join('')}…`;
    const message = `"${start}" is longer than the ${LONGEST} characters an amount can have.`;
    return refuse('AMOUNT_NOT_UNDERSTOOD', start, kind, message, WRITTEN_EXAMPLES[kind][0]);
  }
  const plain = plainText(read);
  const gauge = kind === 'area' ? readWireGauge(read, plain) : undefined;
  if (gauge) return gauge;
  const compound = readCompound(plain, kind);
  return compound === undefined ? readTerm(read, plain, kind) : accept(compound, read, kind);
}
