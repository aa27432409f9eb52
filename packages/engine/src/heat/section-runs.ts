import type { Job } from '../job/index.ts';
import type { ThermalMetal } from '../material/index.ts';
import type { HeatSpan, KeptHeat } from './kept-heat.ts';
import type { SectionHeat, SectionHeatInput, SectionPass } from './section-heat.ts';
import { solveSection } from './solve-section.ts';

/** The section run with little, middle and much heat kept. */
export type HeatRuns = Readonly<Record<keyof HeatSpan, SectionHeat>>;

/** One pass as the section feels it: at the plan's median depth, and where it is deepest. */
export interface StationPass extends Omit<SectionPass, 'keptPerLength'> {
  /** Order in which it is run, from 1 [-]. */
  readonly number: number;
  /** Travel [m/s]. */
  readonly travel: number;
  /** Floor after it at the 95th percentile of the plan's depth: what lies behind gets hottest there. */
  readonly deepFloor: SectionPass['floor'];
  readonly heat: KeptHeat;
}

/** What the runs have in common. */
export interface HeatRunsInput {
  readonly job: Job;
  readonly metal: ThermalMetal;
  readonly passes: readonly StationPass[];
  /** Temperature of the plate before the first arc [K]. */
  readonly start: number;
  readonly quality: 'quick' | 'refined';
}

/** Frames of a whole job, about [-]. */
const FRAMES = 72;
/** Frames after one pass, at least and at most [-]. */
const FRAMES_PER_PASS = [6, 24] as const;
/** Time followed after the last pass: this many times thickness squared over diffusivity, within bounds [-], [s]. */
const AFTER = { diffusions: 2, diffusivity: 1e-5, least: 300, most: 1800 } as const;
const ENDS: readonly (keyof HeatSpan)[] = ['least', 'middle', 'most'];

/** End of the time followed: until the heat of the last pass has come through the plate [s]. */
function endOf(passes: readonly StationPass[], thickness: number): number {
  const through = (AFTER.diffusions * thickness * thickness) / AFTER.diffusivity;
  return passes.at(-1)!.at + Math.min(AFTER.most, Math.max(AFTER.least, through));
}

/** Times of the frames: before the first arc, then close together after each pass and ever wider apart. */
function frameTimes(passes: readonly StationPass[], end: number): number[] {
  const [least, most] = FRAMES_PER_PASS;
  const count = Math.min(most, Math.max(least, Math.round(FRAMES / passes.length)));
  const times = [0];
  passes.forEach(({ at, duration }, index) => {
    const span = (passes[index + 1]?.at ?? end) - at;
    const first = Math.min(duration / 2, span / count);
    for (let step = 0; step < count; step += 1) times.push(at + first * (span / first) ** (step / count));
  });
  return [...times, end];
}

/** Follows the section three times; yields the share done. */
export function* sectionRuns(input: HeatRunsInput): Generator<number, HeatRuns> {
  const { job, metal, passes, start, quality } = input;
  const until = endOf(passes, job.plate.thickness);
  const runs: Partial<Record<keyof HeatSpan, SectionHeat>> = {};
  for (const [index, end] of ENDS.entries()) {
    const section: SectionHeatInput = {
      metal,
      thickness: job.plate.thickness,
      ambient: job.heat.ambient,
      start,
      losses: job.heat.losses,
      passes: passes.map(({ at, duration, floor, deepFloor, heat }) => ({
        at,
        duration,
        floor: end === 'most' ? deepFloor : floor,
        keptPerLength: heat.gross * heat.share[end],
      })),
      interpassMost: job.heat.interpass_most,
      until,
      frameTimes: end === 'middle' ? frameTimes(passes, until) : [],
      quality,
    };
    const solving = solveSection(section);
    for (let step = solving.next(); ; step = solving.next()) {
      if (step.done) {
        runs[end] = step.value;
        break;
      }
      yield (index + step.value) / ENDS.length;
    }
  }
  return runs as HeatRuns;
}
