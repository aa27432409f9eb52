import { formatStated, type Plan, type RunReport, type Written } from '@furrow/engine';
import { sectionDrawing } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { DrawingView, useSize } from '../../ui/drawing/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { depthAt } from './depth-at.ts';
import type { ShownRun } from './run-state.ts';
import type { StripView } from './use-strip-view.ts';

interface RunSectionProps {
  readonly shown: ShownRun;
  readonly report: Written<RunReport>;
  readonly view: StripView;
}

/** The groove cut across at the strip's cursor: the floor that the log leads one to expect beside what is wanted. */
export function RunSection({ shown, report, view }: RunSectionProps): VNode | null {
  const units = useUnits();
  const [box, { width, height }] = useSize<HTMLDivElement>();
  const { read, answer } = shown.planned;
  const at = view.axis === 'seam' ? depthAt(report.depth, view.cursor) : undefined;
  const { plan } = answer;
  const drawing = useMemo(() => {
    if (plan === undefined || at === undefined || width === 0) return undefined;
    const { groove, plate } = read.job;
    return sectionDrawing({ groove, plate, plan: planAtDepth(plan, at), units, width, height });
  }, [plan, at, read, units, width, height]);
  if (plan === undefined || report.depth.length === 0) return null;
  return (
    <section class="panel run-section" aria-labelledby="run-section-title">
      <header class="panel-head">
        <h2 id="run-section-title">Section at the cursor</h2>
        <p class="caption">
          {at === undefined
            ? 'Along the seam the section is drawn where the cursor stands.'
            : `At ${formatStated(at.at_mm, 'mm', units, 'seam_place')}: the shape as planned, as deep as the log leads one to expect (90 % band). Gauge it.`}
        </p>
      </header>
      <div ref={box} class="drawing-box run-section-box">
        {drawing === undefined ? null : <DrawingView drawing={drawing} />}
      </div>
    </section>
  );
}

/** The plan's section as deep as expected at a place: the shape is the plan's, which no log tells. */
export function planAtDepth(
  plan: Plan,
  { p05_mm: p05, p50_mm: p50, p95_mm: p95 }: Written<RunReport>['depth'][number],
): Plan {
  const { section, floor_depth_mm: floor, ligament_mm: ligament } = plan;
  const planned = Math.max(...section.depth_p50_mm, Number.EPSILON);
  const scaled = (depth: number): number[] => section.depth_p50_mm.map((each) => (each * depth) / planned);
  // where the plan's own floor is, the plate's back face is known from
  const left = (depth: number): number => ligament.p50 + floor.p50 - depth;
  return {
    ...plan,
    section: {
      ...section,
      depth_p05_mm: scaled(p05),
      depth_p50_mm: scaled(p50),
      depth_p95_mm: scaled(p95),
    },
    floor_depth_mm: { ...floor, p05, p50, p95 },
    ligament_mm: { ...ligament, p05: left(p95), p50: left(p50) },
  };
}
