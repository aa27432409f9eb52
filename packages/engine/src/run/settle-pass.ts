import { type DriftWindow, driftStretches } from './drift.ts';
import { CURRENT_OFF, VOLTAGE_OFF, WHEEL_OFF } from './event-thresholds.ts';
import { eventWords } from './event-words.ts';
import type { RunExpectation } from './expectation.ts';
import type { Mark } from './lasting.ts';
import type { LogLevels } from './levels.ts';
import type { Channel } from './log-batch.ts';
import type { OpenEvent, OpenPass } from './open-pass.ts';
import type { PassRun, RunEvent, WaySource } from './outcome.ts';
import type { Anchor, PassPlace } from './place.ts';
import type { Blocks } from './steady-blocks.ts';

/** What a pass is settled with. */
export interface PassContext {
  readonly number: number;
  readonly way: WaySource;
  readonly channels: readonly Channel[];
  readonly levels: LogLevels;
  readonly expected: RunExpectation | undefined;
  readonly anchor: Anchor;
}

/** Puts a pass that is over, with all that happened in it, onto the seam. */
export function settlePass(
  pass: OpenPass,
  context: PassContext,
): { readonly pass: PassRun; readonly events: RunEvent[] } {
  const { number, way, channels, levels, anchor } = context;
  const ran = pass.lost.way;
  const rowWay = (levels.travel ?? anchor.expectedPass()?.travel ?? 0) * levels.interval;
  const placed = anchor.settle(way, pass.origin, way === 'none' ? 0 : ran, rowWay);
  const has = (channel: Channel): boolean => channels.includes(channel);
  const tells = way !== 'none';
  const { expected } = context;
  const volts = (values: Float64Array): DriftWindow =>
    expected === undefined ? about(values, VOLTAGE_OFF) : voltageWindow(expected);
  const amps = (values: Float64Array): DriftWindow =>
    expected === undefined ? about(values, CURRENT_OFF) : currentWindow(expected);
  const found: OpenEvent[] = [
    ...pass.events,
    ...driftEvents('voltage_drift', pass.volts.blocksSoFar(), volts, pass.lost).filter(
      (drift) => !isStale(drift, 'voltage', pass.events),
    ),
    ...driftEvents('current_drift', pass.amps.blocksSoFar(), amps, pass.lost).filter(
      (drift) => !isStale(drift, 'current', pass.events),
    ),
    ...wheelEvent(pass, way, placed),
  ];
  const run: PassRun = {
    number,
    planned: placed.planned,
    start: pass.start.time,
    end: pass.lost.time,
    from: tells ? placed.placeOf(0) : undefined,
    to: tells ? placed.placeOf(ran) : undefined,
    complete: placed.complete,
    brief: pass.brief,
    totals: {
      arcTime: pass.arcTime,
      arcOutTime: pass.outTime,
      voltage: has('voltage_V') && pass.steadyTime > 0 ? pass.voltTime / pass.steadyTime : undefined,
      current: has('current_A') && pass.ampSpan > 0 ? pass.ampTime / pass.ampSpan : undefined,
      energy: has('voltage_V') && has('current_A') ? pass.energy : undefined,
      charge: has('current_A') ? pass.charge : undefined,
      fed: has('feed_m_per_s') ? pass.fed : undefined,
      travelled: tells ? Math.abs(placed.placeOf(ran) - placed.placeOf(0)) : undefined,
      gouged: tells
        ? pass.gouged * (ran === 0 ? 1 : Math.abs((placed.placeOf(ran) - placed.placeOf(0)) / ran))
        : undefined,
    },
    course: tells ? pass.course.bins() : undefined,
    placeOf: placed.placeOf,
    placeSdOf: placed.placeSdOf,
  };
  return { pass: run, events: found.map((event) => onSeam(event, number, placed, tells)) };
}

function onSeam(
  { kind, from, to, lastRow, facts }: OpenEvent,
  pass: number,
  { placeOf, placeSdOf }: PassPlace,
  tells: boolean,
): RunEvent {
  return {
    kind,
    pass,
    start: from.time,
    end: to.time,
    from: tells ? placeOf(from.way) : undefined,
    to: tells ? placeOf(to.way) : undefined,
    placeSd: tells ? placeSdOf((from.way + to.way) / 2) : undefined,
    firstRow: from.row,
    lastRow: Math.max(from.row, lastRow),
    rose: facts.value === undefined || facts.against === undefined ? undefined : facts.value > facts.against,
    says: eventWords(kind, facts),
  };
}

function driftEvents(
  kind: 'voltage_drift' | 'current_drift',
  blocks: Blocks,
  windowOf: (values: Float64Array) => DriftWindow,
  end: Mark,
): OpenEvent[] {
  if (blocks.value.length === 0) return [];
  const window = windowOf(blocks.value);
  return driftStretches(blocks, window).map(({ from, to, mean }) => {
    const at = (block: number): Mark =>
      block < blocks.value.length
        ? { time: blocks.time[block]!, row: blocks.row[block]!, way: blocks.way[block]! }
        : end;
    const [start, over] = [at(from), at(to)];
    const duration = over.time - start.time;
    const facts = { duration, value: mean, against: window.target };
    return { kind, from: start, to: over, lastRow: over.row - 1, facts };
  });
}

/** A level that is off for no longer than its reading stood still says nothing of the arc. */
function isStale(
  { from, to }: OpenEvent,
  reading: 'voltage' | 'current',
  events: readonly OpenEvent[],
): boolean {
  const stale = events
    .filter(({ kind, facts }) => kind === 'stale_reading' && facts.reading === reading)
    .reduce(
      (sum, event) =>
        sum + Math.max(0, Math.min(to.time, event.to.time) - Math.max(from.time, event.from.time)),
      0,
    );
  return stale > (to.time - from.time) / 2;
}

/** Window of the arc voltage that a plan sets. */
export function voltageWindow({ voltage, voltageLeast, voltageMost }: RunExpectation): DriftWindow {
  return { target: voltage, least: voltageLeast, most: voltageMost };
}

/** Window of the current that a plan sets. */
export function currentWindow({ current }: RunExpectation): DriftWindow {
  return { target: current, least: (1 - CURRENT_OFF) * current, most: (1 + CURRENT_OFF) * current };
}

/** A window about the level that held for most of the pass. */
function about(values: Float64Array, share: number): DriftWindow {
  const target = values.slice().sort()[Math.floor(values.length / 2)]!;
  return { target, least: (1 - share) * target, most: (1 + share) * target };
}

/** A wheel that counted another length than the seam is known to have. */
function wheelEvent(pass: OpenPass, way: WaySource, { complete, ratio }: PassPlace): OpenEvent[] {
  if (way !== 'travel' || !complete || ratio === undefined || Math.abs(ratio - 1) <= WHEEL_OFF) return [];
  const value = Math.abs(pass.lost.way);
  const duration = pass.lost.time - pass.start.time;
  const facts = { duration, value, against: value / ratio };
  return [{ kind: 'slip', from: pass.start, to: pass.lost, lastRow: pass.lost.row - 1, facts }];
}
