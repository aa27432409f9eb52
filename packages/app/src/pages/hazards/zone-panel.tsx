import { type FireZoneReport, formatStated } from '@furrow/engine';
import { fireZoneDrawing } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { useBenchState } from '../../job/state/index.ts';
import { DrawingView, useSize } from '../../ui/drawing/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** Greatest height of the plan [px]. */
const HEIGHT_MOST = 420;

/** The fire zone to scale, with what stands in the bay. */
export function ZonePanel({ zone }: { readonly zone: FireZoneReport }): VNode {
  const units = useUnits();
  const [box, { width }] = useSize<HTMLDivElement>();
  const bay = useBenchState((state) => state.planned?.answer.supply?.place?.bay);
  return (
    <section class="panel" aria-labelledby="zone-title">
      <header class="panel-head">
        <h2 id="zone-title">Fire zone</h2>
        <p class="caption">
          {zone.plan === 'bay'
            ? 'around the seam in the bay, to scale'
            : 'around a straight seam, to scale: no kit describes a bay'}
        </p>
      </header>
      <div ref={box} class="drawing-box">
        {width === 0 ? null : (
          <DrawingView
            drawing={fireZoneDrawing({
              zone,
              bay: zone.plan === 'bay' ? bay : undefined,
              units,
              width,
              heightMost: HEIGHT_MOST,
            })}
          />
        )}
      </div>
      <p>
        {zone.direction} Sparks may fly {formatStated(zone.up_m, 'm', units)} upwards and{' '}
        {formatStated(zone.down_m, 'm', units)} downwards. The lobe is the hull of the circle and the farthest
        point ahead; its width is a convention of the drawing.
      </p>
    </section>
  );
}
