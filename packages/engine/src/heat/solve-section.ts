import { gridErrorOf } from './grid-error.ts';
import { storedHeat } from './heat-sources.ts';
import { marchTo, type Onlooker } from './march.ts';
import { mirroredAxis, mirroredFrame, mirroredRows } from './mirror.ts';
import type { HeatAccount, SectionHeat, SectionHeatInput } from './section-heat.ts';
import {
  beginPass,
  cooledWithin,
  coolingBeside,
  endPass,
  type SectionWalk,
  sectionWalk,
  seeStep,
  takeFramesUntil,
  temperatureBeside,
} from './section-walk.ts';
import { temperatureAt } from './thermal-tables.ts';

/** Longest wait for the interpass temperature that is simulated [s]. */
const WAIT_MOST = 86400;
/** After so long the surface no longer warms from the last pass [s]. */
const SPREAD_TIME = 3600;
/** Frames during a wait come at times that grow like this, counted from the last arc [-]. */
const WAIT_FRAME_GROWTH = 1.25;
/** How near the interpass temperature is near enough [K]. */
const WAIT_NEAR = 0.05;
/** Share of the work that the coarse of two grids is [-]. */
const COARSE_SHARE = 0.12;

/** What the walk notes down at each pass. */
interface PassNotes {
  readonly waits: number[];
  readonly startedAt: number[];
  readonly beforePass: number[];
}

/**
 * Temperatures in the section under a groove that is cut in passes, through hours if need be.
 *
 * Transient conduction on a grid that is fine by the groove, enthalpy as unknown, Runge-Kutta-Chebyshev steps chosen
 * by their error. Each pass cuts its groove when the torch is there; the metal cut out leaves as hot as it is, and the
 * heat kept lies evenly on the newly cut face for the pass's duration. Far ends are closed; faces lose heat to still
 * air and by radiation, or not at all. With an interpass temperature a pass waits until the plate's surface beside the
 * groove is no hotter; until and frame times are then counted without the waits. `refined` solves on two grids,
 * the finer of half the cell, and estimates the error.
 *
 * @param input - metal, plate, passes, times [record], thickness > 0, durations > 0, passes in order of time
 * @returns a generator of the share done, from 0 to 1, whose result is the section through time [record]
 * @source heat conduction with enthalpy: derived; Runge-Kutta-Chebyshev steps: Sommeijer, Shampine and Verwer (memory); still air 4 W/(m2 K) and emissivity 0.7: EN 1991-1-2 and EN 1993-1-2 (memory)
 * @example
 * Array.from(solveSection({ metal: { start: 273.15, step: 1000, enthalpy: Float64Array.of(0, 4e9), conductivity: Float64Array.of(40, 40) }, thickness: 0.01, ambient: 293.15, start: 293.15, losses: 'none', passes: [], until: 1, frameTimes: [], quality: 'quick' })).at(-1) // => 1
 */
export function* solveSection(input: SectionHeatInput): Generator<number, SectionHeat> {
  if (input.quality === 'quick') return yield* solveSectionOn(input, 0, 0, 1, null);
  const coarse = yield* solveSectionOn(input, 0, 0, COARSE_SHARE, null);
  return yield* solveSectionOn(input, 1, COARSE_SHARE, 1, coarse);
}

/** One run on a grid, halved so many times; reports its share of the work between two shares done. */
export function* solveSectionOn(
  input: SectionHeatInput,
  halving: number,
  doneBefore: number,
  doneAfter: number,
  coarse: SectionHeat | null,
): Generator<number, SectionHeat> {
  const section = sectionWalk(input, halving);
  const { walk, passes } = section;
  const notes: PassNotes = { waits: [], startedAt: [], beforePass: [] };
  const see: Onlooker = (step) => {
    seeStep(section, step);
    return undefined;
  };
  const legs = 2 * passes.length + 1;
  function* to(time: number, leg: number): Generator<number, void> {
    const from = walk.time;
    for (const reached of marchTo(walk, time, see)) {
      // in cooling the steps grow with time: progress by its root is more even than by time itself
      const share = Math.sqrt(Math.min(1, (reached - from) / (time - from)));
      yield Math.min(doneAfter, doneBefore + ((doneAfter - doneBefore) * (leg + share)) / legs);
    }
    takeFramesUntil(section, walk.time);
  }
  let shift = 0;
  for (const [number, pass] of passes.entries()) {
    yield* to(Math.max(walk.time, pass.at + shift), 2 * number);
    const began = walk.time;
    const waited =
      number === 0
        ? 0
        : yield* wait(
            section,
            input,
            notes.startedAt.at(-1)!,
            doneBefore + ((doneAfter - doneBefore) * (2 * number + 1)) / legs,
          );
    shift += walk.time - began;
    notes.waits.push(waited);
    notes.startedAt.push(walk.time);
    notes.beforePass.push(temperatureBeside(section));
    beginPass(section, number);
    yield* to(walk.time + pass.duration, 2 * number + 1);
    endPass(section);
  }
  yield* to(Math.max(walk.time, input.until + shift), legs - 1);
  yield doneAfter;
  return resultOf(section, notes, coarse);
}

/** Waits until the surface beside the groove is cool enough for the next pass; returns how long [s]. */
function* wait(
  section: SectionWalk,
  input: SectionHeatInput,
  lastArc: number,
  done: number,
): Generator<number, number> {
  const most = input.interpassMost;
  const { walk, due } = section;
  if (most === undefined || temperatureBeside(section) <= most) return 0;
  const coldest = input.losses === 'none' ? input.start : Math.min(input.start, input.ambient);
  // a plate that never gets so cool: there is nothing to wait for
  if (most <= coldest) return Number.POSITIVE_INFINITY;
  const planned = due.splice(0);
  const began = walk.time;
  let next = began;
  const see: Onlooker = (step) => {
    const end = cooledWithin(section, step, most);
    if (end !== undefined && end < step.to) return end;
    for (; next <= step.to; next = lastArc + (next - lastArc) * WAIT_FRAME_GROWTH) {
      if (next > began) due.push(next);
    }
    seeStep(section, step);
    // once the heat has spread, cooling only slows down: what its pace does not reach in a day is not reached
    const spread = step.to - began > SPREAD_TIME;
    const reached = coolingBeside(section, step) * WAIT_MOST >= temperatureBeside(section) - most;
    return end ?? (spread && !reached ? step.to : undefined);
  };
  for (const _ of marchTo(walk, began + WAIT_MOST, see)) yield done;
  const waited =
    temperatureBeside(section) <= most + 2 * WAIT_NEAR ? walk.time - began : Number.POSITIVE_INFINITY;
  due.push(...planned.map((time) => time + walk.time - began));
  return waited;
}

function balanceOf({ grid, body, walk, given, cutOut }: SectionWalk): HeatAccount {
  const stored = grid.sides * storedHeat(body);
  const lost = grid.sides * walk.lost;
  const missing = Math.abs(given - cutOut - lost - stored);
  const scale = Math.max(given, Math.abs(lost), Math.abs(stored));
  return { given, cutOut, lost, stored, error: scale > 0 ? missing / scale : 0 };
}

function resultOf(section: SectionWalk, notes: PassNotes, coarse: SectionHeat | null): SectionHeat {
  const { grid, body, walk, surface, watch, frames, cut } = section;
  const hottest = (cell: number): number => temperatureAt(body.tables, body.kernel.memory.peak[cell]!);
  const { holder } = cut.section;
  const columns = grid.across.widths.length;
  const half = grid.sides === 2;
  const peak = Float32Array.from(holder, (holds) => (holds < 0 ? Number.NaN : hottest(holds)));
  const times = watch.times();
  const back = holder.subarray(holder.length - columns);
  const points = surface.map(({ cell, offset, depth }, at) => ({
    offset,
    depth,
    t85: times[at]!,
    peak: hottest(cell),
  }));
  const result: SectionHeat = {
    across: (half ? mirroredAxis(grid.across) : grid.across).centres,
    below: grid.below.centres,
    frames: half ? frames.map((frame) => mirroredFrame(frame, columns)) : frames,
    peak: half ? mirroredRows(peak, columns) : peak,
    ...notes,
    surface: half
      ? [...points.toReversed().map((point) => ({ ...point, offset: -point.offset })), ...points]
      : points,
    backFacePeak: back.reduce((most, holds) => (holds < 0 ? most : Math.max(most, hottest(holds))), 0),
    balance: balanceOf(section),
    gridError: null,
    steps: walk.steps + (coarse?.steps ?? 0),
    sweeps: walk.stages + (coarse?.sweeps ?? 0),
    cells: body.plane,
    form: body.kernel.form,
  };
  const start = temperatureAt(body.tables, body.reference);
  return coarse === null ? result : { ...result, gridError: gridErrorOf(coarse, result, cut.floor, start) };
}
