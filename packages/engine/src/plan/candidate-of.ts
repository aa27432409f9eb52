import type { Candidate } from '../limit/index.ts';
import { PASS_DEPTH_MOST } from '../removal/index.ts';
import { middleDepth } from './law.ts';
import type { Setup } from './run-plan.ts';
import type { SolveTask } from './solve.ts';
import { RUN_IN_SHARE } from './way.ts';

/** One setting of a plan, and what it is expected to cut. */
export interface PlanSetting {
  /** ln specific energy [-]. */
  readonly logEnergy: number;
  /** Depth of the pass in the middle of what is expected [m]. */
  readonly depth: number;
}

/** Every setting that a plan may be run at: those of its tables cut, in the shop that reads so, what the plan aims at. */
export function settingsOf(setup: Setup, target: number): PlanSetting[] {
  const { way, course } = setup;
  const settings: PlanSetting[] = [];
  const cuts =
    way.tryout?.kind === 'run_in'
      ? [target, (1 - RUN_IN_SHARE) * target]
      : way.shares.map((share) => share * target);
  course.middle.forEach((logEnergy, layer) => {
    settings.push({ logEnergy, depth: cuts[layer]! });
  });
  if (way.tryout?.kind === 'run_in')
    settings.push({ logEnergy: course.tryoutEnergy, depth: RUN_IN_SHARE * target });
  for (const row of course.tryoutTable?.rows ?? []) {
    row.logEnergy.forEach((logEnergy, index) => {
      settings.push({ logEnergy, depth: row.cuts[index]! });
    });
  }
  course.stopTables.forEach((table, layer) => {
    for (const row of table?.rows ?? []) {
      const [change] = row.logEnergy;
      if (change !== undefined)
        settings.push({ logEnergy: course.middle[layer - 1]! + change, depth: row.cuts[0]! });
    }
  });
  return settings;
}

/** The slowest and the quickest setting of a plan, and the one that cuts most, as the limit functions see them. */
export function candidatesOf(setup: Setup, task: SolveTask, passWidth: number): Candidate[] {
  const { rig } = setup;
  const { law } = task.tables;
  const [low, high] = rig.energyRange;
  const target = setup.course.targets.at(-1)!;
  const settings = settingsOf(setup, target);
  const by = (better: (a: PlanSetting, b: PlanSetting) => boolean): PlanSetting =>
    settings.reduce((best, each) => (better(each, best) ? each : best));
  const chosen = new Set([
    by((a, b) => a.logEnergy > b.logEnergy),
    by((a, b) => a.depth > b.depth || (a.depth === b.depth && a.logEnergy < b.logEnergy)),
    by((a, b) => a.logEnergy < b.logEnergy),
  ]);
  return [...chosen].map(({ logEnergy, depth }) => {
    const held = Math.min(high, Math.max(low, logEnergy));
    // A setting fixed by a lock may cut something else than was aimed at.
    const fixed = high - low < 1e-9;
    const median = rig.electrode.diameter * Math.exp(middleDepth(law, held, rig.angleTerm));
    return candidateAt(setup, task, passWidth, { logEnergy: held, depth: fixed ? median : depth });
  });
}

/**
 * One setting of a plan as the limit functions see it: at the depth that it cuts in a middle shop, or at the one that
 * the plan aims at where that is more.
 */
export function candidateAt(
  { rig, way }: Setup,
  task: SolveTask,
  passWidth: number,
  { logEnergy, depth }: PlanSetting,
): Candidate {
  const { diameter } = rig.electrode;
  const median = diameter * Math.exp(middleDepth(task.tables.law, logEnergy, rig.angleTerm));
  return {
    electrode: rig.electrode,
    current: rig.current,
    voltage: rig.voltage,
    pushAngle: Math.PI / 4 + (rig.angleTerm * Math.PI) / 12,
    travel: rig.unitTravel * Math.exp(-logEnergy),
    tracks: rig.pattern.tracks,
    layers: way.shares.length,
    passLength: task.run.passLength,
    passDepth: Math.max(depth, Math.min(median, PASS_DEPTH_MOST * diameter)),
    passWidth,
  };
}
