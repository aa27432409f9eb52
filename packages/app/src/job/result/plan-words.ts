import { formatStated, type Plan, type UnitSystem } from '@furrow/engine';

/** The plan's travel: one value, or the least and the greatest of its passes. */
export function travelText(plan: Plan, units: UnitSystem): string {
  const travels = plan.passes.map((pass) => pass.travel_mm_per_min);
  const [least, most] = [Math.min(...travels), Math.max(...travels)];
  const [low, high] = [formatStated(least, 'mm/min', units), formatStated(most, 'mm/min', units)];
  return low === high ? low : `${low.split(' ')[0]} to ${high}`;
}

/** The plan's current, as its passes share it. */
export function currentText(plan: Plan, units: UnitSystem): string {
  const currents = [...new Set(plan.passes.map((pass) => formatStated(pass.current_A, 'A', units)))];
  return currents.join(', ');
}

/** The least of the chances that the job asks for. */
export function assuranceOf(plan: Plan): number {
  const { depth_reached, not_too_deep } = plan.assurance;
  return Math.min(depth_reached, not_too_deep);
}

/** A number with its noun. */
export function counted(count: number, noun: string): string {
  if (count === 1) return `1 ${noun}`;
  return `${count} ${noun}${/(s|ss)$/u.test(noun) ? 'es' : 's'}`;
}
