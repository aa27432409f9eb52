import type { Job } from '../../job/index.ts';
import type { WrittenEntry } from '../../learn/index.ts';
import { metalOf } from '../../material/index.ts';
import type { PassOutcome, PlanOutcome } from '../../plan/index.ts';
import { inUnit } from '../../quantity/index.ts';
import type { RunOutcome } from '../../run/index.ts';
import type { NotTaught, Readings, SeamGauged, SeamTeaching } from '../../survey/index.ts';

/** How a planned pass was run, as far as it is known; what is left out is as planned; SI. */
export interface RanPass {
  /** Number of the planned pass, from 1 [-]. */
  readonly number: number;
  /** Current as read [A]. */
  readonly current?: number;
  /** Arc voltage as read [V]. */
  readonly voltage?: number;
  /** Travel as timed or set [m/s]. */
  readonly travel?: number;
}

/** What an entry is made from. */
export interface GaugedGroove {
  /** Name of the entry [text]. */
  readonly id: string;
  /** Day of the work [ISO date]. */
  readonly date: string;
  readonly job: Job;
  readonly plan: PlanOutcome;
  /** Readings that count, depth below the plate. */
  readonly gauged: readonly SeamGauged[];
  /** How the passes were run; left out: as planned. */
  readonly ran?: readonly RanPass[];
  /** Name of the torch, where the shop keeps its torches apart. */
  readonly torch?: string;
}

/** Stations of one pass at most, evenly chosen [-]: a scan each millimetre says little more of a course of 0.25 m. */
const STATIONS_MOST = 60;
/** Part of the depth below which nothing was cut: the arc was out, which is no depth of the law [-]. */
const NOTHING_CUT = 0.1;

/**
 * A gauged groove as an entry of the shop's trials file: what was measured, each with its own uncertainty, under the
 * setting that it was cut with.
 *
 * A depth teaches where it is known which passes took it off: what one took off where the floor was read before it too,
 * else what all layers under it took off together; across several tracks where the track is stated. A pass whose travel was read off a table at the rig teaches where that travel is stated.
 *
 * @param groove - job, plan, readings, and how the passes were run [record], readings inside the seam
 * @returns the entry, and the readings that teach nothing with the reason [record]
 * @source derived: the observations that the depth law is learned from
 * @example
 * entryOfGroove({ id: 'j-01', date: '2026-05-04', job: demoJob.job, plan: demoAnswer.basis.plan, gauged: [] }).entry // => null
 */
export function entryOfGroove({ id, date, job, plan, gauged, ran = [], torch }: GaugedGroove): SeamTeaching {
  const leftOut = new Map<NotTaught, number>();
  const byPasses = new Map<string, Taken[]>();
  for (const reading of gauged) {
    const found = takenAt(reading, gauged, plan, ran);
    if (typeof found === 'string') leftOut.set(found, (leftOut.get(found) ?? 0) + 1);
    else {
      const key = found.passes.map(({ number }) => number).join();
      byPasses.set(key, [...(byPasses.get(key) ?? []), found]);
    }
  }
  const taught = [...byPasses.values()].sort(([a], [b]) => a!.passes[0].number - b!.passes[0].number);
  const passes = taught.map((taken) =>
    writtenPass(
      taken[0]!.passes,
      ran,
      taken.map(({ reading }) => reading),
      job.kit.gauge.reading_sd,
    ),
  );
  const entry: WrittenEntry | null =
    passes.length === 0
      ? null
      : {
          id,
          kind: 'job',
          date,
          material: metalOf(job.plate.material, job.plate.composition).family,
          position: job.seam.position,
          ...(torch === undefined ? {} : { torch }),
          electrode: {
            diameter: written(1000 * plan.electrode.diameter, 'mm', 3),
            kind: plan.electrode.kind,
          },
          gauge_sd: written(1000 * job.kit.gauge.reading_sd, 'mm', 4),
          passes,
        };
  return {
    entry,
    readings: taught.reduce((sum, taken) => sum + taken.length, 0),
    leftOut: [...leftOut].map(([why, readings]) => ({ why, readings })),
  };
}

/** A reading of what passes on top of each other took off. */
interface Taken {
  /** The passes, the last first; more than one where nobody read the floor between. */
  readonly passes: readonly [PassOutcome, ...PassOutcome[]];
  readonly reading: SeamGauged;
}

/** Readings nearer than this are of one place [m]. */
const SAME_PLACE = 0.025;

/** What was taken off since the floor was last read there, or why that is not known. */
function takenAt(
  reading: SeamGauged,
  all: readonly SeamGauged[],
  { passes }: PlanOutcome,
  ran: readonly RanPass[],
): Taken | NotTaught {
  const { at, depth, track, afterPass = Number.POSITIVE_INFINITY } = reading;
  const over = passes.filter(
    (pass) =>
      at >= pass.from - 1e-9 &&
      at <= pass.to + 1e-9 &&
      pass.number <= afterPass &&
      (track === undefined || pass.track === track),
  );
  const [last, ...before] = over.toReversed();
  if (last === undefined) return 'no_pass';
  const read = before.findIndex(({ number }) => floorAfter(number, reading, all) !== undefined);
  const floor = read < 0 ? undefined : floorAfter(before[read]!.number, reading, all);
  const together: Taken['passes'] = [last, ...before.slice(0, read < 0 ? before.length : read)];
  if (
    over.some(({ layer, track: other }) => together.some((own) => own.layer === layer && own.track !== other))
  )
    return 'several_tracks';
  const taken = depth - (floor?.depth ?? 0);
  if (taken < NOTHING_CUT * together.reduce((sum, pass) => sum + pass.depth.p50, 0)) return 'nothing_cut';
  const isUnknown = ({ number, setByGauge }: PassOutcome): boolean =>
    setByGauge && ran.find((each) => each.number === number)?.travel === undefined;
  if (together.some(isUnknown)) return 'travel_unknown';
  if (over.length === 1) return { passes: together, reading };
  // the width at the surface is that of all layers together
  const { width: _width, ...rest } = reading;
  return {
    passes: together,
    reading: floor === undefined ? rest : { ...rest, depth: taken, u: Math.hypot(reading.u, floor.u) },
  };
}

/** The reading that was taken after a pass at the same place; the nearest of several. */
function floorAfter(
  number: number,
  { at, track }: SeamGauged,
  all: readonly SeamGauged[],
): SeamGauged | undefined {
  return all
    .filter(
      (other) => other.afterPass === number && other.track === track && Math.abs(other.at - at) <= SAME_PLACE,
    )
    .sort((a, b) => Math.abs(a.at - at) - Math.abs(b.at - at))[0];
}

function writtenPass(
  [pass, ...below]: Taken['passes'],
  ran: readonly RanPass[],
  readings: readonly SeamGauged[],
  gaugeSd: number,
): Readonly<Record<string, unknown>> {
  const rising = [...readings].sort((a, b) => a.at - b.at);
  const count = Math.min(STATIONS_MOST, rising.length);
  const chosen = Array.from(
    { length: count },
    (_, k) => rising[count === 1 ? 0 : Math.round((k * (rising.length - 1)) / (count - 1))]!,
  );
  return {
    ...writtenRun(pass, ran),
    ...(below.length === 0 ? {} : { below: below.map((each) => writtenRun(each, ran)) }),
    stations: chosen.map(({ at, depth, u, width }) => ({
      at: written(at - pass.from, 'm', 4),
      depth: written(inUnit(depth, 'mm'), 'mm', 3),
      ...(Math.abs(u - gaugeSd) < 1e-7
        ? {}
        : { depth_sd: written(Math.max(1e-3, inUnit(u, 'mm')), 'mm', 4) }),
      ...(width === undefined
        ? {}
        : {
            width: written(inUnit(width.value, 'mm'), 'mm', 3),
            width_sd: written(Math.max(1e-3, inUnit(width.u, 'mm')), 'mm', 4),
          }),
    })),
  };
}

/** How a pass was run, as far as it is known; else as planned. */
function writtenRun(pass: PassOutcome, ran: readonly RanPass[]): Readonly<Record<string, string>> {
  const own = ran.find(({ number }) => number === pass.number);
  return {
    current: written(own?.current ?? pass.current, 'A', 1),
    voltage: written(own?.voltage ?? pass.voltage, 'V', 2),
    travel: written(inUnit(own?.travel ?? pass.travel, 'mm/min'), 'mm/min', 2),
    push_angle: written(inUnit(pass.pushAngle, 'deg'), 'deg', 2),
  };
}

function written(value: number, unit: string, digits: number): string {
  return `${Number(value.toFixed(digits))} ${unit}`;
}

/**
 * How planned passes were run, by the log of the run: means over the arc, travel by what was gouged.
 *
 * @param outcome - the review of the log [record], from `reviewRun`
 * @returns one for each planned pass that was run; of several tries the one that gouged most [list]
 * @source none: bookkeeping
 * @example
 * ranPasses({ passes: [{ planned: 1, totals: { arcTime: 60, voltage: 42, current: 800, gouged: 0.6 } }] }) // => [{"number":1,"current":800,"voltage":42,"travel":0.01}]
 */
export function ranPasses({ passes }: Pick<RunOutcome, 'passes'>): readonly RanPass[] {
  const best = new Map<number, RunOutcome['passes'][number]['totals']>();
  for (const { planned, totals } of passes) {
    if (planned === undefined) continue;
    if ((totals.gouged ?? 0) >= (best.get(planned)?.gouged ?? 0)) best.set(planned, totals);
  }
  return [...best].map(([number, { current, voltage, gouged, arcTime }]) => ({
    number,
    ...(current === undefined ? {} : { current }),
    ...(voltage === undefined ? {} : { voltage }),
    ...(gouged === undefined || !(arcTime > 0) ? {} : { travel: gouged / arcTime }),
  }));
}

/**
 * How planned passes were run, as the crew wrote it: what was read of a pass, else the travel that was set for its layer.
 *
 * @param readings - what was run [record], from `readReadings`
 * @param plan - the plan [record], of the same job
 * @returns one for each pass of which something is said [list]
 * @source none: bookkeeping
 * @example
 * ranByHand({ layers: [{ after_layer: 0, reading: 0.01, travel_set: 0.012 }] }, { passes: [{ number: 1, layer: 1 }, { number: 2, layer: 2 }] }) // => [{"number":1,"travel":0.012}]
 */
export function ranByHand(
  { passes = [], layers = [] }: Pick<Readings, 'passes' | 'layers'>,
  plan: Pick<PlanOutcome, 'passes'>,
): readonly RanPass[] {
  return plan.passes.flatMap(({ number, layer }): RanPass[] => {
    const { current, voltage, travel } = passes.find((pass) => pass.number === number) ?? {};
    const set = travel ?? layers.findLast((each) => each.after_layer === layer - 1)?.travel_set;
    const ran = {
      number,
      ...(current === undefined ? {} : { current }),
      ...(voltage === undefined ? {} : { voltage }),
      ...(set === undefined ? {} : { travel: set }),
    };
    return Object.keys(ran).length > 1 ? [ran] : [];
  });
}
