import { bisect } from '../../numeric/index.ts';
import type { FallingLine } from './characteristic.ts';

/** A source seen from the point where sources join: the current it gives at a voltage there. */
export interface JoinedSource {
  /** Voltage without load [V]. */
  readonly noLoad: number;
  readonly currentAt: (voltage: number) => number;
  /** The line that the currents lie on, where it is straight from corner to corner. */
  readonly line?: FallingLine;
}

/** How closely voltages are solved [V]. */
const CLOSE = 1e-11;

/** Where sources and arc agree: the voltage at the joint point and the current of each source. */
export interface Agreement {
  readonly voltage: number;
  readonly currents: readonly number[];
  readonly current: number;
}

function at(sources: readonly JoinedSource[], voltage: number): Agreement {
  const currents = sources.map((source) => source.currentAt(voltage));
  return { voltage, currents, current: currents.reduce((sum, current) => sum + current, 0) };
}

/**
 * The point at which sources feed an arc whose voltage is held, through a drop that rises with current. A source
 * that would be driven backwards gives nothing, so the sum falls all the way from one end of the bracket to the
 * other and there is exactly one point. Undefined if no source stands above the arc's voltage.
 */
export function agreeOnVoltage(
  sources: readonly JoinedSource[],
  held: number,
  dropAt: (current: number) => number,
): Agreement | undefined {
  const highest = Math.max(...sources.map((source) => source.noLoad));
  if (!(highest > held)) return undefined;
  const excess = (voltage: number): number => voltage - held - dropAt(at(sources, voltage).current);
  const voltage = bisect(excess, held, highest, CLOSE);
  return voltage === undefined ? undefined : at(sources, voltage);
}

/**
 * The point at which sources together give a held current; undefined if they cannot even into a short circuit.
 * Where a vertical stretch gives that current over a range of voltages, the highest of them is the one available.
 */
export function agreeOnCurrent(sources: readonly JoinedSource[], held: number): Agreement | undefined {
  const highest = Math.max(...sources.map((source) => source.noLoad));
  const enough = (voltage: number): boolean => at(sources, voltage).current >= held * (1 - 1e-12);
  const lines = sources.flatMap((source) => source.line ?? []);
  const voltage =
    lines.length === sources.length
      ? onCorners(lines, (v) => at(sources, v).current, held)
      : bisect((v) => (enough(v) ? 1 : -1), 0, highest, CLOSE);
  return voltage === undefined ? undefined : exactly(held, at(sources, voltage));
}

/** Where the sum of straight lines first reaches a current from above: between two corners it is straight too. */
function onCorners(
  lines: readonly FallingLine[],
  total: (voltage: number) => number,
  held: number,
): number | undefined {
  const corners = lines.flatMap((line) => line.voltages.filter((voltage) => voltage > 0));
  const falling = [...corners, 0].sort((a, b) => b - a);
  const reached = falling.findIndex((voltage) => total(voltage) >= held * (1 - 1e-12));
  if (reached < 1) return undefined;
  const [upper, lower] = [falling[reached - 1]!, falling[reached]!];
  const [few, many] = [total(upper), total(lower)];
  return upper - ((upper - lower) * (held - few)) / (many - few);
}

/** The currents of an agreement, rid of what the search left over. */
function exactly(held: number, { voltage, currents, current }: Agreement): Agreement {
  return { voltage, currents: currents.map((own) => (own * held) / current), current: held };
}
