import { type EdgeUnit, fromUnit, STATED_UNITS, type StatedUnit } from '../quantity/index.ts';

const KEY_UNITS = STATED_UNITS.map((unit) => (unit === '%' ? 'percent' : unit.replace('/', '_per_')));
// °C is stated as `C` where the electric loop tells it, and the longest ending is the unit
const UNIT = new RegExp(
  `_(${[...KEY_UNITS, 'C', 'kJ_per_m'].sort((a, b) => b.length - a.length).join('|')})$`,
  'u',
);
const AS_UNIT: Readonly<Record<string, EdgeUnit>> = { C: 'degC', kJ_per_m: 'kJ' };

function leavesOf(value: unknown, path: readonly string[] = []): [readonly string[], number][] {
  if (typeof value === 'number') return [[path, value]];
  if (value === null || typeof value !== 'object') return [];
  if (ArrayBuffer.isView(value)) return [];
  return Object.entries(value).flatMap(([key, each]) => leavesOf(each, [...path, key]));
}

/** A copy whose every number stands nowhere else in it, so that a mix-up shows; records and lists as they are. */
export function unlikeNumbers<Value>(value: Value): Value {
  let last = 1;
  const copied = new Map<object, unknown>();
  const copy = (part: unknown): unknown => {
    if (typeof part === 'number') {
      last += 0.001;
      return last;
    }
    if (part === null || typeof part !== 'object') return part;
    const known = copied.get(part);
    if (known !== undefined) return known;
    if (Array.isArray(part)) return part.map(copy);
    const made: Record<string, unknown> = {};
    copied.set(part, made);
    for (const [key, each] of Object.entries(part)) made[key] = copy(each);
    return made;
  };
  return copy(value) as Value;
}

/** A path with the places in lists left out. */
function shapeOf(path: readonly string[]): string {
  return path.filter((key) => !/^\d+$/u.test(key)).join('.');
}

function unitOf(path: readonly string[], whole: unknown): EdgeUnit | StatedUnit | undefined {
  const named = path.map((key) => UNIT.exec(key)?.[1]).filter((unit) => unit !== undefined);
  const last = named.at(-1);
  if (last !== undefined) return AS_UNIT[last] ?? (last as EdgeUnit);
  // the unit stands beside the number
  const owner = path.slice(0, -1).reduce((part, key) => (part as Record<string, unknown>)[key], whole);
  return (owner as { readonly unit?: StatedUnit }).unit;
}

/**
 * Where each number of a stated result comes from: for every key, lists taken together, the place in the outcome that
 * holds the very number in SI. A key with no such place reads `counted`.
 */
function sourcesOf(stated: unknown, outcome: unknown): Record<string, string> {
  const places = leavesOf(outcome);
  const found: Record<string, string> = {};
  for (const [path, value] of leavesOf(stated)) {
    const unit = unitOf(path, stated);
    const si = unit === undefined ? value : fromUnit(value, unit);
    const source = places.find(([, each]) => Math.abs(each - si) <= 1e-9 * Math.abs(each));
    const shape = shapeOf(path);
    const from = source === undefined ? 'counted' : shapeOf(source[0]);
    if (found[shape] === undefined || found[shape] === from) found[shape] = from;
    else found[shape] = [...new Set([...found[shape].split(' | '), from])].sort().join(' | ');
  }
  return found;
}

function plainName(shape: string): string {
  return shape
    .split('.')
    .map((key) => key.replace(UNIT, '').replace(/_([a-z])/gu, (_, letter: string) => letter.toUpperCase()))
    .join('.');
}

/**
 * Keys of a stated result whose source is not the place of the same name, nor the one named for them; and names given
 * for keys that are not there. Each as it ought to be read: `key <- source`.
 */
export function mixedUp(
  stated: unknown,
  outcome: unknown,
  renamed: Readonly<Record<string, string>>,
): readonly string[] {
  const found = sourcesOf(stated, outcome);
  const wrong = Object.entries(found).flatMap(([shape, from]) =>
    from === (renamed[shape] ?? plainName(shape)) ? [] : [`${shape} <- ${from}`],
  );
  return [
    ...wrong,
    ...Object.keys(renamed).flatMap((shape) => (shape in found ? [] : [`${shape}: no such key`])),
  ];
}
