import type { GaugeStop, Plan, PlanPass } from '@furrow/engine';

/** One lane of the seam strip: a pass, or the stop to gauge after a layer. */
export type SeamStripRow =
  | { readonly kind: 'pass'; readonly pass: PlanPass }
  | { readonly kind: 'gauge'; readonly stop: GaugeStop };

/** The lanes in the order of the work. */
export function seamStripRows(plan: Plan): SeamStripRow[] {
  return plan.passes.flatMap((pass, index): SeamStripRow[] => {
    const row: SeamStripRow = { kind: 'pass', pass };
    if (plan.passes[index + 1]?.layer === pass.layer) return [row];
    const stops = plan.gauge_stops.filter((stop) => stop.after_layer === pass.layer);
    return [row, ...stops.map((stop): SeamStripRow => ({ kind: 'gauge', stop }))];
  });
}
