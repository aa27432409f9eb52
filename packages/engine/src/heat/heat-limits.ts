import { faceLength, passArea } from '../groove/index.ts';
import type { Job } from '../job/index.ts';
import { type Candidate, type LimitFunction, limitOf } from '../limit/index.ts';
import type { ThermalMetal } from '../material/index.ts';
import { type BackFaceInput, backFaceEstimate, backFaceShare } from './back-face.ts';
import { faceHeat } from './face-heat.ts';
import { gougingStart } from './gouging-start.ts';
import { ARC_SHARE, keptHeat, type MeltingNeed } from './kept-heat.ts';

/** Plate reckoned with at least, where the tolerance would let the groove go through [m]. */
const LIGAMENT_LEAST = 1e-3;

/** Plate left under the deepest point accepted, where the back face gets hottest, and no less than the job asks to keep. */
function ligamentOf({ groove, plate }: Job): number {
  const least = plate.thickness - groove.depth.wanted - groove.depth.plus;
  return Math.max(least, groove.ligament_least, LIGAMENT_LEAST);
}

/**
 * Highest temperature of the back face against what the job says it stands, as a limit for the planner.
 *
 * An upper estimate: the greatest share of heat kept, every pass at the depth where the last one ends. It limits only where the job
 * states what the back face stands; the heat report follows the field itself.
 *
 * @param metal - the metal's table [record], from `thermalOf`
 * @param meltingEnergy - energy to heat and melt a unit volume [J/m3], > 0
 * @returns the limit function [record]
 * @source derived: strip source on the ligament by image sums; the limit itself is the job's
 * @example
 * const job = { ...demoJob.job, heat: { ...demoJob.job.heat, back_face_most: 473.15 } };
 * heatLimits(thermalOf('carbon_steel'), 1.01e10)({ electrode: { diameter: 0.0127 }, current: 900, voltage: 42, travel: 0.0423, passDepth: 0.005, passWidth: 0.016, tracks: 1, layers: 1, passLength: 6 }, job)[0].demand // => 63.026...
 */
export function heatLimits(metal: ThermalMetal, meltingEnergy: number): LimitFunction {
  let known: JobHeat | undefined;
  return (candidate, job) => {
    const most = job.heat.back_face_most;
    if (most === undefined) return [];
    if (known?.job !== job) known = jobHeat(job, metal, meltingEnergy);
    return [
      limitOf({
        id: 'back_face',
        title: 'Back face, upper estimate',
        demand: backFaceOf(candidate, known),
        capacity: most,
        unit: 'degC',
        sense: 'most',
        hard: true,
        source: { text: 'the job: what the back face stands', provenance: 'job file' },
        remedy:
          'less heat in each pass: more layers at more travel, or a smaller electrode; a cooler start; longer waits between passes; less depth allowed beyond the wanted',
      }),
    ];
  };
}

/** What all candidates of a job share, worked out once. */
interface JobHeat {
  readonly job: Job;
  readonly metal: ThermalMetal;
  /** Temperature of the plate before the first pass [K]. */
  readonly start: number;
  readonly need: MeltingNeed;
  /** Plate under the groove [m]. */
  readonly ligament: number;
  /** Greatest heat content at the back per heat kept, by width of the pass: for one track, and for several [1/m2]. */
  readonly shares: readonly [Map<number, number>, Map<number, number>];
}

function jobHeat(job: Job, metal: ThermalMetal, meltingEnergy: number): JobHeat {
  const start = gougingStart(job).temperature;
  const need = { energy: meltingEnergy, face: faceHeat(metal, start) };
  return { job, metal, start, need, ligament: ligamentOf(job), shares: [new Map(), new Map()] };
}

/**
 * Arc power that melting the groove out and heating its face take, against what arcs bring to the work, as advice to the planner.
 *
 * (A v e + face heat) / (U I), without superheat and with the face just brought to melting: the least that the pass
 * asks for. Over 84 %, the most measured for other arcs, the pass is quicker than its arc can be expected to cut.
 *
 * @param metal - the metal's table [record], from `thermalOf`
 * @param meltingEnergy - energy to heat and melt a unit volume [J/m3], > 0
 * @returns the limit function [record]
 * @source derived: energy balance; DuPont and Marder 1995 for other arcs (judgement here)
 * @example
 * arcReachLimit(thermalOf('carbon_steel'), 1.01e10)({ electrode: { diameter: 0.0127 }, current: 900, voltage: 42, travel: 0.0423, passDepth: 0.005, passWidth: 0.016, tracks: 1, layers: 1, passLength: 6 }, { heat: { ambient: 293.15, preheat: 293.15 } })[0].demand // => 80.847...
 */
export function arcReachLimit(metal: ThermalMetal, meltingEnergy: number): LimitFunction {
  const need = new Map<number, MeltingNeed>();
  return (candidate, job) => {
    const start = gougingStart(job).temperature;
    const needed = need.get(start) ?? { energy: meltingEnergy, face: faceHeat(metal, start) };
    need.set(start, needed);
    const { current, voltage, travel, passDepth, passWidth, electrode } = candidate;
    const melting = passArea({ width: passWidth, depth: passDepth }) * meltingEnergy;
    const face =
      faceLength({ width: passWidth, depth: passDepth }) *
      needed.face *
      Math.sqrt(electrode.diameter / travel);
    return [
      limitOf({
        id: 'arc_reach',
        title: 'Arc power to melt the groove out and heat its face',
        demand: (travel * (melting + face)) / (current * voltage),
        capacity: ARC_SHARE.most,
        unit: '%',
        sense: 'most',
        hard: false,
        source: {
          text: 'energy balance; the most that was measured for three other arc processes, DuPont and Marder 1995',
          provenance: 'derived',
        },
        remedy: 'more layers, each shallower',
      }),
    ];
  };
}

function backFaceOf(candidate: Candidate, known: JobHeat): number {
  const { electrode, current, voltage, travel, passLength, passDepth, passWidth, tracks, layers } = candidate;
  const { job, metal, start, need, ligament, shares } = known;
  const { gross, share } = keptHeat(
    {
      current,
      voltage,
      travel,
      area: passArea({ width: passWidth, depth: passDepth }),
      face: faceLength({ width: passWidth, depth: passDepth }),
      duration: electrode.diameter / travel,
    },
    need,
    { least: job.heat.kept_least, most: job.heat.kept_most },
  );
  const input: BackFaceInput = {
    metal,
    thickness: job.plate.thickness,
    ligament,
    width: passWidth,
    tracks,
    kept: gross * share.most,
    start,
    passes: tracks * layers,
    interval: passLength / travel + passLength / job.rates.return_travel + job.rates.start_time,
    interpassMost: job.heat.interpass_most,
  };
  const byWidth = shares[tracks > 1 ? 1 : 0];
  const atBack = byWidth.get(passWidth) ?? backFaceShare(input);
  byWidth.set(passWidth, atBack);
  return backFaceEstimate(input, atBack);
}
