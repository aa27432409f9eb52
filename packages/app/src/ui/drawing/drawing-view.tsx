import { type Drawing, type DrawingPoint, dimensionArrows, type Mark } from '@furrow/papers/drawing';
import type { VNode } from 'preact';

interface DrawingViewProps {
  readonly drawing: Drawing;
  readonly class?: string;
}

/** Shows a drawing as SVG; looks come from the classes of its marks. */
export function DrawingView({ drawing, class: name }: DrawingViewProps): VNode {
  const { width, height, title, description, marks } = drawing;
  return (
    <svg
      class={`drawing ${name ?? ''}`}
      viewBox={`0 0 ${rounded(width)} ${rounded(height)}`}
      width={width}
      height={height}
      role="img"
      aria-label={`${title}. ${description}`}
    >
      {marks.map(markView)}
    </svg>
  );
}

function markView(mark: Mark): VNode {
  const name = `mark mark-${mark.kind} mark-${mark.role}`;
  switch (mark.kind) {
    case 'polyline':
      return <polyline class={name} points={points(mark.points)} />;
    case 'area':
      return <polygon class={name} points={points(mark.points)} />;
    case 'line':
    case 'tick':
      return <line class={name} {...ends(mark.from, mark.to)} />;
    case 'text':
      return (
        <text
          class={name}
          x={rounded(mark.at.x)}
          y={rounded(mark.at.y)}
          text-anchor={mark.anchor}
          font-size={rounded(mark.size)}
        >
          {mark.text}
        </text>
      );
    case 'dimension':
      return (
        <g class={name}>
          <line {...ends(mark.from, mark.to)} />
          {dimensionArrows(mark).map((arrow) => (
            <polygon points={points(arrow)} />
          ))}
        </g>
      );
  }
}

function ends(from: DrawingPoint, to: DrawingPoint): Record<'x1' | 'y1' | 'x2' | 'y2', number> {
  return { x1: rounded(from.x), y1: rounded(from.y), x2: rounded(to.x), y2: rounded(to.y) };
}

function points(list: readonly DrawingPoint[]): string {
  return list.map(({ x, y }) => `${rounded(x)},${rounded(y)}`).join(' ');
}

/** Hundredths of a pixel: finer than any screen shows. */
function rounded(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}
