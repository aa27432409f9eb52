import { formatAmount, formatStated, fromUnit, type Job, type Plan, type UnitSystem } from '@furrow/engine';

/** Passes named one by one before the rest is only counted. */
const PASSES_NAMED = 4;

/** What is where at one place along the seam, in words: the place, the run-out's depth, the passes. */
export function placeText(job: Job, plan: Plan | undefined, place: number, units: UnitSystem): string {
  const where =
    Math.abs(place) < 5e-4 ? 'at the start' : `${formatAmount(place, 'length', units)} from the start`;
  const runOut =
    plan === undefined ? 0 : Math.max(0, (fromUnit(plan.pass_length_mm, 'mm') - job.seam.length) / 2);
  const outside = Math.max(-place, place - job.seam.length, 0);
  if (plan === undefined) return where;
  if (outside > 0 && runOut > 0) {
    const depth = job.groove.depth.wanted * Math.max(0, 1 - outside / runOut);
    return `${where}, in the run-out: about ${formatAmount(depth, 'depth', units)} deep`;
  }
  const named = plan.passes.slice(0, PASSES_NAMED).map((pass) => {
    const electrode = electrodeAt(plan, pass.number, place);
    const track = plan.tracks === 1 ? '' : ` at ${formatStated(pass.offset_mm, 'mm', units)}`;
    return `pass ${pass.number}${track} (layer ${pass.layer}, electrode no. ${electrode})`;
  });
  const more = plan.passes.length - named.length;
  return `${where}: ${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

/** Which electrode of the job burns at a place of a pass, counted from 1. */
export function electrodeAt(plan: Plan, pass: number, place: number): number {
  const before = plan.electrode_changes.filter(
    (change) => change.pass < pass || (change.pass === pass && fromUnit(change.at_mm, 'mm') <= place),
  );
  return before.length + 1;
}
