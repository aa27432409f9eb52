import type { SurveyReport } from '@furrow/engine';
import { gaugeLength, seamPlace } from '@furrow/papers';
import type { VNode } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { useMedia, useUnits } from '../../ui/theme/index.ts';

type Floor = NonNullable<SurveyReport['reading'][number]['floor']>;

/** Height of a map on the page [px]. */
const HEIGHT = 170;

/** The floor of each cloud, unrolled: the seam from left to right, across it from top to bottom, deeper is stronger. */
export function FloorPanel({ reading }: { readonly reading: SurveyReport['reading'] }): VNode | null {
  const maps = reading.flatMap(({ file, floor }) => (floor === null ? [] : [{ file, floor }]));
  if (maps.length === 0) return null;
  return (
    <section class="panel groove-floor" aria-labelledby="floor-title">
      <header class="panel-head">
        <h2 id="floor-title">Floor unrolled</h2>
        <p class="caption">
          The seam from left to right, across it from top to bottom; the stronger, the deeper.
        </p>
      </header>
      {maps.map(({ file, floor }) => (
        <FloorMap key={file} file={file} floor={floor} />
      ))}
    </section>
  );
}

function FloorMap({ file, floor }: { readonly file: string; readonly floor: Floor }): VNode {
  const units = useUnits();
  const dark = useMedia('(prefers-color-scheme: dark)');
  const canvas = useRef<HTMLCanvasElement>(null);
  const { most, at_mm, empty } = deepestOf(floor);
  const length = floor.along_mm * floor.columns;
  const width = floor.across_mm * floor.rows;
  useEffect(() => {
    const element = canvas.current;
    const context = element?.getContext('2d');
    if (element === null || context === null || context === undefined) return undefined;
    const paint = (): void => paintFloor(context, floor, most, getComputedStyle(element).color);
    paint();
    // the theme may change while the page stands
    const watch = new MutationObserver(paint);
    watch.observe(document.documentElement, { attributes: true });
    return () => watch.disconnect();
  }, [floor, most, dark]);
  const says =
    `Deepest on average ${gaugeLength(most, units)}, ${seamPlace(at_mm, units)} from where the cloud begins. ` +
    (empty === 0
      ? 'Points lie everywhere.'
      : `${Math.round(100 * empty)} % of the map has no points and is left empty.`);
  return (
    <figure class="groove-floor-map">
      <canvas
        ref={canvas}
        width={floor.columns}
        height={floor.rows}
        style={{ height: `${HEIGHT}px` }}
        role="img"
        aria-label={`Floor of ${file}, unrolled. ${says}`}
      />
      <div class="groove-floor-ends">
        <span>{seamPlace(0, units)}</span>
        <span>
          {file}, {gaugeLength(width, units)} across
        </span>
        <span>{seamPlace(length, units)}</span>
      </div>
      <figcaption>{says}</figcaption>
    </figure>
  );
}

/** The deepest cell, where it lies along the seam, and the share of cells without points. */
function deepestOf({ depth_mm, columns, along_mm }: Floor): {
  readonly most: number;
  readonly at_mm: number;
  readonly empty: number;
} {
  let at = 0;
  let empty = 0;
  depth_mm.forEach((depth, i) => {
    if (depth === null) empty += 1;
    else if (depth > (depth_mm[at] ?? 0)) at = i;
  });
  return {
    most: depth_mm[at] ?? 0,
    at_mm: ((at % columns) + 0.5) * along_mm,
    empty: empty / Math.max(1, depth_mm.length),
  };
}

/** One pixel a cell, in the ink of the page; the browser draws it large. */
function paintFloor(
  context: CanvasRenderingContext2D,
  { columns, rows, depth_mm }: Floor,
  most: number,
  ink: string,
): void {
  const [red = 0, green = 0, blue = 0] = (ink.match(/[\d.]+/gu) ?? []).map(Number);
  const image = context.createImageData(columns, rows);
  depth_mm.forEach((depth, i) => {
    if (depth === null) return;
    const share = Math.min(1, Math.max(0, depth / Math.max(most, 1e-9)));
    image.data.set([red, green, blue, 12 + Math.round(220 * share)], 4 * i);
  });
  context.putImageData(image, 0, 0);
}
