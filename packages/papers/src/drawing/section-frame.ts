import { fromUnit, type Job, type Plan, targetOutline } from '@furrow/engine';

/** What the section is drawn of. */
export interface SectionSubject {
  readonly groove: Job['groove'];
  readonly plate: Job['plate'];
  readonly plan?: Plan | undefined;
  /** What was scanned, in the frame of the plate. */
  readonly measured?: MeasuredOutline | undefined;
}

/** A scanned section, points that count alone [mm]. */
export interface MeasuredOutline {
  readonly offset_mm: readonly number[];
  readonly depth_mm: readonly number[];
  /** Wild points, which do not count [mm]. */
  readonly outliers: { readonly offset_mm: readonly number[]; readonly depth_mm: readonly number[] };
}

/** The outlines of a section in metres; depth positive down. */
export interface SectionShape {
  readonly wanted: readonly OutlinePoint[];
  readonly least: readonly OutlinePoint[];
  readonly most: readonly OutlinePoint[];
  /** Predicted floor, where there is a plan. */
  readonly floor?: {
    readonly shallow: readonly OutlinePoint[];
    readonly median: readonly OutlinePoint[];
    readonly deep: readonly OutlinePoint[];
  };
  /** What was scanned of it, shoulders beside the groove included. */
  readonly measured?: readonly OutlinePoint[];
  /** Wild points of the scan, which do not count. */
  readonly wild: readonly OutlinePoint[];
  /** Half of the widest extent [m]. */
  readonly halfWidth: number;
  /** Deepest point of anything drawn [m]. */
  readonly deepest: number;
  /** Depth from which the ligament is counted: the expected floor, or the wanted one without a plan [m]. */
  readonly floorDepth: number;
}

/** A point of an outline [m]. */
export interface OutlinePoint {
  readonly offset: number;
  readonly depth: number;
}

/** Distance from the middle up to which a scan is drawn, in widths of the groove [-]. */
const SHOULDER = 0.9;

/** Gathers the outlines of the wanted groove and of the predicted floor. */
export function sectionShape({ groove, plan, measured }: SectionSubject): SectionShape {
  const wanted = targetOutline(groove, 'wanted');
  const least = targetOutline(groove, 'least');
  const most = targetOutline(groove, 'most');
  const band = plan?.section;
  const floor =
    band === undefined || band.offset_mm.length < 2
      ? undefined
      : {
          shallow: cutPart(outline(band.offset_mm, band.depth_p05_mm)),
          median: cutPart(outline(band.offset_mm, band.depth_p50_mm)),
          deep: cutPart(outline(band.offset_mm, band.depth_p95_mm)),
        };
  const reach = SHOULDER * groove.width.most;
  const near = ({ offset_mm, depth_mm }: Omit<MeasuredOutline, 'outliers'>): OutlinePoint[] =>
    outline(offset_mm, depth_mm).filter(({ offset }) => Math.abs(offset) <= reach);
  const scanned = measured === undefined ? undefined : near(measured);
  const all = [...wanted, ...most, ...(floor?.deep ?? []), ...(scanned ?? [])];
  return {
    wanted,
    least,
    most,
    ...(floor === undefined ? {} : { floor }),
    ...(scanned === undefined ? {} : { measured: scanned }),
    wild: measured === undefined ? [] : near(measured.outliers),
    halfWidth: Math.max(groove.width.most / 2, ...all.map((point) => Math.abs(point.offset))),
    deepest: Math.max(groove.depth.wanted, ...all.map((point) => point.depth)),
    floorDepth: plan === undefined ? groove.depth.wanted : fromUnit(plan.floor_depth_mm.p50, 'mm'),
  };
}

function outline(offsets: readonly number[], depths: readonly number[]): OutlinePoint[] {
  return offsets.map((offset, index) => ({
    offset: fromUnit(offset, 'mm'),
    depth: fromUnit(Math.max(0, depths[index] ?? 0), 'mm'),
  }));
}

/** The part of a floor that lies below the surface, from shoulder to shoulder. */
function cutPart(points: readonly OutlinePoint[]): readonly OutlinePoint[] {
  const first = points.findIndex((point) => point.depth > 0);
  const last = points.findLastIndex((point) => point.depth > 0);
  return first < 0 ? points : points.slice(Math.max(0, first - 1), last + 2);
}

/** Where metres of the section lie on the drawing: one scale in both directions. */
export interface SectionFrame {
  /** Drawing units per metre [1/m]. */
  readonly scale: number;
  /** Centre line [drawing unit]. */
  readonly centre: number;
  /** Plate's surface [drawing unit]. */
  readonly surface: number;
  /** Back face [drawing unit]. */
  readonly back: number;
  /** Upper and lower edge of the break, where the plate is too thick to be shown whole [drawing unit]. */
  readonly gap?: { readonly above: number; readonly below: number };
  /** Depth at which the shown upper part ends, and the lower one begins again [m]. */
  readonly shownTo: number;
  readonly shownFrom: number;
}

/** Space for the section on the drawing [drawing unit]. */
export interface SectionSpace {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Height of the gap of a break. */
  readonly gapHeight: number;
}

/** Share of the groove's depth shown below it before a break, and of plate shown at the back face. */
const BELOW_GROOVE = 0.55;
const AT_BACK = 0.4;

/** Chooses the scale, and a break where the whole plate would make the groove small. */
export function sectionFrame(shape: SectionShape, thickness: number, space: SectionSpace): SectionFrame {
  const { halfWidth, deepest } = shape;
  const centre = (space.left + space.right) / 2;
  const height = Math.max(1, space.bottom - space.top);
  const byWidth = Math.max(1, space.right - space.left) / (2 * halfWidth);
  const broken = (1 + BELOW_GROOVE + AT_BACK) * deepest;
  const whole = Math.min(byWidth, height / thickness);
  const brokenScale = Math.min(byWidth, Math.max(1, height - space.gapHeight) / broken);
  if (thickness <= 1.3 * broken || whole > 0.9 * brokenScale) {
    const surface = space.top + (height - thickness * whole) / 2;
    const back = surface + thickness * whole;
    return { scale: whole, centre, surface, back, shownTo: thickness, shownFrom: thickness };
  }
  // what the height leaves over goes into plate below the groove
  const spare = Math.max(0, (height - space.gapHeight) / brokenScale - broken);
  const shownTo = (1 + BELOW_GROOVE) * deepest + 0.7 * spare;
  const surface = space.top;
  const above = surface + shownTo * brokenScale;
  const used = (broken + spare) * brokenScale + space.gapHeight;
  return {
    scale: brokenScale,
    centre,
    surface,
    back: surface + used,
    gap: { above, below: above + space.gapHeight },
    shownTo,
    shownFrom: thickness - AT_BACK * deepest - 0.3 * spare,
  };
}

/** Height on the drawing of a depth; undefined inside a break. */
export function heightOf(frame: SectionFrame, thickness: number, depth: number): number | undefined {
  if (depth <= frame.shownTo) return frame.surface + depth * frame.scale;
  if (depth >= frame.shownFrom) return frame.back - (thickness - depth) * frame.scale;
  return undefined;
}
