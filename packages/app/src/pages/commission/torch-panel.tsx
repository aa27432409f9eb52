import type { Answer, Plan, ReadJob } from '@furrow/engine';
import { torchDrawingOf, turningBlocks } from '@furrow/papers/blocks';
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { BlockList } from '../../ui/block/index.ts';
import { DrawingView, NotReadYet, useSize } from '../../ui/drawing/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

interface TorchPanelProps {
  readonly read: ReadJob;
  readonly answer: Answer;
  readonly plan: Plan;
}

/** Height of the drawing [CSS pixel]. */
const HEIGHT = 300;

/** How the torch stands to the plate for the first pass, to scale. */
export function TorchPanel({ read, answer, plan }: TorchPanelProps): VNode {
  const units = useUnits();
  const [box, { width }] = useSize<HTMLDivElement>();
  const drawing = useMemo(
    () => (width === 0 ? undefined : torchDrawingOf(read, answer, plan, units, { width, height: HEIGHT })),
    [read, answer, plan, units, width],
  );
  return (
    <section class="panel" aria-labelledby="torch-title">
      <header class="panel-head">
        <h2 id="torch-title">Torch</h2>
        <p class="caption">
          as it is set for the first pass, seen from the side; heads differ, their makers’ word goes first
        </p>
      </header>
      <div ref={box} class="drawing-box">
        {drawing === undefined ? <NotReadYet /> : <DrawingView drawing={drawing} />}
      </div>
      <BlockList blocks={turningBlocks(read, answer, plan, units)} />
    </section>
  );
}
