import type { Job } from '../job/index.ts';
import type { Tryout, Way } from './way.ts';

/** Ways that differ only in numbers: parts of the depth, stations, length of a trial. */
export interface WayFamily {
  readonly ways: readonly Way[];
  /** Layers that are run whatever is gauged [-]: those before the first stop. */
  readonly layersLeast: number;
}

/** Lengths of a trial or a run-in that are tried, and the least [m]; those between are tried once the best is known. */
const TRYOUT_LENGTHS = [0.15, 0.4, 1] as const;
const TRYOUT_LEAST = 0.1;
/** Numbers of stations that are tried [-]; those between them are tried once the best of these is known. */
const STATIONS = [1, 2, 3, 5, 8, 12, 20, 35, 50] as const;
/** The same where much else is tried with them [-]. */
const STATIONS_FEW = [1, 2, 5, 12, 28] as const;
/** Parts of the depth that the first of two layers takes off [-]. */
const FIRST_OF_TWO = [0.5, 0.6, 0.7, 0.8, 0.88, 0.95] as const;
/** Parts that the last layer takes off where more than two are run [-]. */
const LAST_OF_MORE = [0.12, 0.2, 0.3] as const;
/** Gauge stops of one plan at most [-]. */
const STOPS_MOST = 2;
/** Part of the seam that a run-in may take up at most [-]. */
const RUN_IN_MOST = 0.4;

/** Families of the jobs in work: every electrode, current and spacing of a job asks for the same. */
const known = new WeakMap<Job, Map<string, readonly WayFamily[]>>();

/** Every family of ways that the job and its kit allow. */
export function wayFamilies(job: Job, tracks: number, passLength: number): readonly WayFamily[] {
  const ofJob = known.get(job) ?? new Map<string, readonly WayFamily[]>();
  known.set(job, ofJob);
  const key = `${tracks > 1}/${passLength}`;
  const made = ofJob.get(key) ?? makeFamilies(job, tracks, passLength);
  ofJob.set(key, made);
  return made;
}

function makeFamilies(job: Job, tracks: number, passLength: number): WayFamily[] {
  const { plan, locks, kit } = job;
  const layersLeast = locks.layers ?? 1;
  const layersMost = locks.layers ?? plan.layers_most;
  const mayGauge = plan.gauge_stops === 'allowed' && locks.travel === undefined;
  const stations = upTo(STATIONS, kit.gauge.stations_most);
  const few = upTo(STATIONS_FEW, kit.gauge.stations_most);
  // Tracks side by side have many patterns, so that fewer numbers are tried for each; those between come later.
  const atStops = tracks > 1 ? few : stations;
  const families: WayFamily[] = [];
  const tryouts = mayGauge ? tryoutsOf(job, tracks, passLength, stations) : [];
  for (let layers = layersLeast; layers <= layersMost; layers += 1) {
    const even = evenShares(layers);
    const split = layers === 2 ? [even, [0.65, 0.35], [0.8, 0.2]] : [even];
    families.push({
      layersLeast: layers,
      ways: split.map((shares) => ({ tryout: undefined, shares, stops: 0, stations: 1 })),
    });
    for (const { kind, list } of tryouts) {
      if (kind === 'run_in' && layers > 1) continue;
      families.push({
        layersLeast: layers,
        ways: list.flatMap((tryout) => split.map((shares) => ({ tryout, shares, stops: 0, stations: 1 }))),
      });
    }
    if (!mayGauge) continue;
    for (let stops = 1; stops <= Math.min(STOPS_MOST, layers - 1); stops += 1) {
      const shares = gaugedShares(layers, stops);
      families.push({
        layersLeast: layers - stops,
        ways: atStops.flatMap((each) =>
          shares.map((share) => ({ tryout: undefined, shares: share, stops, stations: each })),
        ),
      });
      const trials = tryouts.find(({ kind }) => kind === 'trial')?.list ?? [];
      // With both, the length of the trial hardly matters: the longest is taken, and fewer numbers are tried.
      const longest = Math.max(0, ...trials.map(({ length }) => length));
      families.push({
        layersLeast: layers - stops,
        ways: trials
          .filter(
            ({ length, stations: own }) =>
              length === longest && few.includes(own) && (own > 1 || few.length === 1),
          )
          .flatMap((tryout) =>
            few.flatMap((each) => shares.map((share) => ({ tryout, shares: share, stops, stations: each }))),
          ),
      });
    }
  }
  return families.filter(({ ways }) => ways.length > 0);
}

/** Of each family, the ways that measure most. */
const measured = new WeakMap<WayFamily, readonly Way[]>();

/** Ways of a family with the most stations, and the longest trial or run-in. */
export function mostMeasured(family: WayFamily): readonly Way[] {
  const known = measured.get(family);
  if (known !== undefined) return known;
  const most = (of: (way: Way) => number): number => Math.max(...family.ways.map(of));
  const stations = most((way) => way.stations);
  const length = most(({ tryout }) => tryout?.length ?? 0);
  const tried = most(({ tryout }) => tryout?.stations ?? 0);
  const made = family.ways.filter(
    ({ tryout, stations: own }) =>
      own === stations && (tryout === undefined || (tryout.length === length && tryout.stations === tried)),
  );
  measured.set(family, made);
  return made;
}

/** Of each family, the ways that measure least. */
const hardlyMeasured = new WeakMap<WayFamily, readonly Way[]>();

/** Ways of a family with the fewest stations, and the shortest trial; of run-ins the longest too, which takes less where layers do. */
export function leastMeasured(family: WayFamily): readonly Way[] {
  const known = hardlyMeasured.get(family);
  if (known !== undefined) return known;
  const stations = Math.min(...family.ways.map((way) => way.stations));
  const tried = Math.min(...family.ways.map(({ tryout }) => tryout?.stations ?? 0));
  const lengths = family.ways.map(({ tryout }) => tryout?.length ?? 0);
  const [shortest, longest] = [Math.min(...lengths), Math.max(...lengths)];
  const made = family.ways.filter(
    ({ tryout, stations: own }) =>
      own === stations &&
      (tryout === undefined ||
        (tryout.stations === tried &&
          (tryout.length === shortest || (tryout.kind === 'run_in' && tryout.length === longest)))),
  );
  hardlyMeasured.set(family, made);
  return made;
}

/** Ways near a way: what the coarse numbers may have stepped over. */
export function waysNear(way: Way, job: Job, passLength: number): Way[] {
  const near: Way[] = [];
  const { tryout, shares, stops, stations } = way;
  const most = job.kit.gauge.stations_most;
  if (tryout !== undefined) {
    for (const each of [tryout.stations - 1, tryout.stations + 1]) {
      if (each >= 1 && each <= most) near.push({ ...way, tryout: { ...tryout, stations: each } });
    }
    const longest = tryoutMost(job, tryout.kind, passLength);
    for (const length of [tryout.length * 0.75, Math.min(longest, tryout.length * 1.3)]) {
      if (length >= TRYOUT_LEAST && length !== tryout.length)
        near.push({ ...way, tryout: { ...tryout, length } });
    }
  }
  if (stops > 0) {
    for (const each of [stations - 1, stations + 1]) {
      if (each >= 1 && each <= most) near.push({ ...way, stations: each });
    }
    const last = shares.length - 1;
    for (const part of [0.5, 0.7, 0.85, 1.2].map((factor) => factor * shares[last]!)) {
      if (part > 0.04 && part < 0.6) {
        const rest = (1 - part) / (1 - shares[last]!);
        near.push({ ...way, shares: shares.map((share, layer) => (layer === last ? part : share * rest)) });
      }
    }
  }
  return near;
}

function tryoutsOf(
  job: Job,
  tracks: number,
  passLength: number,
  stations: readonly number[],
): { readonly kind: Tryout['kind']; readonly list: readonly Tryout[] }[] {
  const listOf = (kind: Tryout['kind']): Tryout[] =>
    upTo(TRYOUT_LENGTHS, tryoutMost(job, kind, passLength))
      .filter((length) => kind === 'trial' || length >= TRYOUT_LEAST)
      .flatMap((length) => stations.map((each) => ({ kind, length, stations: each })));
  return [
    ...(job.kit.trial.on === 'none' ? [] : [{ kind: 'trial' as const, list: listOf('trial') }]),
    // A pocket rises at both ends, and tracks lie side by side: there is no first stretch to cut alone.
    ...(tracks === 1 && job.groove.shape !== 'pocket'
      ? [{ kind: 'run_in' as const, list: listOf('run_in') }]
      : []),
  ];
}

/** Greatest length of a trial or a run-in [m]; 0 where there is none. */
function tryoutMost(job: Job, kind: Tryout['kind'], passLength: number): number {
  return kind === 'trial' ? job.kit.trial.length_most : RUN_IN_MOST * passLength;
}

/** Values of a list up to a greatest one, and that one itself where it lies between two of them or below all. */
function upTo(values: readonly number[], most: number): number[] {
  const held = values.filter((value) => value <= most);
  return most > 0 && most < values.at(-1)! && !held.includes(most) ? [...held, most] : held;
}

function evenShares(layers: number): number[] {
  return Array.from({ length: layers }, () => 1 / layers);
}

function gaugedShares(layers: number, stops: number): number[][] {
  if (layers === 2) return FIRST_OF_TWO.map((first) => [first, 1 - first]);
  return LAST_OF_MORE.map((last) => {
    const next = stops === 2 ? Math.min(0.5 * (1 - last), 1.8 * last) : 0;
    const blind = layers - stops;
    const each = (1 - last - next) / blind;
    return [...Array.from({ length: blind }, () => each), ...(stops === 2 ? [next] : []), last];
  });
}
