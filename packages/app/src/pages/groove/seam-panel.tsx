import type { SurveySeam } from '@furrow/engine';
import { type SeamCurve, seamCurveDrawing } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { DrawingView, NotReadYet, useSize } from '../../ui/drawing/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

const HEIGHTS: Readonly<Record<SeamCurve, number>> = { depth: 340, width: 220, remaining: 220 };

/** The depth along the seam with its band, readings and verdicts; width and plate left below it, on the same length. */
export function SeamPanel({ seam }: { readonly seam: SurveySeam }): VNode {
  const from = seam.prediction === 'run' ? 'the log of the run' : 'the plan';
  return (
    <section class="panel groove-seam" aria-labelledby="seam-title">
      <header class="panel-head">
        <h2 id="seam-title">Depth along the seam</h2>
        <p class="caption">From {from} and every reading.</p>
      </header>
      <Curve seam={seam} of="depth" />
      <h3>Width along the seam</h3>
      {seam.width.readings > 0 ? null : (
        <p class="aside">No width that counts was measured: this is what {from} says alone.</p>
      )}
      <Curve seam={seam} of="width" />
      <h3>Plate left under the groove</h3>
      <Curve seam={seam} of="remaining" />
    </section>
  );
}

function Curve({ seam, of }: { readonly seam: SurveySeam; readonly of: SeamCurve }): VNode {
  const units = useUnits();
  const [box, { width }] = useSize<HTMLDivElement>();
  const drawing = useMemo(
    () => (width === 0 ? undefined : seamCurveDrawing({ seam, of, units, width, height: HEIGHTS[of] })),
    [seam, of, units, width],
  );
  return (
    <div ref={box} class={`drawing-box groove-seam-box groove-seam-${of}`}>
      {drawing === undefined ? <NotReadYet /> : <DrawingView drawing={drawing} />}
    </div>
  );
}
