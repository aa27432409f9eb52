import { type AirReport, formatStated } from '@furrow/engine';
import { airPathDrawing } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { DrawingView, useSize } from '../../ui/drawing/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** Width under which the drawing of the path scrolls instead of shrinking, by point [px]. */
const COLUMN_LEAST = 78;

/** The air from receiver to torch, drawn along its way. */
export function AirPanel({ air }: { readonly air: AirReport }): VNode {
  const units = useUnits();
  const [box, { width }] = useSize<HTMLDivElement>();
  const drawn = Math.max(width, COLUMN_LEAST * air.points.length);
  return (
    <section class="panel" aria-labelledby="air-title">
      <header class="panel-head">
        <h2 id="air-title">Air path</h2>
        <p class="caption">
          with {formatStated(air.receiver_kPa, 'kPa', units)} in the receiver, the lowest of a pass; dashed
          without flow, solid while the torch blows
        </p>
      </header>
      <div ref={box} class="drawing-box">
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keys */}
        <section class="scroll-x" aria-label="Air path, drawing" tabIndex={0}>
          {width === 0 ? null : (
            <DrawingView class="air-drawing" drawing={airPathDrawing({ air, units, width: drawn })} />
          )}
        </section>
      </div>
      <p>
        {air.regulating === null
          ? 'No regulator holds its pressure.'
          : `${air.regulating} holds its pressure.`}{' '}
        {air.choked.length === 0 ? null : `Choked: ${air.choked.join(', ')}.`}
      </p>
    </section>
  );
}
