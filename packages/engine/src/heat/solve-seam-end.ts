import { type Axis, stretchedAxis } from './axis.ts';
import { coolingWatch } from './cooling-watch.ts';
import { type CutPass, cutPasses } from './cut-passes.ts';
import { cutSection } from './cut-section.ts';
import { facePieces } from './face-pieces.ts';
import { closedFloor } from './floor-line.ts';
import { freeFaces } from './free-faces.ts';
import { type HeatBody, heatBody, layFree } from './heat-body.ts';
import { type CellSource, laySources, storedHeat } from './heat-sources.ts';
import { disturb, march, marchTo, type Onlooker } from './march.ts';
import { folded, mirroredAxis } from './mirror.ts';
import type { SeamEndHeat, SeamEndInput, SeamPass, SeamPlace } from './seam-end-heat.ts';
import { sectionCells } from './section-cells.ts';
import { griddedFloors } from './section-grid.ts';
import type { SectionHeatInput } from './section-heat.ts';
import { halfWidthOf } from './section-walk.ts';
import { solveSectionOn } from './solve-section.ts';
import { stillAirLoss } from './surface-loss.ts';
import { temperatureAt } from './thermal-tables.ts';
import { widthPast } from './width-past.ts';

/** A window has coarser cells than a section: it has so many more of them. */
const HALVING = { quick: -1, refined: 0 } as const;
/** Cells that the arc covers along the seam, at least [-]. */
const CELLS_UNDER_ARC = 3;
/** Growth from cell to cell beyond the seam's end [-]. */
const GROWTH = 1.3;
/** Error allowed in a step, root mean square of all cells [K]. */
const TOLERANCE = 1;
/** Share of the work that the section alone is [-]. */
const SECTION_SHARE = 0.1;

/** The same groove as a section: every place sees the passes at the same time after each other. */
function sectionOf(input: SeamEndInput): SectionHeatInput {
  return { ...input, frameTimes: [] };
}

function alongOf(input: SeamEndInput, fine: number) {
  const { length, before, after, passes } = input;
  const arc = Math.min(...passes.map(({ travel, duration }) => travel * duration));
  const cell = Math.min(3.5 * fine, arc / CELLS_UNDER_ARC, length / 6);
  const [ahead, behind] = [before.seamGoesOn ? 0 : before.plate, after.seamGoesOn ? 0 : after.plate];
  const widest = Math.max(length, ahead, behind) / 6;
  return stretchedAxis([-ahead, length + behind], 0, length, { fine: cell, growth: GROWTH, widest });
}

/** Integral, over where the front is, of the front held between two places [m2]. */
function heldBetween(front: number, from: number, to: number): number {
  if (front <= from) return from * front;
  const inside = Math.min(front, to);
  return from * from + (inside * inside - from * from) / 2 + to * (front - inside);
}

/** Share of an arc that lies on a place along, mean over the way of its front from one place to another [-]. */
function meanOverlap([begin, end]: readonly [number, number], arc: number, from: number, to: number): number {
  const held = (front: number): number => heldBetween(front, from, to);
  return (held(end) - held(begin) - held(end - arc) + held(begin - arc)) / (arc * (end - begin));
}

/** Sources between two places of the arc's front. */
function sourcesBetween(
  body: HeatBody,
  pass: CutPass & SeamPass,
  way: readonly [number, number],
  seam: readonly number[],
  sides: number,
): CellSource[] {
  const arc = pass.travel * pass.duration;
  const { edges } = body.grid.along;
  return seam.flatMap((place) => {
    const covered = meanOverlap(way, arc, edges[place]!, edges[place + 1]!);
    const power = (pass.keptPerLength * pass.travel * covered) / sides;
    if (covered < 1e-15) return [];
    return pass.heated.map(({ cell, share }) => ({ cell: place * body.plane + cell, power: power * share }));
  });
}

/**
 * Temperatures about the end of a seam, or of a whole short seam: the groove is cut and heated as the torch goes by.
 *
 * The section's grid, inner loop and steps, carried on along the seam. The heat kept lies evenly on the newly cut face
 * under the arc, whose front cuts as it goes. Where the seam goes on beyond the window the window is closed, which its
 * places nearer than about a thickness feel; where the
 * plate ends its edge loses heat like other faces. Beside each place stands what the section alone gives.
 *
 * @param input - metal, plate, window of the seam, passes, times [record], length > 0, travel > 0, passes in order of time
 * @returns a generator of the share done, from 0 to 1, whose result is the stretch of seam through time [record]
 * @source heat conduction with enthalpy: derived; as solveSection
 * @example
 * Array.from(solveSeamEnd({ metal: { start: 273.15, step: 1000, enthalpy: Float64Array.of(0, 4e9), conductivity: Float64Array.of(40, 40) }, thickness: 0.01, ambient: 293.15, start: 293.15, losses: 'none', length: 0.02, before: { seamGoesOn: false, plate: 0.02 }, after: { seamGoesOn: false, plate: 0.02 }, passes: [{ at: 0, travel: 0.01, duration: 1, floor: [{ offset: -0.004, depth: 0 }, { offset: 0, depth: 0.004 }, { offset: 0.004, depth: 0 }], keptPerLength: 1e5 }], past: 1000, until: 3, quality: 'quick' })).at(-1) // => 1
 */
export function* solveSeamEnd(input: SeamEndInput): Generator<number, SeamEndHeat> {
  const halving = HALVING[input.quality];
  const section = yield* solveSectionOn(sectionOf(input), halving, 0, SECTION_SHARE, null);
  const floors = input.passes.map(({ floor }) => closedFloor(floor));
  const gridded = griddedFloors(input.thickness, halfWidthOf(sectionOf(input)), floors, halving);
  const { grid: flat } = gridded;
  const { sides } = flat;
  const grid = { ...flat, along: alongOf(input, flat.fine) };
  const whole = sectionCells(grid.across, grid.below, []);
  const passes = cutPasses(gridded, input.passes, whole);
  const { centres, edges } = grid.along;
  const seam = Array.from(centres, (_, place) => place).filter(
    (place) => centres[place]! > 0 && centres[place]! < input.length,
  );
  const body = heatBody({
    metal: input.metal,
    grid,
    start: input.start,
    loss: input.losses === 'none' ? null : stillAirLoss(input.ambient),
    section: whole,
    free: freeFaces(grid.across, grid.below, whole, []),
    ends: {
      front: input.losses !== 'none' && !input.before.seamGoesOn,
      back: input.losses !== 'none' && !input.after.seamGoesOn,
    },
    sourcesMost: Math.max(1, ...passes.map(({ heated }) => heated.length)) * seam.length,
    tolerance: TOLERANCE,
  });
  const walk = march(body, 0);
  const last = passes.at(-1);
  const lowest = last === undefined ? 0 : lowestCell(flat, last);
  const watch = coolingWatch(
    body.tables,
    seam.map((place) => place * body.plane + lowest),
  );
  const see: Onlooker = (step) => {
    watch.see(step);
    return undefined;
  };
  let cutOut = 0;
  let given = 0;
  const share = (time: number): number =>
    SECTION_SHARE + (1 - SECTION_SHARE) * Math.sqrt(time / Math.max(input.until, time)) * 0.999;
  function* to(time: number): Generator<number, void> {
    for (const reached of marchTo(walk, time, see)) yield share(reached);
  }
  disturb(walk);
  for (const pass of passes) {
    yield* to(Math.max(walk.time, pass.at));
    const began = walk.time;
    const arc = pass.travel * pass.duration;
    // the front cuts place by place; then the arc leaves the last of them
    const tail = Array.from(
      { length: CELLS_UNDER_ARC },
      (_, at) => input.length + (arc * (at + 1)) / CELLS_UNDER_ARC,
    );
    const fronts = [...seam.map((place) => edges[place + 1]!), ...tail];
    let front = 0;
    for (const [at, next] of fronts.entries()) {
      const place = seam[at];
      if (place !== undefined) {
        cutOut += sides * cutSection(body, place, pass.section, pass.free);
        layFree(body);
      }
      const sources = sourcesBetween(body, pass, [front, next], seam, sides);
      laySources(body, sources);
      body.kernel.prepare();
      const end = began + next / pass.travel;
      given += sides * sources.reduce((sum, { power }) => sum + power, 0) * (end - walk.time);
      yield* to(end);
      front = next;
    }
    laySources(body, []);
    disturb(walk);
  }
  yield* to(Math.max(walk.time, input.until));
  yield 1;
  const stored = sides * storedHeat(body);
  const lost = sides * walk.lost;
  const scale = Math.max(given, Math.abs(lost), Math.abs(stored));
  const error = scale > 0 ? Math.abs(given - cutOut - lost - stored) / scale : 0;
  const across = sides === 2 ? mirroredAxis(grid.across) : grid.across;
  const times = watch.times();
  return {
    places: seam.map((place, at) => placeOf(body, place, times[at]!, across, input.past)),
    section: {
      backFacePeak: section.backFacePeak,
      t85: lowestTime(section.surface),
      widthPast: widthPast(across, (cell) => section.peak[cell]!, input.past),
    },
    balance: { given, cutOut, lost, stored, error },
    cells: body.plane * centres.length,
    steps: walk.steps,
    sweeps: walk.stages,
  };
}

/** Cell behind the lowest place of a groove. */
function lowestCell({ across, below }: Pick<HeatBody['grid'], 'across' | 'below'>, pass: CutPass): number {
  const pieces = facePieces(across, below, pass.section, pass.floor);
  return pieces.reduce((lowest, piece) => (piece.depth > lowest.depth ? piece : lowest)).cell;
}

/** Cooling time at the lowest place of a surface. */
function lowestTime(surface: readonly { readonly depth: number; readonly t85: number }[]): number {
  if (surface.length === 0) return Number.NaN;
  return surface.reduce((lowest, point) => (point.depth > lowest.depth ? point : lowest)).t85;
}

function placeOf(body: HeatBody, place: number, t85: number, whole: Axis, past: number): SeamPlace {
  const { across, below, along } = body.grid;
  const { holder } = body.sections[place]!;
  const columns = across.widths.length;
  const column = (of: number): number => (whole.widths.length > columns ? folded(of, columns) : of);
  const hottest = (cell: number): number =>
    holder[cell]! < 0
      ? Number.NaN
      : temperatureAt(body.tables, body.kernel.memory.peak[place * body.plane + holder[cell]!]!);
  const back = Array.from({ length: columns }, (_, i) => hottest((below.widths.length - 1) * columns + i));
  return {
    along: along.centres[place]!,
    backFacePeak: Math.max(...back.filter((each) => !Number.isNaN(each))),
    t85,
    widthPast: widthPast(whole, (of) => hottest(column(of)), past),
  };
}
