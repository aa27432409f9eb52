import { formatAmount, type PointReport } from '@furrow/engine';
import { type BayScale, bayPlace, bayPoint } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { useRef } from 'preact/hooks';
import { useUnits } from '../../ui/theme/index.ts';
import { type Movable, placeAfterKey } from './movable.ts';

interface BayHandleProps {
  readonly movable: Movable;
  /** Where it is shown [m]. */
  readonly at: PointReport;
  readonly scale: BayScale;
  readonly onDrag: (to: PointReport) => void;
  readonly onSettle: (to: PointReport) => void;
  readonly onGiveUp: () => void;
}

/** Handle of something on the plan: dragged by mouse or finger, or moved by the arrow keys. */
export function BayHandle({ movable, at, scale, onDrag, onSettle, onGiveUp }: BayHandleProps): VNode {
  const units = useUnits();
  const grip = useRef<{ readonly x: number; readonly y: number; readonly from: PointReport } | undefined>(
    undefined,
  );
  const { x, y } = bayPoint(scale, at);
  const length = (metres: number): string => formatAmount(metres, 'length', units);
  const placeOf = (event: PointerEvent): PointReport | undefined => {
    if (grip.current === undefined) return undefined;
    const { from } = grip.current;
    const start = bayPoint(scale, from);
    return inside(
      scale,
      bayPlace(scale, {
        x: start.x + event.clientX - grip.current.x,
        y: start.y + event.clientY - grip.current.y,
      }),
    );
  };
  return (
    <button
      type="button"
      class={`bay-handle bay-handle-${movable.points.length > 1 ? 'area' : 'point'}`}
      style={{ left: `${x}px`, top: `${y}px` }}
      aria-label={`Move ${movable.title}: ${length(at.x_m)} across, ${length(at.y_m)} up`}
      onKeyDown={(event) => {
        const to = placeAfterKey(event.key, event.shiftKey, at, units);
        if (to !== undefined) {
          event.preventDefault();
          onSettle(inside(scale, to));
        } else if (event.key === 'Escape' && grip.current !== undefined) {
          grip.current = undefined;
          onGiveUp();
        }
      }}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        grip.current = { x: event.clientX, y: event.clientY, from: at };
      }}
      onPointerMove={(event) => {
        const to = placeOf(event);
        if (to !== undefined) onDrag(to);
      }}
      onPointerUp={(event) => {
        const to = placeOf(event);
        const moved =
          grip.current !== undefined &&
          Math.hypot(event.clientX - grip.current.x, event.clientY - grip.current.y) > 2;
        grip.current = undefined;
        if (to !== undefined && moved) onSettle(to);
        else onGiveUp();
      }}
      onPointerCancel={() => {
        grip.current = undefined;
        onGiveUp();
      }}
    >
      <span aria-hidden="true" />
    </button>
  );
}

/** A place kept on the sheet of the plan. */
function inside({ least, most }: BayScale, { x_m, y_m }: PointReport): PointReport {
  return {
    x_m: Math.min(most.x_m, Math.max(least.x_m, x_m)),
    y_m: Math.min(most.y_m, Math.max(least.y_m, y_m)),
  };
}
