import { closest, distance } from 'fastest-levenshtein';
import { plainText } from './plain-text.ts';
import { QUANTITY_KINDS, type QuantityKind } from './quantity-kind.ts';
import { scaleOf, type UnitScale } from './unit-scale.ts';
import { UNIT_FAMILIES } from './unit-table.ts';

/** A unit found by its spelling. */
export interface KnownUnit {
  readonly kind: QuantityKind;
  readonly name: string;
  readonly scale: UnitScale;
}

const bySpelling = new Map<string, KnownUnit>();
for (const kind of QUANTITY_KINDS) {
  const family = UNIT_FAMILIES[kind];
  for (const entry of family.units) {
    const unit: KnownUnit = { kind, name: entry.name, scale: scaleOf(entry, family) };
    for (const spelling of [entry.name, ...entry.also]) bySpelling.set(spelling, unit);
  }
}

const byLowerCase = new Map<string, { spelling: string; unit: KnownUnit }>();
for (const [spelling, unit] of bySpelling) {
  const lower = spelling.toLowerCase();
  if (!byLowerCase.has(lower)) byLowerCase.set(lower, { spelling, unit });
}

/** Kinds in which m and M are told apart: milli and mega are both met there. */
const PREFIX_MATTERS: ReadonlySet<QuantityKind> = new Set([
  'pressure',
  'current',
  'voltage',
  'power',
  'resistance',
]);

/** Whether a spelling in other letter cases could mean another size: `mpa`, `MV`, `Mm`. */
function caseMisleads(text: string, spelling: string, kind: QuantityKind): boolean {
  const first = text.charAt(0);
  if (first === spelling.charAt(0) || first.toLowerCase() !== 'm') return false;
  return PREFIX_MATTERS.has(kind) || (kind !== 'time' && text !== text.toUpperCase());
}

/** The unit of a spelling, exactly as written or in another letter case where that cannot mislead. */
export function findUnit(text: string): KnownUnit | undefined {
  const exact = bySpelling.get(text);
  if (exact) return exact;
  const folded = byLowerCase.get(text.toLowerCase());
  return folded && !caseMisleads(text, folded.spelling, folded.unit.kind) ? folded.unit : undefined;
}

/** A unit by its spelling: SI value is `(value + offset) * top / bottom`, in this order. */
export interface NamedUnit {
  readonly kind: QuantityKind;
  /** Spelling in which the program writes the unit. */
  readonly name: string;
  /** Numerator of its size [SI unit of the kind]. */
  readonly top: number;
  /** Denominator of its size [-]. */
  readonly bottom: number;
  /** Reading of zero in the SI unit [the unit]; only temperatures have one. */
  readonly offset: number;
}

/**
 * The unit that a spelling stands for, with its size, for whole columns of numbers in that unit.
 *
 * @param text - spelling [text], such as cm/min or psi; in another letter case only where that cannot mislead
 * @returns the unit [record]; undefined where it is not known
 * @source unitmath 0.8.8 for sizes of units
 * @example
 * unitOf('kA') // => {"kind":"current","name":"kA","top":1000,"bottom":1,"offset":0}
 */
export function unitOf(text: string): NamedUnit | undefined {
  const unit = findUnit(plainText(text));
  if (!unit) return undefined;
  const { top, bottom, offset } = unit.scale;
  return { kind: unit.kind, name: unit.name, top, bottom, offset };
}

/** The unit of that name and kind, known to exist. */
export function unitNamed(name: string): KnownUnit {
  const unit = bySpelling.get(name);
  if (!unit) throw new Error(`no unit is called ${name}`);
  return unit;
}

/** The accepted spelling nearest to what was written, if any is near. */
export function nearestUnit(text: string, kind: QuantityKind): string | undefined {
  const sameKind = [...bySpelling].filter(([, unit]) => unit.kind === kind).map(([spelling]) => spelling);
  const lower = text.toLowerCase();
  const folded = sameKind.find((spelling) => spelling.toLowerCase() === lower);
  const nearest = folded ?? closest(text, sameKind);
  return distance(lower, nearest.toLowerCase()) <= Math.max(1, Math.floor(nearest.length / 2))
    ? nearest
    : undefined;
}

/**
 * Spellings of units that are accepted for a kind, the program's own first, for messages and forms.
 *
 * @param kind - kind of quantity [text], one of the QuantityKind names
 * @returns spellings in the order they are best offered [list]
 * @source none: bookkeeping
 * @example
 * unitsOf('current') // => ["A","kA","mA","amp","amps","ampere","amperes"]
 */
export function unitsOf(kind: QuantityKind): readonly string[] {
  const { units } = UNIT_FAMILIES[kind];
  const gauges = kind === 'area' ? ['AWG'] : [];
  return [...units.map((unit) => unit.name), ...gauges, ...units.flatMap((unit) => unit.also)];
}
