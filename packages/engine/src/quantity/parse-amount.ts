import type { Outcome } from '../issue/index.ts';
import { figures, refuse, WRITTEN_EXAMPLES } from './amount-issue.ts';
import { readBareNumber } from './bare-number.ts';
import { readCompound } from './compound-amount.ts';
import { findUnit, nearestUnit } from './find-unit.ts';
import { refuseLookAlike } from './look-alike-unit.ts';
import { plainText } from './plain-text.ts';
import { KIND_NAMES, type QuantityKind } from './quantity-kind.ts';
import { type NumberReading, readNumber } from './read-number.ts';
import { splitTerm } from './split-term.ts';
import { areaOfGauge } from './wire-gauge.ts';

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

function readGauge(text: string, plain: string): Outcome<number> | undefined {
  const size = /^(?:AWG ?#?([\d/ ]+)|#?([\d/ ]+?) ?AWG)$/i.exec(plain);
  if (!size) return undefined;
  const area = areaOfGauge((size[1] ?? size[2] ?? '').trim());
  return area === undefined
    ? refuse(
        'AMOUNT_RANGE',
        text,
        'area',
        `"${text}" is not a wire gauge: sizes run from 4/0 AWG to 40 AWG.`,
        '4/0 AWG',
      )
    : { ok: true, value: area };
}

function refuseUnit(
  text: string,
  spelling: string,
  reading: NumberReading,
  kind: QuantityKind,
): Outcome<never> {
  const known = findUnit(spelling);
  const examples = WRITTEN_EXAMPLES[kind].slice(0, 2).join('" or "');
  if (known) {
    const message = `"${text}" is ${KIND_NAMES[known.kind]}; ${KIND_NAMES[kind]} is wanted, such as "${examples}".`;
    return refuse('AMOUNT_KIND', text, kind, message);
  }
  const near = nearestUnit(spelling, kind);
  const offer =
    near !== undefined && reading.kind === 'one' ? `${figures(reading.value)} ${near}` : undefined;
  const advice = offer === undefined ? `write for example "${examples}"` : `did you mean "${offer}"?`;
  const end = offer === undefined ? '.' : '';
  return refuse(
    'AMOUNT_UNIT',
    text,
    kind,
    `The unit "${spelling}" is not known here: ${advice}${end}`,
    offer,
  );
}

function readTerm(text: string, plain: string, kind: QuantityKind): Outcome<number> {
  const { number, unit: spelling } = splitTerm(plain);
  const reading = readNumber(number);
  if (spelling === '' && number !== '') return readBareNumber(text, reading, kind);
  if (reading.kind === 'none') {
    const message = `"${text}" cannot be read as ${KIND_NAMES[kind]}: write a number and a unit, such as "${WRITTEN_EXAMPLES[kind][0]}".`;
    return refuse('AMOUNT_NOT_UNDERSTOOD', text, kind, message, WRITTEN_EXAMPLES[kind][0]);
  }
  const first = reading.kind === 'one' ? reading.value : reading.values[0];
  const misleading = refuseLookAlike(text, spelling, first, kind);
  if (misleading) return misleading;
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
  if (text.length > LONGEST) {
    const start = `${text.slice(0, 20)}…`;
    const message = `"${start}" is longer than the ${LONGEST} characters an amount can have.`;
    return refuse('AMOUNT_NOT_UNDERSTOOD', start, kind, message, WRITTEN_EXAMPLES[kind][0]);
  }
  const plain = plainText(text);
  const read = text.trim();
  if (plain === '') {
    const examples = WRITTEN_EXAMPLES[kind].slice(0, 2).join('" or "');
    return refuse('AMOUNT_NOT_UNDERSTOOD', read, kind, `Nothing is written here: write "${examples}".`);
  }
  const gauge = kind === 'area' ? readGauge(read, plain) : undefined;
  if (gauge) return gauge;
  const compound = readCompound(plain, kind);
  if (compound !== undefined) return accept(compound, read, kind);
  return readTerm(read, plain, kind);
}
