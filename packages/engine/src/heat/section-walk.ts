import { evenAxis } from './axis.ts';
import { type CoolingWatch, coolingWatch } from './cooling-watch.ts';
import { type CutPass, cutPasses } from './cut-passes.ts';
import { cutSection } from './cut-section.ts';
import { type FacePiece, facePieces } from './face-pieces.ts';
import type { HeatFrame } from './field.ts';
import { closedFloor } from './floor-line.ts';
import { type CutState, frameOf, frameWithin } from './frame-maker.ts';
import { freeFaces } from './free-faces.ts';
import { type HeatBody, heatBody, layFree } from './heat-body.ts';
import { laySources } from './heat-sources.ts';
import { disturb, type March, march, type StepSeen } from './march.ts';
import { sectionCells } from './section-cells.ts';
import { griddedFloors, type SectionGrid } from './section-grid.ts';
import type { SectionHeatInput } from './section-heat.ts';
import { fallThrough } from './step-state.ts';
import { stillAirLoss } from './surface-loss.ts';
import { enthalpyAt, temperatureAt } from './thermal-tables.ts';

/** Heat goes about so far in a time: this many times the root of diffusivity and time [-]. */
const REACH = 5;
const DIFFUSIVITY = 1.5e-5;
const HALF_WIDTH_LEAST = 0.15;
const HALF_WIDTH_MOST = 3;
/** Error of a time step, root mean square of all cells [K]. */
const TOLERANCE = { quick: 1, refined: 0.4 } as const;
/** How near the interpass temperature is near enough [K]. */
const WAIT_NEAR = 0.05;

/** A section on its grid, with everything that is watched on the way. */
export interface SectionWalk {
  readonly grid: SectionGrid;
  readonly body: HeatBody;
  readonly walk: March;
  readonly passes: readonly CutPass[];
  readonly watch: CoolingWatch;
  /** Groove's final surface and the cells behind it. */
  readonly surface: readonly FacePiece[];
  readonly frames: HeatFrame[];
  /** Frames still to come, in the section's own time [s]. */
  readonly due: number[];
  cut: CutState;
  cutOut: number;
  given: number;
}

/** How far a section reaches to either side: as stated, or as far as its heat goes [m]. */
export function halfWidthOf({ halfWidth, until, passes }: SectionHeatInput): number {
  if (halfWidth !== undefined) return halfWidth;
  const groove = Math.max(0, ...passes.flatMap(({ floor }) => floor.map(({ offset }) => Math.abs(offset))));
  const far = groove + REACH * Math.sqrt(DIFFUSIVITY * until);
  return Math.min(HALF_WIDTH_MOST, Math.max(HALF_WIDTH_LEAST, far));
}

/** The groove's final surface, one point for each cell behind it, from left to right. */
function surfaceOf(grid: SectionGrid, last: CutPass | undefined): FacePiece[] {
  if (last === undefined) return [];
  const byCell = new Map<number, FacePiece[]>();
  for (const piece of facePieces(grid.across, grid.below, last.section, last.floor)) {
    if (piece.depth > 0) byCell.set(piece.cell, [...(byCell.get(piece.cell) ?? []), piece]);
  }
  return [...byCell].map(([cell, pieces]) => {
    const length = pieces.reduce((sum, each) => sum + each.length, 0);
    const mean = (key: 'offset' | 'depth'): number =>
      pieces.reduce((sum, each) => sum + each[key] * each.length, 0) / length;
    return { cell, length, offset: mean('offset'), depth: mean('depth') };
  });
}

/** Lays a section out on a grid, halved so many times, before its first pass. */
export function sectionWalk(input: SectionHeatInput, halving: number): SectionWalk {
  const floors = input.passes.map(({ floor }) => closedFloor(floor));
  const gridded = griddedFloors(input.thickness, halfWidthOf(input), floors, halving);
  const { grid } = gridded;
  const whole = sectionCells(grid.across, grid.below, []);
  const passes = cutPasses(gridded, input.passes, whole);
  const body = heatBody({
    metal: input.metal,
    grid: { ...grid, along: evenAxis(0, 1, 1) },
    start: input.start,
    loss: input.losses === 'none' ? null : stillAirLoss(input.ambient),
    section: whole,
    free: freeFaces(grid.across, grid.below, whole, []),
    sourcesMost: Math.max(1, ...passes.map(({ heated }) => heated.length)),
    tolerance: TOLERANCE[input.quality],
    ...(input.form === undefined ? {} : { form: input.form }),
  });
  const surface = surfaceOf(grid, passes.at(-1));
  const walk = march(body, 0);
  disturb(walk);
  const section: SectionWalk = {
    grid,
    body,
    walk,
    passes,
    watch: coolingWatch(
      body.tables,
      surface.map(({ cell }) => cell),
    ),
    surface,
    frames: [],
    due: [...input.frameTimes].sort((a, b) => a - b),
    cut: { pass: 0, section: whole, floor: [] },
    cutOut: 0,
    given: 0,
  };
  takeFramesUntil(section, 0);
  return section;
}

/** Takes the frames that are due now, outside of a step. */
export function takeFramesUntil(section: SectionWalk, time: number): void {
  const { due, frames, grid, body, cut } = section;
  while (due.length > 0 && due[0]! <= time) {
    frames.push(frameOf(due.shift()!, grid, body.tables, cut, (cell) => body.kernel.memory.now[cell]!));
  }
}

/** Watches one step: cooling, and frames within it. */
export function seeStep(section: SectionWalk, step: StepSeen): void {
  section.watch.see(step);
  const { due, frames, grid, body, cut } = section;
  while (due.length > 0 && due[0]! <= step.to) {
    frames.push(frameWithin(due.shift()!, grid, body.tables, cut, step));
  }
}

/** Cells of the plate's surface on both sides of the groove; the middle one where nothing is cut. */
function besideGroove({ grid, cut }: SectionWalk): readonly number[] {
  const { holder } = cut.section;
  const columns = grid.across.widths.length;
  const top = Array.from({ length: columns }, (_, cell) => cell);
  const first = top.find((cell) => holder[cell] !== cell);
  if (first === undefined) return [grid.sides === 2 ? 0 : columns >> 1];
  const last = top.findLast((cell) => holder[cell] !== cell)!;
  return [first - 1, last + 1].filter((cell) => cell >= 0 && cell < columns);
}

/** Temperature of the surface beside the groove, at the hotter side [K]. */
export function temperatureBeside(section: SectionWalk): number {
  const { now } = section.body.kernel.memory;
  return Math.max(...besideGroove(section).map((cell) => temperatureAt(section.body.tables, now[cell]!)));
}

/** How quickly the surface beside the groove cools over a step, at the hotter side [K/s]. */
export function coolingBeside(section: SectionWalk, step: StepSeen): number {
  const hottest = (state: Float64Array): number =>
    Math.max(...besideGroove(section).map((cell) => temperatureAt(section.body.tables, state[cell]!)));
  return (hottest(step.now) - hottest(step.next)) / (step.to - step.from);
}

/** When, within a step, the surface beside the groove has cooled to a temperature; undefined if it has not [s]. */
export function cooledWithin(section: SectionWalk, step: StepSeen, temperature: number): number | undefined {
  const level = enthalpyAt(section.body.tables, temperature);
  const near = enthalpyAt(section.body.tables, temperature - WAIT_NEAR);
  const sides = besideGroove(section);
  if (sides.some((cell) => step.next[cell]! > level)) return undefined;
  if (sides.some((cell) => step.next[cell]! > near)) return step.to;
  return Math.max(...sides.map((cell) => fallThrough(step, cell, level) ?? step.from));
}

/** Cuts the groove of a pass and lays its heat on the new face. */
export function beginPass(section: SectionWalk, number: number): void {
  const { body, walk } = section;
  const pass = section.passes[number]!;
  const { sides } = section.grid;
  section.cutOut += sides * cutSection(body, 0, pass.section, pass.free);
  section.given += pass.keptPerLength;
  section.cut = { pass: number + 1, section: pass.section, floor: pass.floor };
  layFree(body);
  const power = pass.keptPerLength / pass.duration / sides;
  laySources(
    body,
    pass.heated.map(({ cell, share }) => ({ cell, power: power * share })),
  );
  disturb(walk);
}

/** Takes the arc away. */
export function endPass({ body, walk }: SectionWalk): void {
  laySources(body, []);
  disturb(walk);
}
