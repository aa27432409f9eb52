import {
  type Channel,
  formatAmount,
  formatStated,
  fromUnit,
  type LogTrace,
  type RunReport,
  TRACE_CHANNELS,
  type UnitSystem,
  type Written,
} from '@furrow/engine';
import { elapsedWords } from '@furrow/papers';
import type { VNode } from 'preact';
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { useSize } from '../../ui/drawing/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { depthAt } from './depth-at.ts';
import { groupPlaces } from './group-places.ts';
import { laneColumns } from './lane-columns.ts';
import {
  inkOf,
  LANE,
  paintDepth,
  paintPasses,
  paintReadings,
  passRows,
  type StripInk,
} from './paint-strip.ts';
import { useKept } from './run-context.ts';
import { StripControls } from './strip-controls.tsx';
import {
  channelPyramid,
  type GroupPlaces,
  nearestGroup,
  type PlacePyramid,
  placePyramid,
} from './trace-pyramid.ts';
import type { StripView } from './use-strip-view.ts';

interface RunStripProps {
  readonly report: Written<RunReport>;
  readonly trace: LogTrace;
  readonly view: StripView;
}

/** How each reading is called and written. */
const READINGS = {
  voltage_V: { name: 'Volts', kind: 'voltage' },
  current_A: { name: 'Amps', kind: 'current' },
  travel_m_per_s: { name: 'Travel', kind: 'speed' },
  position_m: { name: 'Position', kind: 'seam_place' },
  feed_m_per_s: { name: 'Feed', kind: 'speed' },
  air_pressure_Pa: { name: 'Air', kind: 'pressure' },
  air_flow_m3_per_s: { name: 'Air flow', kind: 'air_flow' },
} as const satisfies Record<Channel, unknown>;

/** Step of the cursor by an arrow key, as a share of what is seen. */
const STEP = 0.01;

/** The seam strip of the run: depth, passes with their events, and the readings along seam or time. */
export function RunStrip({ report, trace, view }: RunStripProps): VNode {
  const units = useUnits();
  const [box, { width: outer }] = useSize<HTMLDivElement>();
  const canvas = useRef<HTMLCanvasElement>(null);
  const { axis, pass, from, to, cursor } = view;
  const places = useMemo(() => groupPlaces(trace, report, axis, pass), [trace, report, axis, pass]);
  const channels = TRACE_CHANNELS.filter(
    (channel) => trace.channels[channel] !== undefined && (channel !== 'position_m' || axis === 'time'),
  );
  const width = Math.max(0, Math.floor(outer) - LANE.left - 8);
  const depthTop = 0;
  const passTop = axis === 'seam' && report.depth.length > 0 ? LANE.depth + LANE.between : 0;
  const beside = useRunsBeside();
  const rows = [
    ...passRows(report),
    ...(axis === 'seam' ? beside.flatMap(({ name, found }) => passRows(found, name)) : []),
  ];
  const readingTop = passTop + rows.length * LANE.passes + LANE.between;
  const height = readingTop + channels.length * (LANE.reading + LANE.between);
  // they do not change while the strip is moved, and a long log has many groups
  const scales = useMemo(
    () => new Map(channels.map((channel) => [channel, scaleOf(trace, channel, places)])),
    [trace, places],
  );
  const levels = useMemo(
    () =>
      new Map(channels.map((channel) => [channel, channelPyramid(trace.channels[channel]!, trace.silent)])),
    [trace, axis],
  );
  const placesAt = useMemo(() => placePyramid(places), [places]);
  const ink = useInk(canvas);
  const x = (at: number): number => LANE.left + ((at - from) / (to - from)) * width;

  // in the frame in which the cursor and its words move
  useLayoutEffect(() => {
    const element = canvas.current;
    const context = element?.getContext('2d');
    if (!element || !context || ink === undefined || width === 0) return;
    const ratio = window.devicePixelRatio || 1;
    const [wide, high] = [Math.round(outer * ratio), Math.round(height * ratio)];
    // a canvas that is given a size is made anew, which takes longer than to wipe it
    if (element.width !== wide || element.height !== high) {
      element.width = wide;
      element.height = high;
    }
    context.setTransform(ratio, 0, 0, ratio, 0, 0);
    context.clearRect(0, 0, outer, height);
    context.font = ink.font;
    if (passTop > 0) {
      const label = (mm: number): string => formatStated(mm, 'mm', units);
      paintDepth(context, { report, x }, depthTop, width, ink, label);
      context.fillStyle = ink.ink;
      context.textBaseline = 'middle';
      context.fillText('Depth', LANE.left - 6, depthTop + LANE.depth / 2);
    }
    const spanOf: Parameters<typeof paintPasses>[2] = (of) => {
      if (axis === 'time') return [x(of.start_s), x(of.end_s)];
      return of.from_mm === null || of.to_mm === null
        ? undefined
        : [x(fromUnit(of.from_mm, 'mm')), x(fromUnit(of.to_mm, 'mm'))];
    };
    paintPasses(context, rows, spanOf, passTop, width, ink);
    channels.forEach((channel, lane) => {
      const { kind } = READINGS[channel];
      const columns = laneColumns(levels.get(channel)!, placesAt, [from, to], width);
      const [least, most] = scales.get(channel)!;
      const labels = [formatAmount(least, kind, units), formatAmount(most, kind, units)] as const;
      const top = readingTop + lane * (LANE.reading + LANE.between);
      paintReadings(context, { columns, least, most, labels }, top, width, ink);
      context.fillStyle = ink.ink;
      context.textBaseline = 'middle';
      context.fillText(READINGS[channel].name, LANE.left - 6, top + LANE.reading / 2);
    });
  });

  const at = (event: PointerEvent | WheelEvent, target: Element): number => {
    const { left } = target.getBoundingClientRect();
    return from + ((event.clientX - left - LANE.left) / width) * (to - from);
  };
  const fingers = useRef(new Map<number, number>());
  const onKey = (event: KeyboardEvent): void => {
    const span = to - from;
    const acts: Readonly<Record<string, () => void>> = {
      ArrowLeft: () => view.setCursor(Math.max(view.least, cursor - STEP * span)),
      ArrowRight: () => view.setCursor(Math.min(view.most, cursor + STEP * span)),
      Home: () => view.setCursor(view.least),
      End: () => view.setCursor(view.most),
      PageUp: () => view.pan(-0.5),
      PageDown: () => view.pan(0.5),
      '+': () => view.zoom(0.5, cursor),
      '-': () => view.zoom(2, cursor),
      '0': view.whole,
    };
    const act = acts[event.key];
    if (act === undefined) return;
    event.preventDefault();
    act();
  };
  const words = cursorWords(report, trace, placesAt, view, units);
  return (
    <section class="panel run-strip" aria-labelledby="run-strip-title">
      <header class="panel-head">
        <h2 id="run-strip-title">Seam strip of the run</h2>
        <p class="caption">
          Drag or use the arrow keys to move the cursor; + and − zoom, page keys move, 0 shows all.
          {trace.rowsEach > 1
            ? ` Drawn by groups of ${trace.rowsEach} rows with their least and greatest value.`
            : ''}
        </p>
      </header>
      <StripControls report={report} view={view} />
      <div ref={box} class="run-strip-box">
        <div aria-hidden="true">
          <canvas ref={canvas} style={{ width: `${outer}px`, height: `${height}px` }} />
        </div>
        <div
          class="run-strip-cursor"
          role="slider"
          tabIndex={0}
          aria-label={axis === 'seam' ? 'Place along the seam' : 'Time of the log'}
          aria-valuemin={Math.round(view.least * 1000)}
          aria-valuemax={Math.round(view.most * 1000)}
          aria-valuenow={Math.round(cursor * 1000)}
          aria-valuetext={words.join(', ')}
          onKeyDown={onKey}
          onWheel={(event) => {
            event.preventDefault();
            if (Math.abs(event.deltaX) > Math.abs(event.deltaY)) view.pan(event.deltaX / width);
            else view.zoom(event.deltaY > 0 ? 1.25 : 0.8, at(event, event.currentTarget));
          }}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            fingers.current.set(event.pointerId, event.clientX);
            if (fingers.current.size === 1) view.setCursor(at(event, event.currentTarget));
          }}
          onPointerMove={(event) => {
            const before = fingers.current;
            if (!before.has(event.pointerId)) return;
            const apart = spread(before);
            before.set(event.pointerId, event.clientX);
            if (before.size === 1) view.setCursor(at(event, event.currentTarget));
            else if (apart > 0 && spread(before) > 0)
              view.zoom(apart / spread(before), at(event, event.currentTarget));
          }}
          onPointerUp={(event) => fingers.current.delete(event.pointerId)}
          onPointerCancel={(event) => fingers.current.delete(event.pointerId)}
        >
          {cursor >= from && cursor <= to ? (
            <span class="run-strip-line" style={{ left: `${x(cursor)}px`, height: `${height}px` }} />
          ) : null}
        </div>
      </div>
      <p class="run-strip-words" aria-live="polite">
        {words.join(' · ')}
      </p>
    </section>
  );
}

/** Colours and letters of the strip, read anew when the theme changes and not while the strip is moved. */
function useInk(canvas: { readonly current: HTMLCanvasElement | null }): StripInk | undefined {
  const [ink, setInk] = useState<StripInk>();
  useLayoutEffect(() => {
    const read = (): void => {
      if (canvas.current !== null) setInk(inkOf(canvas.current));
    };
    read();
    const watch = new MutationObserver(read);
    watch.observe(document.documentElement, { attributes: true });
    return () => watch.disconnect();
  }, [canvas]);
  return ink;
}

/** Runs whose passes are shown under those of the log that is open. */
function useRunsBeside() {
  const runs = useKept((state) => state.runs);
  const beside = useKept((state) => state.beside);
  return (runs ?? []).flatMap(({ id, name, review }) =>
    beside.includes(id) && review?.summary != null ? [{ name, found: review.summary }] : [],
  );
}

/** How far apart two fingers are [px]. */
function spread(fingers: ReadonlyMap<number, number>): number {
  const [a = 0, b = 0] = [...fingers.values()];
  return Math.abs(a - b);
}

/** Least and greatest value of a reading on the axis, with a little room; it does not change with the zoom. */
function scaleOf(trace: LogTrace, channel: Channel, places: GroupPlaces): readonly [number, number] {
  const { least, most } = trace.channels[channel]!;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let group = 0; group < places.length; group += 1) {
    if (Number.isNaN(places[group]!) || Number.isNaN(least[group]!)) continue;
    if (least[group]! < low) low = least[group]!;
    if (most[group]! > high) high = most[group]!;
  }
  if (!(high >= low)) return [0, 1];
  const base = low > 0 && low < 0.5 * high ? 0 : low;
  return [base, high === base ? base + 1 : high];
}

/** What stands at the cursor, in words. */
function cursorWords(
  report: Written<RunReport>,
  trace: LogTrace,
  places: PlacePyramid,
  { axis, cursor, pass }: StripView,
  units: UnitSystem,
): string[] {
  const where =
    axis === 'seam' ? `${formatAmount(cursor, 'seam_place', units)}, pass ${pass}` : elapsedWords(cursor);
  const group = nearestGroup(places, cursor);
  const readings =
    group === undefined
      ? []
      : TRACE_CHANNELS.flatMap((channel) => {
          const values = trace.channels[channel];
          if (values === undefined || channel === 'position_m') return [];
          const { name, kind } = READINGS[channel];
          const [least, most] = [values.least[group]!, values.most[group]!];
          if (Number.isNaN(least)) return [`${name} not read`];
          const low = formatAmount(least, kind, units);
          const high = formatAmount(most, kind, units);
          return [low === high ? `${name} ${low}` : `${name} ${low} to ${high}`];
        });
  const depth = axis === 'seam' ? depthAt(report.depth, cursor) : undefined;
  const band =
    depth === undefined
      ? []
      : [
          `depth predicted ${formatStated(depth.p50_mm, 'mm', units)} (90 %: ${formatStated(depth.p05_mm, 'mm', units)} to ${formatStated(depth.p95_mm, 'mm', units)})`,
        ];
  return [where, ...band, ...readings];
}
