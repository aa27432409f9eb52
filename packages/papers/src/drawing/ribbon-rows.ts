import type { GaugeStop, Plan, PlanPass } from '@furrow/engine';

/** One lane of the ribbon: a pass, or the stop to gauge after a layer. */
export type RibbonRow =
  | { readonly kind: 'pass'; readonly pass: PlanPass }
  | { readonly kind: 'gauge'; readonly stop: GaugeStop };

/** The lanes in the order of the work. */
export function ribbonRows(plan: Plan): RibbonRow[] {
  return plan.passes.flatMap((pass, index): RibbonRow[] => {
    const row: RibbonRow = { kind: 'pass', pass };
    if (plan.passes[index + 1]?.layer === pass.layer) return [row];
    const stops = plan.gauge_stops.filter((stop) => stop.after_layer === pass.layer);
    return [row, ...stops.map((stop): RibbonRow => ({ kind: 'gauge', stop }))];
  });
}
