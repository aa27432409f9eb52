import { sectionDrawing } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { useLayoutEffect, useMemo } from 'preact/hooks';
import { DrawingView, NotReadYet, useSize } from '../../ui/drawing/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { placeText } from '../place/index.ts';
import { cutPlace, isOutdated, markSection, useBenchState } from '../state/index.ts';

/** The groove cut across at the seam strip's cursor; it follows each valid edit at once, the floor when it is planned. */
export function SectionView(): VNode {
  const read = useBenchState((state) => state.read);
  const planned = useBenchState((state) => state.planned);
  const outdated = useBenchState(isOutdated);
  const [box, { width, height }] = useSize<HTMLDivElement>();
  const units = useUnits();
  const plan = planned?.answer.plan;
  const edit = useBenchState((state) => (state.issues.length === 0 ? state.edit : undefined));
  const drawing = useMemo(() => {
    if (read === undefined || width === 0) return undefined;
    const { groove, plate } = read.job;
    return sectionDrawing({ groove, plate, plan, units, width, height });
  }, [read, plan, units, width, height]);
  useLayoutEffect(() => {
    if (edit !== undefined && drawing !== undefined) markSection(edit);
  }, [edit, drawing !== undefined]);
  return (
    <section class="panel section-panel" aria-labelledby="section-title">
      <header class="panel-head">
        <h2 id="section-title">Section</h2>
        <SectionCaption />
      </header>
      <div ref={box} class={`drawing-box section-box${outdated ? ' floor-outdated' : ''}`}>
        {drawing === undefined ? <NotReadYet /> : <DrawingView drawing={drawing} />}
      </div>
    </section>
  );
}

function SectionCaption(): VNode | null {
  const read = useBenchState((state) => state.read);
  const plan = useBenchState((state) => state.planned?.answer.plan);
  const cut = useBenchState(cutPlace);
  const units = useUnits();
  if (read === undefined) return null;
  return <p class="caption">Cut across {placeText(read.job, plan, cut, units)}.</p>;
}
