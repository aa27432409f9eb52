import type { SurveySeam } from '@furrow/engine';
import { seamDepthDrawing } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { DrawingView, NotReadYet, useSize } from '../../ui/drawing/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

const HEIGHT = 340;

/** The depth along the seam with its band, readings and verdicts. */
export function SeamPanel({ seam }: { readonly seam: SurveySeam }): VNode {
  const units = useUnits();
  const [box, { width }] = useSize<HTMLDivElement>();
  const drawing = useMemo(
    () => (width === 0 ? undefined : seamDepthDrawing({ seam, units, width, height: HEIGHT })),
    [seam, units, width],
  );
  return (
    <section class="panel groove-seam" aria-labelledby="seam-title">
      <header class="panel-head">
        <h2 id="seam-title">Depth along the seam</h2>
        <p class="caption">
          {seam.prediction === 'run'
            ? 'From the log of the run and every reading.'
            : 'From the plan and every reading.'}
        </p>
      </header>
      <div ref={box} class="drawing-box groove-seam-box">
        {drawing === undefined ? <NotReadYet /> : <DrawingView drawing={drawing} />}
      </div>
    </section>
  );
}
