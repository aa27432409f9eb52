/** One pass along the seam, as the heat's timetable has it. */
export interface TorchPass {
  /** Order in which it is run, from 1 [-]. */
  readonly number: number;
  /** When the torch is at the station [s]. */
  readonly at: number;
  /** Travel [m/s]. */
  readonly travel: number;
  /** Places where electrodes are changed in it, from the start of the seam, increasing [m]. */
  readonly changes: readonly number[];
}

/** What all passes have in common. */
export interface TorchCourse {
  /** Place for which the times at the station are given [m]. */
  readonly station: number;
  /** Ends of a pass, run-outs included [m]. */
  readonly from: number;
  readonly to: number;
  /** Time that one electrode change takes [s]. */
  readonly changeTime: number;
}

/** Where the torch is. */
export interface TorchPlace {
  /** Number of the pass that it runs [-]. */
  readonly pass: number;
  /** From the start of the seam [m]. */
  readonly place: number;
}

/** Where the torch is at a time; undefined between passes. It stands still while an electrode is changed. */
export function torchPlace(
  passes: readonly TorchPass[],
  course: TorchCourse,
  time: number,
): TorchPlace | undefined {
  for (const pass of passes) {
    const place = placeIn(pass, course, time);
    if (place !== undefined) return { pass: pass.number, place };
  }
  return undefined;
}

function placeIn({ at, travel, changes }: TorchPass, course: TorchCourse, time: number): number | undefined {
  const { station, from, to, changeTime } = course;
  const before = changes.filter((change) => change < station).length;
  let clock = at - (station - from) / travel - before * changeTime;
  let place = from;
  if (time < clock) return undefined;
  for (const change of changes) {
    const arrival = clock + (change - place) / travel;
    if (time < arrival) return place + (time - clock) * travel;
    place = change;
    clock = arrival + changeTime;
    if (time < clock) return place;
  }
  const left = place + (time - clock) * travel;
  return left <= to ? left : undefined;
}
