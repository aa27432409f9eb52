import { formatAmount, formatStated, fromUnit, type Job, type Plan, type UnitSystem } from '@furrow/engine';
import { turningWords } from '../words/index.ts';
import type { Drawing, DrawingPoint, Mark, MarkRole } from './drawing.ts';
import { scaleBar } from './scale-bar.ts';
import { textWidth } from './text-width.ts';

/** What the torch is drawn of, and how large. */
export interface TorchDrawingInput {
  readonly job: Job;
  readonly plan: Plan;
  /** Electrode from the contact jaws to its tip [m]. */
  readonly stickOut: number;
  /** Diameter of a turning roll, where the kit states it [m]. */
  readonly roll?: number | undefined;
  readonly units: UnitSystem;
  /** Width [drawing unit], at least 220. */
  readonly width: number;
  /** Height [drawing unit], at least 110. */
  readonly height: number;
}

/** A place beside the tip of the electrode: along the travel, and up [m]. */
type Place = readonly [ahead: number, up: number];

/** How far the head is drawn behind the jaws and beside the electrode, and the electrode over it; heads differ [m]. */
const HEAD = { long: 0.045, above: 0.008, below: 0.014, jaws: 0.01, over: 0.006 };
/** Where the jet leaves below the electrode, and how thick it is drawn [m]. */
const JET = { below: 0.002, thick: 0.005 };
/** Plate that is drawn below the floor, and how far a shell is followed down on either side [m]. */
const UNDER = 0.008;
const SHELL_FALL = 0.02;
const NOZZLE = 'air nozzle';

/** Draws the torch beside the seam, to scale: electrode, angle, stick-out, height, jet and direction of travel. */
export function torchDrawing(input: TorchDrawingInput): Drawing {
  const width = Math.max(220, input.width);
  const height = Math.max(110, input.height);
  const size = Math.min(14, Math.max(7.5, Math.min(width / 46, height / 20)));
  const set = settingOf(input);
  const { angle, stickOut, depth } = set;
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  const heightText = `height ${drawn(set.height, input.units)}`;
  const half = set.diameter / 2;
  const rod = stickOut + HEAD.long + HEAD.over;
  const behind = rod * cosine + (half + HEAD.below) * sine;
  const ahead = 1.2 * set.diameter;
  const up = rod * sine + (half + HEAD.above) * cosine;
  const down = depth + UNDER + (set.radius === undefined ? 0 : SHELL_FALL);
  const texts = {
    left: Math.max(textWidth(heightText, size), textWidth(NOZZLE, size)) + 1.2 * size,
    right: Math.max(...aheadTexts(set, input).map((text) => textWidth(text, size))) + 1.2 * size,
  };
  const foot = 1.9 * size;
  const head = 0.6 * size;
  const room = { across: width - texts.left - texts.right, down: height - foot - head };
  const scale = Math.min(room.across / (behind + ahead), room.down / (up + down));
  const origin = {
    x: texts.left + behind * scale + Math.max(0, (room.across - (behind + ahead) * scale) / 2),
    y: height - foot - down * scale,
  };
  const at = ([x, y]: Place): DrawingPoint => ({ x: origin.x + x * scale, y: origin.y - y * scale });
  /** A place along the electrode from its tip, and square to it, upwards. */
  const onRod = (along: number, square: number): Place => [
    -along * cosine + square * sine,
    along * sine + square * cosine,
  ];
  const view: View = { set, input, size, at, onRod, edges: { left: 0.4 * size, right: width - 0.4 * size } };
  return {
    width,
    height,
    title: 'The torch beside the seam',
    description: describe(set, input),
    marks: [
      ...plateMarks(view, down, scale),
      ...jetMarks(view),
      ...torchMarks(view),
      ...stickOutMarks(view),
      ...heightMarks(view, heightText),
      ...angleMarks(view, scale),
      ...travelMarks(view),
      ...scaleBar(scale, input.units, { x: width - 0.4 * size, y: height - 0.8 * size }, size),
    ],
  };
}

/** What is set for the pass that the drawing shows, which is the first. */
interface Setting {
  readonly diameter: number;
  readonly angle: number;
  readonly stickOut: number;
  /** Jaws above the plate, as the commissioning check asks it [m]. */
  readonly height: number;
  /** Depth that the pass leaves behind it [m]. */
  readonly depth: number;
  readonly travel: number;
  /** Radius of the shell, undefined for a straight seam [m]. */
  readonly radius: number | undefined;
}

function settingOf({ plan, job: { seam }, stickOut }: TorchDrawingInput): Setting {
  const pass = plan.passes[0]!;
  const angle = (pass.push_angle_deg * Math.PI) / 180;
  return {
    diameter: fromUnit(plan.electrode_diameter_mm, 'mm'),
    angle,
    stickOut,
    height: stickOut * Math.sin(angle),
    depth: fromUnit(pass.depth_mm.p50, 'mm'),
    travel: fromUnit(pass.travel_mm_per_min, 'mm/min'),
    radius: seam.path === 'girth' && seam.diameter !== undefined ? seam.diameter / 2 : undefined,
  };
}

/** The drawing while it is made. */
interface View {
  readonly set: Setting;
  readonly input: TorchDrawingInput;
  readonly size: number;
  readonly at: (place: Place) => DrawingPoint;
  readonly onRod: (along: number, square: number) => Place;
  readonly edges: { readonly left: number; readonly right: number };
}

/** A length as it is set with a tape. */
function drawn(length: number, units: UnitSystem): string {
  return formatAmount(length, 'length', units);
}

/** The plate cut along the seam: the floor behind the arc, the front below the tip, and what is not cut yet. */
function plateMarks(
  { set: { depth, diameter, radius }, at, edges }: View,
  below: number,
  scale: number,
): Mark[] {
  // a shell falls away on both sides of the torch, as far as there is room
  const fall = (x: number): number =>
    radius === undefined ? 0 : radius - Math.sqrt(Math.max(0, radius * radius - x * x));
  const seen = (x: number, under: number): number => {
    if (radius === undefined) return x;
    const most = Math.sqrt(Math.max(0, radius * radius - Math.max(0, radius - below + under) ** 2));
    return Math.max(-most, Math.min(most, x));
  };
  const centre = at([0, 0]).x;
  const [left, right] = [(edges.left - centre) / scale, (edges.right - centre) / scale];
  const front: Place[] = [
    [0.25 * diameter, -depth],
    [0.6 * diameter, -0.7 * depth],
    [1.05 * diameter, 0],
  ];
  const course = (from: number, to: number, under: number): Place[] =>
    Array.from({ length: 25 }, (_, k) => {
      const x = from + ((to - from) * k) / 24;
      return [x, -under - fall(x)];
    });
  const top = [
    ...course(seen(left, depth), 0.2 * diameter, depth),
    ...front,
    ...course(1.05 * diameter, seen(right, 0), 0).slice(1),
  ];
  const ends = [top.at(-1)![0], top[0]![0]];
  const marks: Mark[] = [
    {
      kind: 'area',
      role: 'plate',
      points: [...top, ...ends.map((x): Place => [x, -below])].map(at),
    },
    { kind: 'polyline', role: 'surface', points: top.map(at) },
    // the plate's surface beside the groove, behind the arc
    { kind: 'polyline', role: 'break', points: course(seen(left, 0), 0.4 * diameter, 0).map(at) },
  ];
  return marks;
}

/** The jet from the head, under the electrode, to the arc and on ahead of it. */
function jetMarks({ set: { stickOut, diameter }, at, onRod }: View): Mark[] {
  const near = -(diameter / 2 + JET.below);
  const far = near - JET.thick;
  const line = (role: MarkRole, from: Place, to: Place): Mark => ({
    kind: 'line',
    role,
    from: at(from),
    to: at(to),
  });
  const end = Math.max(0.012, 0.15 * stickOut);
  return [
    line('jet-zone', onRod(stickOut, near), onRod(end, near)),
    line('jet-zone', onRod(stickOut, far), onRod(end, far)),
  ];
}

/** The electrode in its head. */
function torchMarks({ set: { stickOut, diameter }, size, at, onRod }: View): Mark[] {
  const half = diameter / 2;
  const box = (role: MarkRole, from: number, to: number, above: number, below: number): Mark => ({
    kind: 'area',
    role,
    points: [onRod(from, above), onRod(to, above), onRod(to, -below), onRod(from, -below)].map(at),
  });
  const end = stickOut + HEAD.long;
  const nozzle = at(onRod(stickOut + HEAD.jaws / 2, -(half + HEAD.below)));
  return [
    box('torch-head', stickOut, end, half + HEAD.above, half + HEAD.below),
    box('electrode', 0, end + HEAD.over, half, half),
    box('torch-head', stickOut, stickOut + HEAD.jaws, half + HEAD.above, -half),
    box('torch-head', stickOut, stickOut + HEAD.jaws, -half, half + HEAD.below),
    {
      kind: 'text',
      role: 'label',
      at: { x: nozzle.x - 0.5 * size, y: nozzle.y + 0.34 * size },
      text: NOZZLE,
      anchor: 'end',
      size,
    },
  ];
}

/** Stick-out along the electrode, with its diameter beside it. */
function stickOutMarks({ set: { stickOut, diameter }, input, size, at, onRod, edges }: View): Mark[] {
  const off = diameter / 2 + HEAD.above + 0.006;
  const [from, to] = [onRod(0, off), onRod(stickOut, off)];
  const middle = at(onRod(0.88 * stickOut, off));
  const [tip, jaws] = [at(from), at(to)];
  // both lines of text begin beside the dimension line, which leans away below them
  const lean = (jaws.x - tip.x) / Math.min(jaws.y - tip.y, -1e-6);
  const lines = [
    `stick-out ${drawn(stickOut, input.units)}`,
    `electrode ${formatStated(input.plan.electrode_diameter_mm, 'mm', input.units, 'length')}`,
  ] as const;
  const most = edges.right - Math.max(...lines.map((words) => textWidth(words, size)));
  const x = Math.min(most, middle.x + lean * 1.5 * size + 0.6 * size);
  const text = (row: number, words: string): Mark => ({
    kind: 'text',
    role: 'dimension',
    at: { x, y: middle.y + row * 1.25 * size },
    text: words,
    anchor: 'start',
    size,
  });
  const thin = (along: number): Mark => ({
    kind: 'line',
    role: 'dimension',
    from: at(onRod(along, diameter / 2)),
    to: at(onRod(along, off + 0.003)),
  });
  return [
    thin(0),
    thin(stickOut),
    { kind: 'dimension', role: 'dimension', from: tip, to: jaws, arrow: 0.6 * size },
    ...lines.map((words, row) => text(row, words)),
  ];
}

/** The jaws above the plate. */
function heightMarks({ set, size, at, onRod }: View, text: string): Mark[] {
  const [x, y] = onRod(set.stickOut, 0);
  const foot = at([x, 0]);
  const top = at([x, y]);
  return [
    { kind: 'dimension', role: 'dimension', from: foot, to: top, arrow: 0.6 * size },
    {
      kind: 'text',
      role: 'dimension',
      at: { x: foot.x - 0.6 * size, y: (foot.y + top.y) / 2 + 0.34 * size },
      text,
      anchor: 'end',
      size,
    },
  ];
}

/** The angle between electrode and plate, on the side of the jet. */
function angleMarks({ set, size, at }: View, scale: number): Mark[] {
  const reach = Math.max(0.42 * set.stickOut, (2.6 * size) / scale);
  const on = (turn: number, far: number): DrawingPoint => at([-far * Math.cos(turn), far * Math.sin(turn)]);
  const arc = Array.from({ length: 17 }, (_, k) => on((set.angle * k) / 16, reach));
  const middle = on(0.36 * set.angle, reach + (0.5 * size) / scale);
  return [
    { kind: 'polyline', role: 'dimension', points: arc },
    {
      kind: 'text',
      role: 'dimension',
      at: { x: middle.x, y: middle.y + 0.34 * size },
      text: formatAmount(set.angle, 'angle', 'metric'),
      anchor: 'end',
      size,
    },
  ];
}

/** Which way the torch goes, or the shell turns, and where the jet throws the melt. */
function travelMarks({ set, input, size, at, edges }: View): Mark[] {
  const right = edges.right - 0.3 * size;
  const front = at([1.2 * set.diameter, 0]);
  const start = { x: Math.min(front.x + 0.6 * size, right - 4.5 * size), y: front.y };
  const arrow = (y: number, from: number, to: number, role: MarkRole): Mark[] => {
    const back = to > from ? -1 : 1;
    return [
      { kind: 'line', role, from: { x: from, y }, to: { x: to, y } },
      {
        kind: 'area',
        role,
        points: [
          { x: to, y },
          { x: to + back * 0.9 * size, y: y - 0.32 * size },
          { x: to + back * 0.9 * size, y: y + 0.32 * size },
        ],
      },
    ];
  };
  const text = (y: number, words: string): Mark => ({
    kind: 'text',
    role: 'label',
    at: { x: right, y },
    text: words,
    anchor: 'end',
    size,
  });
  const near = start.y - 1.1 * size;
  const far = near - 2.6 * size;
  const [jet, travel] = aheadTexts(set, input);
  return [
    ...arrow(near, start.x, start.x + 4.5 * size, 'jet'),
    text(near - 0.5 * size, jet),
    ...(set.radius === undefined
      ? arrow(far, right - 4.5 * size, right, 'travel')
      : arrow(far, right, right - 4.5 * size, 'travel')),
    text(far - 0.5 * size, travel),
  ];
}

/** What is written ahead of the torch: of its jet, and of its travel or the turning of the shell. */
function aheadTexts({ radius }: Setting, { plan, units }: TorchDrawingInput): readonly [string, string] {
  // a travel that the gauge sets is no number to set before it was read
  const { set_by_gauge, travel_mm_per_min } = plan.passes[0]!;
  const travel = set_by_gauge ? 'by gauge' : formatStated(travel_mm_per_min, 'mm/min', units);
  return ['jet and melt', radius === undefined ? `travel ${travel}` : `shell turns, ${travel}`];
}

function describe(set: Setting, input: TorchDrawingInput): string {
  const { units, plan } = input;
  const turning =
    set.radius === undefined
      ? 'The torch travels ahead'
      : `${turningWords(set.travel, 2 * set.radius, input.roll, units)} The torch stands, the shell turns towards the tip`;
  return (
    `Seen from the side, travel to the right. Electrode ${formatStated(plan.electrode_diameter_mm, 'mm', units, 'length')}, leaning back ` +
    `${formatAmount(set.angle, 'angle', 'metric')} to the surface so that it pushes; ${drawn(set.stickOut, units)} from the contact jaws to the tip, ` +
    `the jaws ${drawn(set.height, units)} above the plate. The jet leaves the head below the electrode, between it and the plate. ${turning}.`
  );
}
