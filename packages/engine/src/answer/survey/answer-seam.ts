import { runOutLength } from '../../groove/index.ts';
import { repairPreheat } from '../../heat/index.ts';
import type { Job, ReadJob } from '../../job/index.ts';
import type { Knowledge } from '../../learn/index.ts';
import { metalOf } from '../../material/index.ts';
import { normalProbability, normalQuantile } from '../../numeric/index.ts';
import { cleaningTime, type PlanOutcome } from '../../plan/index.ts';
import {
  beliefOfElectrode,
  depthCeiling,
  middleLaw,
  PASS_DEPTH_MOST,
  type RemovalBelief,
  type SpreadLevels,
} from '../../removal/index.ts';
import type { Answer } from '../../result/index.ts';
import type { DepthAlong } from '../../run/index.ts';
import {
  type CutAgain,
  cutOf,
  DECISION_RULE,
  type DepthBand,
  type FaultSpot,
  fusePieces,
  hasUnseenEnds,
  type JudgedReading,
  judgeSeam,
  nextStations,
  plateLeftOf,
  type RepairLaw,
  recutOf,
  type SeamDepth,
  type SeamGauged,
  type SeamOutcome,
  type SeamPosterior,
  type SeamReading,
  type SeamSpread,
  type SeamSpreadNode,
  type SeamVerdict,
  type SeamWidth,
  type SetAsideReason,
  type Stretch,
  slipOf,
  spotFaults,
  spreadAfter,
  withFaultEnds,
} from '../../survey/index.ts';
import { beliefOfJob } from '../knowledge/belief-of-job.ts';

/** Places of the curve [-]. */
const PLACES = 240;
/** Part of the predicted depth below which a reading says no more than that nothing was cut [-]. */
const NOTHING_CUT = 0.03;
/** Quantile of a normal distribution at 95 % [-]. */
const Q95 = normalQuantile(0.95);
/** Plate left for which a preheat is told at least: below it next to nothing is left [m]. */
const PLATE_LEAST = 1e-3;
/** Length over which a repair pass comes up to depth, in electrode diameters (judgement, no source) [-]. */
const RAMP = 1;

/** Prediction along the seam before anything is measured: medians at places, and the spread of ln depth. */
interface SeamPrediction {
  readonly from: 'plan' | 'run';
  readonly medianAt: (place: number) => number;
  /** In the middle of the nodes. */
  readonly spread: SeamSpread;
  readonly nodes: readonly SeamSpreadNode[];
}

/** What the readings say of the seam of a job: curve, verdicts, where to measure next, what to cut again. */
export function answerSeam(
  {
    read,
    answer,
    knowledge,
  }: { readonly read: ReadJob; readonly answer: Answer; readonly knowledge: Knowledge | undefined },
  gauged: readonly SeamGauged[],
  run: DepthAlong | undefined,
  recuts: readonly CutAgain[] = [],
  readingSd?: number,
): SeamOutcome | null {
  const { job } = read;
  const plan = answer.basis?.plan;
  if (plan === undefined) return null;
  const belief = beliefOfElectrode(beliefOfJob(job, knowledge), plan.electrode);
  const prediction = predictionOf(plan, belief, run);
  const runOut = Math.min(runOutLength(job.groove), 0.4 * job.seam.length);
  const at = Array.from(
    { length: PLACES + 1 },
    (_, i) => runOut + ((job.seam.length - 2 * runOut) * i) / PLACES,
  );
  const total = Math.hypot(prediction.spread.common, prediction.spread.course);
  const judged = gauged.map((reading): JudgedReading => {
    const outside = reading.at < -1e-9 || reading.at > job.seam.length * (1 + 1e-9);
    if (!outside && reading.gaugeFailed === true) return { reading, why: 'gauge_failed', wouldBe: null };
    const isGone = (reading.afterRecut ?? 0) < cutOf(reading.at, recuts);
    const isEarly = isBeforeLast(reading, plan);
    const slip =
      outside || isEarly ? undefined : slipOf(reading.depth, prediction.medianAt(reading.at), total);
    const why: SetAsideReason | null = outside
      ? 'outside_seam'
      : isGone
        ? 'cut_again'
        : isEarly
          ? 'before_last_pass'
          : (slip?.reason ?? null);
    return { reading, why, wouldBe: isGone ? null : (slip?.wouldBe ?? null) };
  });
  const plausible = judged.filter(({ why }) => why === null).map(({ reading }) => reading);
  const lnOf = ({ at: place, depth, u }: SeamGauged): SeamReading => {
    const median = prediction.medianAt(place);
    const seen = Math.max(depth, NOTHING_CUT * median);
    return { at: place, value: Math.log(seen / median), sd: Math.max(u / seen, 1e-4) };
  };
  const fused = (readings: readonly SeamGauged[], places: readonly number[]): SeamPosterior =>
    fusePieces(prediction.spread, readings.map(lnOf), places, recuts);
  const band = bandOf(job);
  const apart = apartFrom(plausible, fused, prediction, total, band);
  const used = plausible.filter((reading) => !apart.includes(reading));
  const spread = spreadAfter(prediction.nodes, used.map(lnOf), recuts);
  const posterior = fusePieces(spread, used.map(lnOf), at, recuts);
  const depth: SeamDepth = { median: at.map(prediction.medianAt), posterior };
  const spots = spotsOf(apart, used, band, at);
  const stretches = spotFaults(judgeSeam(depth, band), spots);
  const stakes = stakesOf(job, plan);
  const law = repairLaw(job, plan, belief, depth, spread);
  const floor = withFaults(depth, spots, apart);
  const next = withFaultEnds(
    nextStations(depth, band, readingSd ?? job.kit.gauge.reading_sd, stakes),
    stretches.filter((stretch) => hasUnseenEnds(stretch, law)),
    stakes,
  );
  const width = widthAlong(job, plan, belief, used, at, recuts);
  const remaining = judgeSeam(depth, { least: 1e-9, most: job.plate.thickness - job.groove.ligament_least });
  const far = used.filter(({ at: place, depth: seen, u }) => {
    const median = prediction.medianAt(place);
    return (
      Math.abs(Math.log(Math.max(seen, NOTHING_CUT * median) / median)) > 5 * Math.hypot(total, u / median)
    );
  });
  const last = plan.passes.at(-1)!;
  return {
    // a width that nobody measured is told, and does not hold a groove up
    verdict: worstOf([...stretches, ...remaining, ...(width.readings > 0 ? width.stretches : [])]),
    remaining: { verdict: worstOf(remaining), stretches: remaining },
    width,
    spread: { before: prediction.spread, after: spread },
    prediction: prediction.from,
    curve: at.map((place, i) => {
      const p50 = depth.median[i]! * Math.exp(posterior.mean[i]!);
      const [p05, p95] = [-Q95, Q95].map((z) => p50 * Math.exp(z * posterior.sd[i]!));
      return { at: place, depth: { p05: p05!, p50, p95: p95! } };
    }),
    band,
    thickness: job.plate.thickness,
    ligamentLeast: job.groove.ligament_least,
    readings: judged,
    stretches,
    rule: DECISION_RULE,
    next,
    riskUnit: stakes.perSecond === undefined ? 'm' : job.rates.currency,
    recuts: stretches
      .filter(({ verdict }) => verdict === 'fails')
      .map((stretch) => {
        const recut = recutOf(stretch, floor, band, law);
        const plateLeft = plateLeftOf(recut, floor, law, job.plate.thickness);
        return {
          from: stretch.from,
          to: stretch.to,
          recut,
          plateLeft,
          preheat: repairPreheat(job, Math.max(plateLeft.p50, PLATE_LEAST)),
        };
      }),
    setting: {
      current: last.current,
      voltage: last.voltage,
      pushAngle: last.pushAngle,
      diameter: plan.electrode.diameter,
    },
    apart,
    isFar: far.length > 0 && far.length >= used.length / 2,
  };
}

/** Whether passes of the plan were still to come at a place when it was read. */
function isBeforeLast({ at, afterPass }: SeamGauged, { passes }: PlanOutcome): boolean {
  return (
    afterPass !== undefined &&
    passes.some(({ number, from, to }) => number > afterPass && at >= from - 1e-9 && at <= to + 1e-9)
  );
}

/** Standard deviations from which a reading stands apart from all around it [-]. */
const APART = 5;
/** Length to either side for which a reading that stands apart speaks, at most [m]. */
const SPOT_MOST = 0.125;

/** Readings that lie out of the band and far from what prediction and the others say: faults at one place. */
function apartFrom(
  readings: readonly SeamGauged[],
  fused: (readings: readonly SeamGauged[], places: readonly number[]) => SeamPosterior,
  prediction: SeamPrediction,
  total: number,
  { least, most }: DepthBand,
): readonly SeamGauged[] {
  const off = ({ at, depth }: SeamGauged): number =>
    Math.log(Math.max(depth, NOTHING_CUT * prediction.medianAt(at)) / prediction.medianAt(at));
  const suspects = readings.filter(
    (reading) => Math.abs(off(reading)) > APART * total && (reading.depth < least || reading.depth > most),
  );
  // where most are far, the whole groove is
  if (suspects.length === 0 || suspects.length >= readings.length / 2) return [];
  const others = readings.filter((reading) => !suspects.includes(reading));
  const around = fused(
    others,
    suspects.map(({ at }) => at),
  );
  return suspects.filter(
    (reading, i) =>
      Math.abs(off(reading) - around.mean[i]!) >
      APART * Math.hypot(around.sd[i]!, reading.u / prediction.medianAt(reading.at)),
  );
}

/** The stretches for which readings that stand apart speak: half way to the next other reading at most. */
function spotsOf(
  apart: readonly SeamGauged[],
  used: readonly SeamGauged[],
  { least, most }: DepthBand,
  at: readonly number[],
): readonly FaultSpot[] {
  const reach = (place: number, side: -1 | 1): number => {
    const next = used.map((other) => (other.at - place) * side).filter((distance) => distance > 0);
    return Math.min(SPOT_MOST, ...next.map((distance) => distance / 2));
  };
  const spots = [...apart]
    .sort((a, b) => a.at - b.at)
    .map(({ at: place, depth, u }): FaultSpot => {
      const from = Math.max(at[0]!, place - reach(place, -1));
      const to = Math.min(at.at(-1)!, place + reach(place, 1));
      return {
        from,
        to,
        miss: depth < least ? 'shallow' : 'deep',
        chanceInside: Math.max(
          0,
          normalProbability((most - depth) / u) - normalProbability((least - depth) / u),
        ),
        unseen: { before: place - from, after: to - place },
      };
    });
  // neighbours are one fault
  return spots.reduce<FaultSpot[]>((out, spot) => {
    const last = out.at(-1);
    if (last !== undefined && spot.from <= last.to)
      out[out.length - 1] = {
        ...last,
        to: spot.to,
        chanceInside: Math.max(last.chanceInside, spot.chanceInside),
        unseen: { before: last.unseen.before, after: spot.unseen.after },
      };
    else out.push(spot);
    return out;
  }, []);
}

/** The floor that is mended: the curve, and where a reading stands apart from it the depth that was read there. */
function withFaults(depth: SeamDepth, spots: readonly FaultSpot[], apart: readonly SeamGauged[]): SeamDepth {
  if (spots.length === 0) return depth;
  const { median, posterior } = depth;
  const { at, mean, sd } = posterior;
  const faults = at.map((place) =>
    spots.some(({ from, to }) => place >= from - 1e-9 && place <= to + 1e-9)
      ? apart.reduce((best, each) => (Math.abs(each.at - place) < Math.abs(best.at - place) ? each : best))
      : undefined,
  );
  const readDepth = ({ depth: seen }: SeamGauged): number => Math.max(seen, 1e-5);
  const spread = (fault: SeamGauged): number => fault.u / readDepth(fault);
  return {
    median: median.map((each, i) => (faults[i] === undefined ? each : readDepth(faults[i]))),
    posterior: {
      ...posterior,
      mean: mean.map((each, i) => (faults[i] === undefined ? each : 0)),
      sd: sd.map((each, i) => (faults[i] === undefined ? each : spread(faults[i]))),
      draw: (stream) => {
        const course = posterior.draw(stream);
        // one reading is off by one error wherever it speaks
        const errors = new Map(apart.map((reading) => [reading, stream.normal() * spread(reading)]));
        return course.map((each, i) => (faults[i] === undefined ? each : errors.get(faults[i])!));
      },
    },
  };
}

function bandOf({ groove, plate }: Job): DepthBand {
  const { wanted, plus, minus } = groove.depth;
  return { least: wanted - minus, most: Math.min(wanted + plus, plate.thickness - groove.ligament_least) };
}

/** The worst verdict of stretches. */
function worstOf(stretches: readonly Stretch[]): SeamVerdict {
  const verdicts = stretches.map(({ verdict }) => verdict);
  return verdicts.includes('fails') ? 'fails' : verdicts.includes('in_doubt') ? 'in_doubt' : 'holds';
}

/** The plan's own floor, or the depth by the log of the run, with the spread of the removal law about it. */
function predictionOf(plan: PlanOutcome, belief: RemovalBelief, run: DepthAlong | undefined): SeamPrediction {
  if (run !== undefined) {
    const cellAt = (place: number): number =>
      Math.min(run.cells - 1, Math.max(0, Math.floor(place / run.cell)));
    const middle = Math.floor(run.cells / 2);
    return {
      from: 'run',
      medianAt: (place) => Math.max(1e-5, run.median(cellAt(place))),
      ...spreadsOf(belief, Math.log(run.at(middle, 0.95) / run.at(middle, 0.05)) / (2 * Q95)),
    };
  }
  const { p05, p50, p95 } = plan.section;
  const deepest = p50.reduce((best, depth, i) => (depth > p50[best]! ? i : best), 0);
  const median = p50[deepest]!;
  return {
    from: 'plan',
    medianAt: () => median,
    ...spreadsOf(belief, Math.log(p95[deepest]! / Math.max(p05[deepest]!, 1e-6)) / (2 * Q95)),
  };
}

/** The levels of the removal law at each of its nodes; what a prediction spreads beyond them is not known of the shop. */
function spreadsOf(belief: RemovalBelief, total: number): Pick<SeamPrediction, 'spread' | 'nodes'> {
  const mean = (of: (levels: SpreadLevels) => number): number =>
    belief.depth.reduce((sum, { weight, levels }) => sum + weight * of(levels), 0);
  const own = mean(({ job, pass }) => job ** 2 + pass ** 2);
  const course = mean(({ seam }) => seam ** 2);
  const family = Math.max(0, total ** 2 - own - course);
  const range = belief.seamRange;
  return {
    spread: { common: Math.sqrt(family + own), course: Math.sqrt(course), range },
    nodes: belief.depth.map(({ weight, levels: { job, pass, seam } }) => ({
      weight,
      spread: { common: Math.sqrt(family + job ** 2 + pass ** 2), course: seam, range },
    })),
  };
}

/** Part of a width below which it is no width of this groove [-]. */
const WIDTH_LEAST = 0.03;

/** The width along the seam: the plan's, with the widths that were measured; judged against its own band. */
function widthAlong(
  { groove }: Job,
  plan: PlanOutcome,
  belief: RemovalBelief,
  used: readonly SeamGauged[],
  at: readonly number[],
  recuts: readonly CutAgain[],
): SeamWidth {
  const { p05, p50, p95 } = plan.width;
  const total = Math.log(p95 / Math.max(p05, 1e-6)) / (2 * Q95);
  // along a pass it is taken to wander as it does from pass to pass (judgement, no source)
  const pass = Math.sqrt(belief.extraWidth.reduce((sum, { weight, pass: sd }) => sum + weight * sd ** 2, 0));
  const course = Math.max(pass / p50, 1e-3);
  const common = Math.max(course, Math.sqrt(Math.max(0, total ** 2 - course ** 2)));
  const given = used.flatMap(({ at: place, width }) => (width === undefined ? [] : [{ place, ...width }]));
  const good = given.filter(({ value }) => slipOf(value, p50, Math.hypot(common, course)) === undefined);
  const readings = good.map(({ place, value, u }): SeamReading => {
    const seen = Math.max(value, WIDTH_LEAST * p50);
    return { at: place, value: Math.log(seen / p50), sd: Math.max(u / seen, 1e-4) };
  });
  const posterior = fusePieces({ common, course, range: belief.seamRange }, readings, at, recuts);
  const band = groove.width;
  const stretches = judgeSeam({ median: at.map(() => p50), posterior }, band);
  return {
    verdict: worstOf(stretches),
    readings: good.length,
    setAside: given.length - good.length,
    band: { least: band.least, most: band.most },
    stretches,
    curve: at.map((_, i) => {
      const middle = p50 * Math.exp(posterior.mean[i]!);
      const [low, high] = [-Q95, Q95].map((z) => middle * Math.exp(z * posterior.sd[i]!));
      return { p05: low!, p50: middle, p95: high! };
    }),
  };
}

/** What a wrong rejection and a reading cost: money where a labour rate is stated, metres of groove where not. */
function stakesOf({ rates, after }: Job, plan: PlanOutcome) {
  const perHour = rates.labour_per_hour + after.overhead_per_hour;
  const travel = plan.passes.at(-1)?.travel ?? 0.01;
  const perSecond = perHour / 3600;
  const readingTime = Math.max(1, rates.gauge_time);
  return perHour > 0
    ? {
        perMetre: perSecond * (1 / travel + cleaningTime(rates, 1) + rates.start_time),
        readingTime,
        perSecond,
      }
    : { perMetre: 1, readingTime };
}

/** How a repair pass cuts on this seam: the plan's last setting, as the readings have it. */
function repairLaw(
  job: Job,
  plan: PlanOutcome,
  belief: RemovalBelief,
  depth: SeamDepth,
  spread: SeamSpread,
): RepairLaw {
  const last = plan.passes.at(-1)!;
  const { mean, sd } = depth.posterior;
  const common = mean.reduce((sum, each) => sum + each, 0) / mean.length;
  const pass = Math.sqrt(
    belief.depth.reduce((sum, { weight, levels }) => sum + weight * levels.pass ** 2, 0),
  );
  const known = Math.min(...sd);
  const metal = metalOf(job.plate.material, job.plate.composition);
  const power = middleLaw(belief)[1]!;
  const usual = last.depth.p50 * Math.exp(common);
  const slowest = last.travel * (usual / (PASS_DEPTH_MOST * plan.electrode.diameter)) ** (1 / power);
  return {
    depth: usual,
    travel: last.travel,
    power,
    spread: { ...spread, common: Math.hypot(pass, known) },
    plateMost: job.plate.thickness - job.groove.ligament_least,
    plateChance: job.groove.ligament_assurance,
    assurance: job.groove.assurance,
    ceiling: (travel) =>
      depthCeiling(
        {
          diameter: plan.electrode.diameter,
          current: last.current,
          voltage: last.voltage,
          travel,
          pushAngle: last.pushAngle,
        },
        plan.width.p50,
        belief.meltingEnergy,
      ),
    travelLeast: Math.min(job.kit.travel.most, Math.max(job.kit.travel.least, slowest)),
    travelMost: job.kit.travel.most,
    ramp: RAMP * plan.electrode.diameter,
    density: metal.density.value,
    width: plan.width.p50,
  };
}
