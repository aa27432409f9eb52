import type { Candidate } from '../limit/index.ts';
import type { PlanOutcome } from './outcome.ts';

/**
 * The heaviest pass of a plan as limit functions see it: its greatest current at the slowest travel it may be run at.
 *
 * @param plan - the plan in SI [record], from `planJob`
 * @returns the setting [record]
 * @source none: bookkeeping
 * @example
 * const pass = { current: 900, voltage: 42, pushAngle: 0.8, travel: 0.01, depth: { p50: 0.005 } };
 * const plan = { electrode: { diameter: 0.0127 }, passes: [pass], stops: [{ table: [{ travel: 0.008 }, { travel: undefined }] }], pattern: { tracks: 1 }, layers: 1, passLength: 6, width: { p50: 0.018 } };
 * heaviestPass(plan).travel // => 0.008
 */
export function heaviestPass(plan: PlanOutcome): Candidate {
  const heaviest = plan.passes.reduce((most, pass) => (pass.current > most.current ? pass : most));
  const travels = [
    ...plan.passes.map(({ travel }) => travel),
    ...plan.stops.flatMap(({ table }) => table.flatMap(({ travel }) => travel ?? [])),
  ];
  return {
    electrode: plan.electrode,
    current: heaviest.current,
    voltage: heaviest.voltage,
    pushAngle: heaviest.pushAngle,
    travel: Math.min(...travels),
    tracks: plan.pattern.tracks,
    layers: plan.layers,
    passLength: plan.passLength,
    passDepth: Math.max(...plan.passes.map(({ depth }) => depth.p50)),
    passWidth: plan.width.p50,
  };
}
