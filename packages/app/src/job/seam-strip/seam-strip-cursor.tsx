import { type Job, type Plan, shownNumber } from '@furrow/engine';
import { axisPlaceText, type SeamStripAxis, seamStripX } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { useUnits } from '../../ui/theme/index.ts';
import { placeText } from '../place/index.ts';
import { cutPlace, useBench, useBenchState } from '../state/index.ts';
import { cursorAfterKey } from './cursor-step.ts';

/** How far the line begins above the drawing: room for its label, as the styles leave it [px]. */
const ABOVE = 18;

interface SeamStripCursorProps {
  readonly axis: SeamStripAxis;
  readonly job: Job;
  readonly plan: Plan | undefined;
}

/** The line across all lanes that says where the section is cut; worked by mouse, finger or keys. */
export function SeamStripCursor({ axis, job, plan }: SeamStripCursorProps): VNode {
  const bench = useBench();
  const units = useUnits();
  const cut = useBenchState(cutPlace);
  const place = Math.min(axis.to, Math.max(axis.from, cut));
  const shown = (at: number): number => Math.round(shownNumber(at, 'length', units));

  const moveTo = (event: PointerEvent & { readonly currentTarget: HTMLElement }): void => {
    const { left, width } = event.currentTarget.getBoundingClientRect();
    const share = Math.min(1, Math.max(0, (event.clientX - left) / width));
    bench.moveCursor(axis.from + share * (axis.to - axis.from));
  };
  const onKey = (event: KeyboardEvent): void => {
    const next = cursorAfterKey(event.key, place, axis);
    if (next === undefined) return;
    event.preventDefault();
    bench.moveCursor(next);
  };
  const label = axisPlaceText(axis.to - axis.from, place, units);
  const late = place > (axis.from + axis.to) / 2;
  return (
    <div
      class="seam-strip-cursor"
      role="slider"
      tabIndex={0}
      aria-label="Place along the seam"
      aria-valuemin={shown(axis.from)}
      aria-valuemax={shown(axis.to)}
      aria-valuenow={shown(place)}
      aria-valuetext={placeText(job, plan, place, units)}
      style={{ left: `${axis.left}px`, width: `${axis.right - axis.left}px` }}
      onKeyDown={onKey}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        moveTo(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) moveTo(event);
      }}
    >
      <span
        class="seam-strip-cursor-line"
        style={{ left: `${seamStripX(axis, place) - axis.left}px`, height: `${axis.foot + ABOVE}px` }}
      >
        <span class={`seam-strip-cursor-label${late ? ' late' : ''}`}>{label}</span>
      </span>
    </div>
  );
}
