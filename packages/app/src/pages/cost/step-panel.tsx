import type { CostReport } from '@furrow/engine';
import { costDrawing } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { DrawingView, useSize } from '../../ui/drawing/index.ts';
import { ScrollBox } from '../../ui/table/index.ts';

/** Width under which the picture scrolls instead of shrinking [px]. */
const WIDTH_LEAST = 620;

/** Where minutes and money go, step by step. */
export function StepPanel({ cost }: { readonly cost: CostReport }): VNode {
  const [box, { width }] = useSize<HTMLDivElement>();
  const drawing = costDrawing({ cost, width: Math.max(width, WIDTH_LEAST) });
  return (
    <section class="panel" aria-labelledby="steps-title">
      <header class="panel-head">
        <h2 id="steps-title">{drawing.title}</h2>
        <p class="caption">
          bars up to the median, whiskers to nine in ten; the figures behind them are averages, whose parts
          make up the whole
        </p>
      </header>
      <div ref={box} class="drawing-box">
        {width === 0 ? null : (
          <ScrollBox name={`${drawing.title}, drawing`}>
            <DrawingView class="cost-drawing" drawing={drawing} />
          </ScrollBox>
        )}
      </div>
    </section>
  );
}
