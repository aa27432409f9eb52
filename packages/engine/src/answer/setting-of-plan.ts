import type { Job } from '../job/index.ts';
import type { Candidate } from '../limit/index.ts';
import type { Plan, SupplySetting } from '../result/index.ts';

const MM = 1e-3;
const MM_PER_MIN = MM / 60;

/** The heaviest pass of a plan as the limit functions see it: its greatest current at the slowest travel it may be run at. */
export function candidateOfPlan(plan: Plan, job: Job): Candidate {
  const first = plan.passes.reduce((most, pass) => (pass.current_A > most.current_A ? pass : most));
  const travels = [
    ...plan.passes.map((pass) => pass.travel_mm_per_min),
    ...plan.gauge_stops.flatMap(({ table }) => table.flatMap((row) => row.travel_mm_per_min ?? [])),
  ];
  const diameter = plan.electrode_diameter_mm * MM;
  const electrode = job.kit.electrodes.find((each) => Math.abs(each.diameter - diameter) < 1e-6);
  if (electrode === undefined) throw new Error('a plan uses an electrode that its job does not have');
  return {
    electrode,
    current: first.current_A,
    voltage: first.arc_voltage_V,
    pushAngle: job.kit.push_angle,
    travel: Math.min(...travels) * MM_PER_MIN,
    tracks: plan.tracks,
    layers: plan.layers,
    passLength: plan.pass_length_mm * MM,
    passDepth: Math.max(...plan.passes.map((pass) => pass.depth_mm.p50)) * MM,
    passWidth: plan.width_mm.p50 * MM,
  };
}

/** The setting as it is told. */
export function settingOf(candidate: Candidate, plan: Plan, of: SupplySetting['of']): SupplySetting {
  return {
    of,
    electrode_diameter_mm: plan.electrode_diameter_mm,
    current_A: candidate.current,
    arc_voltage_V: candidate.voltage,
    travel_mm_per_min: candidate.travel / MM_PER_MIN,
    pass_length_mm: plan.pass_length_mm,
    passes: plan.passes.length,
    pass_time_s: candidate.passLength / candidate.travel,
  };
}
