import { bisect } from '../../numeric/index.ts';

/** A source seen from the point where sources join: the current it gives at a voltage there. */
export interface JoinedSource {
  /** Voltage without load [V]. */
  readonly noLoad: number;
  readonly currentAt: (voltage: number) => number;
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
  const enough = (voltage: number): number => (at(sources, voltage).current >= held * (1 - 1e-12) ? 1 : -1);
  const voltage = bisect(enough, 0, highest, CLOSE);
  return voltage === undefined ? undefined : exactly(held, at(sources, voltage));
}

/** The currents of an agreement, rid of what the search left over. */
function exactly(held: number, { voltage, currents, current }: Agreement): Agreement {
  return { voltage, currents: currents.map((own) => (own * held) / current), current: held };
}
