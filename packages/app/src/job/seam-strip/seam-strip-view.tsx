import { seamStripDrawing, seamStripScale } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { DrawingView, NotReadYet, useSize } from '../../ui/drawing/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { isOutdated, useBenchState } from '../state/index.ts';
import { SeamStripCursor } from './seam-strip-cursor.tsx';
import { SeamStripTorch } from './seam-strip-torch.tsx';

/** Least and greatest height of the seam strip, and what each lane adds [px]. */
const HEIGHT = { least: 120, most: 420, base: 92, lane: 26 };

interface SeamStripViewProps {
  /** Where the torch is at the moment that the page shows, on pages that follow time. */
  readonly torch?: { readonly place: number } | undefined;
}

/** The seam unrolled, with a cursor over all its lanes. */
export function SeamStripView({ torch }: SeamStripViewProps): VNode {
  const planned = useBenchState((state) => state.planned);
  const read = useBenchState((state) => state.read);
  const outdated = useBenchState(isOutdated);
  const [box, { width }] = useSize<HTMLDivElement>();
  const units = useUnits();
  // lanes belong to the job they were planned for; until there is one, the seam alone is drawn
  const job = planned?.read.job ?? read?.job;
  const plan = planned?.answer.plan;
  const drawn = useMemo(() => {
    if (job === undefined || width === 0) return undefined;
    const lanes = plan === undefined ? 1 : plan.passes.length + plan.gauge_stops.length;
    const height = Math.min(HEIGHT.most, Math.max(HEIGHT.least, HEIGHT.base + lanes * HEIGHT.lane));
    const input = { job, plan, units, width, height };
    return { drawing: seamStripDrawing(input), axis: seamStripScale(input) };
  }, [job, plan, units, width]);
  return (
    <section
      class={`panel seam-strip-panel${outdated ? ' outdated' : ''}`}
      aria-labelledby="seam-strip-title"
    >
      <header class="panel-head">
        <h2 id="seam-strip-title">Seam strip</h2>
        <p class="caption">The seam unrolled; drag or use the arrow keys to move the cut.</p>
      </header>
      <div ref={box} class="drawing-box seam-strip-box">
        {drawn === undefined ? <NotReadYet /> : <DrawingView drawing={drawn.drawing} />}
        {drawn === undefined || torch === undefined ? null : (
          <SeamStripTorch axis={drawn.axis} place={torch.place} />
        )}
        {drawn === undefined || job === undefined ? null : (
          <SeamStripCursor axis={drawn.axis} job={job} plan={plan} />
        )}
      </div>
    </section>
  );
}
