import {
  type AfterCostFunction,
  halfWidthAt,
  heightAt,
  type Job,
  passArea,
  runOutLength,
} from '@furrow/engine';
import { type OwnShops, pointsOf } from './own-shops.ts';

/** One way to make a groove with every number settled but what its tables say. */
export interface OwnSetup {
  readonly electrode: Job['kit']['electrodes'][number];
  readonly current: number;
  readonly tracks: number;
  readonly spacing: number;
  readonly tryout:
    | { readonly kind: 'trial' | 'run_in'; readonly length: number; readonly stations: number }
    | undefined;
  readonly shares: readonly number[];
  /** Layers, from the last, that wait for a stop [-]. */
  readonly stops: number;
  readonly stations: number;
  /** Depth of the centre lines aimed at [m]. */
  readonly target: number;
  /** Part of the tolerance above the least depth from which a gauged floor is left as it is [-]. */
  readonly doneFrom: number;
}

/** What came of a set-up in the shops. */
export interface OwnOutcome {
  readonly reached: number;
  readonly notTooDeep: number;
  readonly ligamentKept: number;
  readonly widthInBand: number;
  readonly notRun: number;
  /** Means over the shops: seconds, and money of the whole job. */
  readonly time: number;
  readonly cost: number;
  /** Passes run, each in one shop [-]. */
  readonly passes: number;
}

/** What the job asks of every run, worked out once. */
export interface OwnTask {
  readonly job: Job;
  readonly meltingEnergy: number;
  readonly afterCost: AfterCostFunction;
  /** Median width of a pass less the electrode diameter [m]. */
  readonly extraWidth: number;
  /** Shops that tables are learned from, and those in which a set-up is run. */
  readonly learning: OwnShops;
  readonly shops: OwnShops;
}

const REMOVAL_SHARE = 0.85;
const DEPTH_MOST = 1.5;
/** Rows of a table between its open ends, as the card has room for [-], and how far from the middle they reach, in standard deviations. */
const ROWS = 14;
const REACH = 2.8;
/** Depth that may be missed, in ln, because the carriage cannot travel so [-]. */
const NEAR = 0.1;
/** Every so many shops one is taken for the cost of what comes after the arc. */
const STRIDE = 16;
const RUN_IN_SHARE = 0.6;
const [TRIAL_PASS, TRIAL_COURSE, TRIAL_GAUGE, GAUGE] = [500, 501, 502, 600];

interface Table {
  readonly low: number;
  readonly high: number;
  readonly log: boolean;
  /** ln energies of what follows per row; none: ask; done: leave it. */
  readonly rows: readonly (readonly number[] | 'done' | undefined)[];
}

function rowAt({ low, high, log, rows }: Table, reading: number): readonly number[] | 'done' | undefined {
  const place = log ? Math.log(reading / low) / Math.log(high / low) : (reading - low) / (high - low);
  const row = Math.floor(place * rows.length);
  return row >= 0 && row < rows.length ? rows[row] : undefined;
}

/** Runs a set-up in the shops; its tables are learned by regression over other shops that ran the same way. */
export function ownRun(task: OwnTask, setup: OwnSetup): OwnOutcome {
  const machine = machineOf(task, setup);
  const tables: Tables = { tryout: undefined, stops: [] };
  let passes = 0;
  if (setup.tryout !== undefined) tables.tryout = learnTryout(task, setup, machine);
  if (setup.tryout !== undefined) passes += task.learning.count;
  for (let stop = setup.stops; stop > 0; stop -= 1) {
    const layer = setup.shares.length - stop;
    tables.stops[layer] = learnStop(task, setup, machine, tables, layer);
    passes += task.learning.count * layer * setup.tracks;
  }
  return runAll(task, setup, machine, tables, passes);
}

interface Tables {
  tryout: Table | undefined;
  readonly stops: (Table | undefined)[];
}

/** Energies, limits and cuts of one electrode at one current. */
interface Machine {
  readonly length: number;
  readonly unitTravel: number;
  readonly low: number;
  readonly high: number;
  readonly held: (energy: number) => number;
  readonly middleEnergy: (cut: number) => number;
  /** Whether a setting that is to cut so deep keeps the limits of the process. */
  readonly allowed: (energy: number, cut: number) => boolean;
  readonly cut: (shops: OwnShops, shop: number, energy: number, noise: number) => number;
}

function machineOf({ job, meltingEnergy, extraWidth, learning }: OwnTask, setup: OwnSetup): Machine {
  const { diameter } = setup.electrode;
  const voltage = job.kit.arc_voltage.set;
  const power = voltage * setup.current;
  const unitTravel = power / (diameter ** 2 * meltingEnergy);
  const low = Math.log(unitTravel / job.kit.travel.most);
  const high = Math.log(unitTravel / job.kit.travel.least);
  const middle = medianOf(learning.level);
  const slope = medianOf(learning.slope);
  return {
    length: job.seam.length + 2 * runOutLength(job.groove),
    unitTravel,
    low,
    high,
    held: (energy) => Math.min(high, Math.max(low, energy)),
    middleEnergy: (cut) => (Math.log(cut / diameter) - middle) / slope,
    allowed: (energy, cut) =>
      cut <= DEPTH_MOST * diameter &&
      passArea({ width: diameter + extraWidth, depth: cut }) *
        unitTravel *
        Math.exp(-energy) *
        meltingEnergy <=
        REMOVAL_SHARE * power,
    cut: (shops, shop, energy, noise) => {
      const cut =
        diameter * Math.exp(shops.level[shop]! + shops.slope[shop]! * energy + shops.levels.pass * noise);
      const width = diameter + shops.extraWidth[shop]!;
      const most = REMOVAL_SHARE * Math.exp(energy) * diameter ** 2;
      // No section is larger than its rectangle with a little flare, less its round corners where it is deep.
      const corners = cut > width / 2 ? 0.1 * width * width : 0;
      if (1.06 * cut * width - corners <= most || passArea({ width, depth: cut }) <= most) return cut;
      let [from, to] = [0, cut];
      for (let halving = 0; halving < 30; halving += 1) {
        const depth = (from + to) / 2;
        if (passArea({ width, depth }) < most) from = depth;
        else to = depth;
      }
      return from;
    },
  };
}

const medians = new WeakMap<Float64Array, number>();

function medianOf(values: Float64Array): number {
  const known = medians.get(values) ?? values.slice().sort()[Math.floor(values.length / 2)]!;
  medians.set(values, known);
  return known;
}

/** Mean of a course over stations, evenly spread with half a gap at the ends. */
function stationMean(course: Float32Array, shop: number, points: number, stations: number): number {
  let sum = 0;
  for (let i = 0; i < stations; i += 1) {
    sum += course[shop * points + Math.round(((i + 0.5) / stations) * (points - 1))]!;
  }
  return sum / stations;
}

function tryoutReading(
  task: OwnTask,
  setup: OwnSetup,
  machine: Machine,
  shops: OwnShops,
): (shop: number) => { cut: number; reading: number } {
  const { kind, length, stations } = setup.tryout!;
  const energy = tryoutEnergy(setup, machine);
  const runIn = kind === 'run_in';
  const noise = shops.normals(runIn ? 0 : TRIAL_PASS);
  const course = shops.course(runIn ? 0 : TRIAL_COURSE, length);
  const gauge = shops.normals(TRIAL_GAUGE);
  const points = pointsOf(length);
  const sd = task.job.kit.gauge.reading_sd / Math.sqrt(stations);
  return (shop) => {
    const cut = machine.cut(shops, shop, energy, noise[shop]!);
    return { cut, reading: cut * stationMean(course, shop, points, stations) + sd * gauge[shop]! };
  };
}

function tryoutEnergy({ tryout, shares, target }: OwnSetup, machine: Machine): number {
  const part = tryout!.kind === 'run_in' ? RUN_IN_SHARE : Math.max(...shares);
  return machine.held(machine.middleEnergy(part * target));
}

/** Least squares of lists on 1, x and x squared. */
function quadratic(x: readonly number[], y: readonly number[]): (at: number) => number {
  const s = [0, 0, 0, 0, 0];
  const t = [0, 0, 0];
  const centre = x.reduce((sum, value) => sum + value, 0) / x.length;
  x.forEach((value, i) => {
    const d = value - centre;
    let power = 1;
    for (let k = 0; k < 5; k += 1) {
      s[k] = s[k]! + power;
      if (k < 3) t[k] = t[k]! + power * y[i]!;
      power *= d;
    }
  });
  const [s0, s1, s2, s3, s4] = s as [number, number, number, number, number];
  const det = (a: number[][]): number =>
    a[0]![0]! * (a[1]![1]! * a[2]![2]! - a[1]![2]! * a[2]![1]!) -
    a[0]![1]! * (a[1]![0]! * a[2]![2]! - a[1]![2]! * a[2]![0]!) +
    a[0]![2]! * (a[1]![0]! * a[2]![1]! - a[1]![1]! * a[2]![0]!);
  const matrix = [
    [s0, s1, s2],
    [s1, s2, s3],
    [s2, s3, s4],
  ];
  const whole = det(matrix);
  const [c0, c1, c2] = [0, 1, 2].map(
    (column) => det(matrix.map((row, r) => row.map((value, c) => (c === column ? t[r]! : value)))) / whole,
  ) as [number, number, number];
  return (at) => c0 + c1 * (at - centre) + c2 * (at - centre) ** 2;
}

function meanAndSd(values: readonly number[]): { readonly mean: number; readonly sd: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
  return { mean, sd: Math.sqrt(square) };
}

/** What the reading of a trial says of the energies that cut what is wanted. */
function learnTryout(task: OwnTask, setup: OwnSetup, machine: Machine): Table {
  const shops = task.learning;
  const read = tryoutReading(task, setup, machine, shops);
  const { diameter } = setup.electrode;
  const readings: number[] = [];
  const levels: number[] = [];
  const slopes: number[] = [];
  for (let shop = 0; shop < shops.count; shop += 1) {
    const { reading } = read(shop);
    if (reading <= 0) continue;
    readings.push(Math.log(reading));
    levels.push(shops.level[shop]!);
    slopes.push(shops.slope[shop]!);
  }
  const [levelOf, slopeOf] = [quadratic(readings, levels), quadratic(readings, slopes)];
  const { mean, sd } = meanAndSd(readings);
  const low = Math.exp(mean - REACH * sd);
  const high = Math.exp(mean + REACH * sd);
  const rows = Array.from({ length: ROWS }, (_, row) => {
    const reading = mean + REACH * sd * ((2 * (row + 0.5)) / ROWS - 1);
    const cuts =
      setup.tryout!.kind === 'run_in'
        ? [setup.target, Math.max(setup.target - Math.exp(reading), 0.02 * setup.target)]
        : setup.shares.map((share) => share * setup.target);
    const wanted = cuts.map((cut) => (Math.log(cut / diameter) - levelOf(reading)) / slopeOf(reading));
    const held = wanted.map(machine.held);
    const near = held.every(
      (energy, i) =>
        (setup.stops > 0 ||
          Math.abs(energy - wanted[i]!) * slopeOf(reading) < NEAR ||
          (setup.tryout!.kind === 'run_in' && i > 0)) &&
        machine.allowed(energy, cuts[i]!),
    );
    return near ? held : undefined;
  });
  return { low, high, log: true, rows };
}

/** Runs the layers before a stop in the learning shops, and learns what its reading says of floor and next pass. */
function learnStop(task: OwnTask, setup: OwnSetup, machine: Machine, tables: Tables, layer: number): Table {
  const { groove } = task.job;
  const shops = task.learning;
  const readings: number[] = [];
  const floors: number[] = [];
  const nexts: number[] = [];
  const layersRun = runLayers(task, setup, machine, tables, shops, layer);
  for (let shop = 0; shop < shops.count; shop += 1) {
    const state = layersRun(shop);
    if (state === undefined) continue;
    const { reading, floor, energy } = state;
    if (reading <= 0) continue;
    readings.push(reading);
    floors.push(floor);
    nexts.push(
      Math.log(shops.later[shop]! * setup.electrode.diameter) +
        shops.level[shop]! +
        shops.slope[shop]! * energy,
    );
  }
  const logs = readings.map(Math.log);
  const [floorOf, nextOf] = [quadratic(readings, floors), quadratic(logs, nexts)];
  const slope = medianOf(shops.slope);
  const { mean, sd } = meanAndSd(readings);
  const least = groove.depth.wanted - groove.depth.minus;
  const most = groove.depth.wanted + groove.depth.plus;
  const low = Math.max(0.2e-3, mean - REACH * sd);
  const high = Math.max(low + 0.2e-3, Math.min(mean + REACH * sd, most));
  const isLast = layer === setup.shares.length - 1;
  const aim = setup.target * setup.shares.slice(0, layer + 1).reduce((sum, share) => sum + share, 0);
  const rows = Array.from({ length: ROWS }, (_, row) => {
    const reading = low + ((high - low) * (row + 0.5)) / ROWS;
    const floor = floorOf(reading);
    if (isLast && floor >= least + setup.doneFrom * (most - least)) return 'done' as const;
    const missing = Math.max(aim - floor, 0.02 * aim);
    return [(Math.log(missing) - nextOf(Math.log(reading))) / slope, missing];
  });
  return { low, high, log: false, rows };
}

/** Runs a shop's first layers on its first track, up to the reading before one. */
function runLayers(
  task: OwnTask,
  setup: OwnSetup,
  machine: Machine,
  tables: Tables,
  shops: OwnShops,
  upTo: number,
): (shop: number) => { reading: number; floor: number; energy: number } | undefined {
  const points = pointsOf(machine.length);
  const noise = Array.from({ length: upTo * setup.tracks }, (_, pass) => shops.normals(pass));
  const courses = Array.from({ length: upTo * setup.tracks }, (_, pass) =>
    shops.course(pass, machine.length),
  );
  const tryout = setup.tryout && tryoutReading(task, setup, machine, shops);
  const gauges = setup.shares.map((_, layer) => shops.normals(GAUGE + layer * setup.tracks));
  const sd = task.job.kit.gauge.reading_sd / Math.sqrt(setup.stations);
  const middle = setup.shares.map((share) => machine.held(machine.middleEnergy(share * setup.target)));
  return (shop) => {
    let set: readonly number[] = middle;
    if (tryout !== undefined) {
      const row = rowAt(tables.tryout!, tryout(shop).reading);
      if (row === undefined || row === 'done') return undefined;
      set = row;
    }
    let [floor, energy] = [0, 0];
    const cuts: number[] = [];
    const readingBefore = (layer: number): number => {
      let sum = sd * gauges[layer]![shop]!;
      cuts.forEach((cut, each) => {
        sum += cut * stationMean(courses[each * setup.tracks]!, shop, points, setup.stations);
      });
      return sum;
    };
    for (let layer = 0; layer < upTo; layer += 1) {
      energy = set[layer]!;
      const table = tables.stops[layer];
      if (table !== undefined) {
        const row = rowAt(table, readingBefore(layer));
        if (row === undefined || row === 'done') return undefined;
        energy = machine.held(energy + row[0]!);
      }
      const factor = layer > 0 ? shops.later[shop]! : 1;
      const cut = factor * machine.cut(shops, shop, energy, noise[layer * setup.tracks]![shop]!);
      cuts.push(cut);
      floor += cut;
    }
    return { reading: readingBefore(upTo), floor, energy };
  };
}

/** Counts of what was met, and sums of what was taken. */
class Tally {
  reached = 0;
  notTooDeep = 0;
  ligamentKept = 0;
  widthInBand = 0;
  notRun = 0;
  time = 0;
  cost = 0;
  after = 0;
  afterShops = 0;
}

function runAll(
  task: OwnTask,
  setup: OwnSetup,
  machine: Machine,
  tables: Tables,
  learned: number,
): OwnOutcome {
  const { job, shops } = task;
  const { tracks, shares, tryout } = setup;
  const layers = shares.length;
  const { length } = machine;
  const points = pointsOf(length);
  const runIn = tryout?.kind === 'run_in';
  const seamPasses = runIn ? 0 : layers * tracks;
  const noise = Array.from({ length: Math.max(3, seamPasses) }, (_, pass) => shops.normals(pass));
  const courses = Array.from({ length: seamPasses }, (_, pass) => shops.course(pass, length));
  const read = tryout && tryoutReading(task, setup, machine, shops);
  const gauges = Array.from({ length: layers * tracks }, (_, each) => shops.normals(GAUGE + each));
  const sd = job.kit.gauge.reading_sd / Math.sqrt(setup.stations);
  const middle = shares.map((share) => machine.held(machine.middleEnergy(share * setup.target)));
  // A blind setting or a middle one that breaks a limit is none that a hand may be given.
  if (shares.some((share, layer) => !machine.allowed(middle[layer]!, share * setup.target))) return NONE;
  const tally = new Tally();
  const takes = takesOf(task, setup, machine);
  let passes = learned;
  const section = new Section(task, setup, points);
  for (let shop = 0; shop < shops.count; shop += 1) {
    let set: readonly number[] = middle;
    let travelTime = 0;
    let run = 0;
    if (read !== undefined) {
      const { cut, reading } = read(shop);
      passes += 1;
      const row = rowAt(tables.tryout!, reading);
      if (row === undefined || row === 'done') {
        tally.notRun += 1;
        tally.widthInBand += 1;
        tally.notTooDeep += 1;
        tally.ligamentKept += 1;
        takes(
          tally,
          shop,
          runIn ? tryout!.length * Math.exp(tryoutEnergy(setup, machine)) : 0,
          runIn ? 1 : 0,
          0,
          undefined,
        );
        continue;
      }
      set = row;
      if (runIn) {
        passes += 2;
        const rest = length - tryout!.length;
        const long = machine.cut(shops, shop, row[0]!, noise[1]![shop]!);
        const again = shops.later[shop]! * machine.cut(shops, shop, row[1]!, noise[2]![shop]!);
        section.start(shop);
        section.addStretch(
          shop,
          [cut, again],
          [shops.course(0, tryout!.length), shops.course(2, tryout!.length)],
          pointsOf(tryout!.length),
        );
        section.addStretch(shop, [long], [shops.course(1, rest)], pointsOf(rest));
        const time =
          tryout!.length * (Math.exp(tryoutEnergy(setup, machine)) + Math.exp(row[1]!)) +
          rest * Math.exp(row[0]!);
        section.finish(tally);
        takes(tally, shop, time, 3, 0, section);
        continue;
      }
    }
    section.start(shop);
    const done = new Uint8Array(tracks);
    const before = new Float64Array(tracks);
    for (let layer = 0; layer < layers; layer += 1) {
      const table = tables.stops[layer];
      for (let track = 0; track < tracks; track += 1) {
        if (done[track] === 1) continue;
        let energy = set[layer]!;
        if (table !== undefined) {
          const reading = section.gauged(track, setup.stations) + sd * gauges[layer * tracks + track]![shop]!;
          const row = rowAt(table, reading);
          if (row === undefined || row === 'done') {
            done[track] = 1;
            continue;
          }
          energy = machine.held(before[track]! + row[0]!);
          if (!machine.allowed(energy, row[1]!)) {
            done[track] = 1;
            continue;
          }
        }
        before[track] = energy;
        const pass = layer * tracks + track;
        const factor = layer > 0 ? shops.later[shop]! : 1;
        section.cut(
          track,
          factor * machine.cut(shops, shop, energy, noise[pass]![shop]!),
          courses[pass]!,
          shop,
        );
        travelTime += length * Math.exp(energy);
        run += 1;
        passes += 1;
      }
    }
    section.read();
    section.finish(tally);
    takes(tally, shop, travelTime, run, setup.stops, section);
  }
  const share = (count: number): number => count / shops.count;
  return {
    reached: share(tally.reached),
    notTooDeep: share(tally.notTooDeep),
    ligamentKept: share(tally.ligamentKept),
    widthInBand: share(tally.widthInBand),
    notRun: share(tally.notRun),
    time: tally.time / shops.count,
    cost: tally.cost / shops.count + tally.after / Math.max(1, tally.afterShops),
    passes,
  };
}

const NONE: OwnOutcome = {
  reached: 0,
  notTooDeep: 0,
  ligamentKept: 0,
  widthInBand: 0,
  notRun: 1,
  time: Number.POSITIVE_INFINITY,
  cost: Number.POSITIVE_INFINITY,
  passes: 0,
};

/** The floor of one shop at every point along the seam, and what is read off it. */
class Section {
  readonly #task: OwnTask;
  readonly #setup: OwnSetup;
  readonly #points: number;
  readonly #depth: Float64Array;
  readonly #rise: Float64Array;
  readonly #across: readonly number[];
  readonly #reach: Float64Array;
  #radius = 0;
  #least = 0;
  #most = 0;
  #narrowest = 0;
  #widest = 0;

  constructor(task: OwnTask, setup: OwnSetup, points: number) {
    this.#task = task;
    this.#setup = setup;
    this.#points = points;
    this.#depth = new Float64Array(points * setup.tracks);
    const zone = task.job.groove.floor_width;
    const steps = setup.tracks === 1 ? 1 : Math.max(2, Math.ceil(zone / 1e-3));
    this.#across =
      setup.tracks === 1
        ? [zone / 2]
        : Array.from({ length: steps + 1 }, (_, i) => -zone / 2 + (zone * i) / steps);
    this.#rise = new Float64Array(setup.tracks * this.#across.length);
    this.#reach = new Float64Array(setup.tracks);
  }

  start(shop: number): void {
    const { tracks, spacing, electrode } = this.#setup;
    this.#radius = (electrode.diameter + this.#task.shops.extraWidth[shop]!) / 2;
    this.#depth.fill(0);
    this.#least = Number.POSITIVE_INFINITY;
    this.#most = 0;
    this.#narrowest = Number.POSITIVE_INFINITY;
    this.#widest = 0;
    for (let track = 0; track < tracks; track += 1) {
      const offset = (track - (tracks - 1) / 2) * spacing;
      this.#across.forEach((y, i) => {
        this.#rise[track * this.#across.length + i] = heightAt(this.#radius, Math.abs(y - offset));
      });
      this.#reach[track] = heightAt(this.#radius, track * spacing);
    }
  }

  /** Depth of a track at a point, what its neighbours took away there included. */
  #floor(track: number, at: number): number {
    const { tracks } = this.#setup;
    let floor = this.#depth[track * this.#points + at]!;
    for (let other = 0; other < tracks; other += 1) {
      floor = Math.max(
        floor,
        this.#depth[other * this.#points + at]! - this.#reach[Math.abs(other - track)]!,
      );
    }
    return floor;
  }

  cut(track: number, depth: number, course: Float32Array, shop: number): void {
    const { tracks } = this.#setup;
    const points = this.#points;
    for (let at = 0; at < points; at += 1) {
      const floor = tracks > 1 ? this.#floor(track, at) : this.#depth[at]!;
      this.#depth[track * points + at] = floor + depth * course[shop * points + at]!;
    }
  }

  gauged(track: number, stations: number): number {
    let sum = 0;
    for (let i = 0; i < stations; i += 1) {
      const at = Math.round(((i + 0.5) / stations) * (this.#points - 1));
      sum += this.#setup.tracks > 1 ? this.#floor(track, at) : this.#depth[at]!;
    }
    return sum / stations;
  }

  /** A stretch cut once or twice on one track. */
  addStretch(shop: number, cuts: readonly number[], courses: readonly Float32Array[], points: number): void {
    for (let at = 0; at < points; at += 1) {
      let depth = 0;
      cuts.forEach((cut, i) => {
        depth += cut * courses[i]![shop * points + at]!;
      });
      this.#single(depth);
    }
  }

  #single(depth: number): void {
    this.#least = Math.min(this.#least, Math.max(0, depth - this.#rise[0]!));
    this.#most = Math.max(this.#most, depth);
    this.#narrowest = Math.min(this.#narrowest, depth);
  }

  read(): void {
    const { tracks } = this.#setup;
    const points = this.#points;
    if (tracks === 1) {
      for (let at = 0; at < points; at += 1) this.#single(this.#depth[at]!);
      return;
    }
    const width = this.#across.length;
    for (let at = 0; at < points; at += 1) {
      for (let i = 0; i < width; i += 1) {
        let floor = 0;
        for (let track = 0; track < tracks; track += 1) {
          const here = this.#depth[track * points + at]! - this.#rise[track * width + i]!;
          if (here > floor) floor = here;
        }
        if (floor < this.#least) this.#least = floor;
      }
      const outer = (track: number): number => halfWidthAt(this.#radius, this.#depth[track * points + at]!);
      const own = (tracks - 1) * this.#setup.spacing + outer(0) + outer(tracks - 1);
      this.#narrowest = Math.min(this.#narrowest, own);
      this.#widest = Math.max(this.#widest, own);
      for (let track = 0; track < tracks; track += 1) {
        this.#most = Math.max(this.#most, this.#depth[track * points + at]!);
      }
    }
  }

  get most(): number {
    return this.#most;
  }

  get width(): number {
    return 2 * this.#radius;
  }

  finish(tally: Tally): void {
    const { groove, plate } = this.#task.job;
    const single = this.#setup.tracks === 1;
    const narrowest = single ? 2 * halfWidthAt(this.#radius, this.#narrowest) : this.#narrowest;
    const widest = single ? 2 * halfWidthAt(this.#radius, this.#most) : this.#widest;
    if (this.#least >= groove.depth.wanted - groove.depth.minus) tally.reached += 1;
    if (this.#most <= groove.depth.wanted + groove.depth.plus) tally.notTooDeep += 1;
    if (plate.thickness - this.#most >= groove.ligament_least) tally.ligamentKept += 1;
    if (narrowest >= groove.width.least && widest <= groove.width.most) tally.widthInBand += 1;
  }
}

/** Adds up what a run takes: times, prices, and the groove to fill in some of the shops. */
function takesOf(
  { job, shops, afterCost }: OwnTask,
  setup: OwnSetup,
  machine: Machine,
): (
  tally: Tally,
  shop: number,
  energyLength: number,
  run: number,
  gauged: number,
  section: Section | undefined,
) => void {
  const { rates, kit, after, seam } = job;
  const { electrode, current, tryout, tracks, spacing } = setup;
  const { length, unitTravel } = machine;
  const dwell = electrode.diameter / (2 * Math.sin(kit.push_angle));
  const power = kit.arc_voltage.set * current;
  const trial = tryout?.kind === 'trial' ? tryout : undefined;
  const trialTime =
    trial === undefined ? 0 : ((trial.length + dwell) * Math.exp(tryoutEnergy(setup, machine))) / unitTravel;
  const usable = electrode.kind === 'plain' ? electrode.length - electrode.stub : electrode.length;
  const oneElectrode = (usable * Math.PI * electrode.diameter ** 2) / 4;
  const back = seam.path === 'girth' ? 0 : length / rates.return_travel;
  return (tally, shop, energyLength, run, gauged, section) => {
    const arc = (energyLength * (1 + dwell / length)) / unitTravel + trialTime;
    const electrodes = Math.max(1, Math.ceil((shops.wear[shop]! * current * arc) / oneElectrode));
    const returns = Math.max(0, tryout?.kind === 'run_in' ? Math.min(1, run - 1) : run - 1);
    const time =
      arc +
      run * rates.start_time +
      returns * back +
      (electrodes - 1) * rates.electrode_change_time +
      gauged * tracks * setup.stations * rates.gauge_time +
      (tryout === undefined ? 0 : tryout.stations * rates.gauge_time) +
      (trial === undefined ? 0 : rates.start_time + rates.trial_time);
    tally.time += time;
    tally.cost +=
      electrodes * electrode.price_each +
      (time / 3600) * (rates.labour_per_hour + after.overhead_per_hour) +
      ((power * arc) / 3.6e6 / rates.source_efficiency) * rates.power_per_kWh;
    if (shop % STRIDE !== 0) return;
    tally.afterShops += 1;
    const depth = section?.most ?? 0;
    const width = section?.width ?? 0;
    const ridge = tracks === 1 ? 0 : Math.min(heightAt(width / 2, spacing / 2), depth);
    tally.after += afterCost({
      depth,
      seamLength: seam.length,
      areaPerLength:
        depth <= 0 ? 0 : passArea({ width, depth }) + (tracks - 1) * spacing * (depth - ridge / 3),
      topWidth: depth <= 0 ? 0 : 2 * halfWidthAt(width / 2, depth) + (tracks - 1) * spacing,
    }).cost;
  };
}
