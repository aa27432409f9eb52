import type { Source } from '../limit/index.ts';

/** Least, middle and most of a share or a heat. */
export interface HeatSpan {
  /** Least [unit of the quantity]. */
  readonly least: number;
  /** Middle [unit of the quantity]. */
  readonly middle: number;
  /** Most [unit of the quantity]. */
  readonly most: number;
}

/** One pass as its energy balance sees it. */
export interface PassEnergy {
  /** Current [A]. */
  readonly current: number;
  /** Arc voltage [V]. */
  readonly voltage: number;
  /** Travel [m/s]. */
  readonly travel: number;
  /** Section that the pass takes off [m2]. */
  readonly area: number;
  /** Length across the section of the face it leaves [m]. */
  readonly face: number;
  /** How long the arc lies over a place [s]. */
  readonly duration: number;
}

/** What it takes to melt the metal. */
export interface MeltingNeed {
  /** Energy to heat and melt a unit volume [J/m3]. */
  readonly energy: number;
  /** Heat that brings a face to melting, per area and root of time, from `faceHeat` [J/(m2 s^0.5)]. */
  readonly face: number;
}

/** Gross energy of a pass per length of seam and where it goes. */
export interface KeptHeat {
  /** Arc energy per length, U I / v [J/m]. */
  readonly gross: number;
  /** What leaves with the melt, for the middle superheat [J/m]. */
  readonly withMelt: number;
  /** Share of the arc energy that the plate keeps [-]. */
  readonly share: HeatSpan;
  /** Share of the arc energy that must reach the work for both: what is kept and what leaves with the melt [-]. */
  readonly reaching: HeatSpan;
}

/** Ends of the share that the job states, where it does. */
export interface StatedShare {
  /** Least [-]. */
  readonly least?: number | undefined;
  /** Most [-]. */
  readonly most?: number | undefined;
}

/** Share of the arc power that reaches the work: measured for plasma, tungsten and consumable-electrode arcs [-]. */
export const ARC_SHARE: HeatSpan = { least: 0.47, middle: 0.67, most: 0.84 };
/** How far above melting the metal leaves: the more it takes along, the less is kept (judgement) [K]. */
const SUPERHEAT: HeatSpan = { least: 400, middle: 200, most: 0 };
/** Heat capacity of the melt per volume of cold metal, 820 J/(kg K) for steel, as a share of the melting energy per kelvin [1/K]. */
const SUPERHEAT_SHARE = (820 * 7850) / 10.1427e9;
/** The greatest share is at least so many times what heats the face (judgement) [-]. */
const FACES_MOST = 1.5;
/** Share that is left to keep, at least, however much the melt takes [-]. */
const LEFT_LEAST = 0.03;

/** Where the shares come from, in words. */
export const KEPT_SOURCES: readonly {
  readonly topic: string;
  readonly text: string;
  readonly source: Source;
}[] = [
  {
    topic: 'Heat that reaches the work',
    text: 'No measured value was found for air carbon-arc gouging. Taken: 47 to 84 % of the arc power, middle 67 %, as measured for plasma, tungsten and consumable-electrode arcs on steel; more where melting the groove out and heating its face need more.',
    source: {
      text: 'DuPont and Marder, Welding Journal 74 (1995), three other arc processes; their use here is judgement',
      provenance: 'derived',
    },
  },
  {
    topic: 'Heat that leaves with the melt',
    text: 'The metal cut out leaves molten, 0 to 400 K above its melting point, middle 200 K; what it takes along is not in the plate.',
    source: { text: 'energy balance; the superheat is judgement, no source', provenance: 'derived' },
  },
  {
    topic: 'Heat of the face',
    text: 'The face that the melt leaves was at its melting point: the plate keeps at least the heat that brings it there while the arc lies over it.',
    source: {
      text: 'Carslaw and Jaeger 2.9, even flux on a thick plate, mean properties',
      provenance: 'derived',
    },
  },
];

/**
 * The balance as a band that never shuts: no less than what heats the face, no more than the melt leaves of the
 * arc's energy, the middle inside.
 */
function bandOf(balance: HeatSpan, face: number, left: number): HeatSpan {
  const least = Math.min(Math.max(face, balance.least), left / FACES_MOST);
  const most = Math.min(Math.max(balance.most, FACES_MOST * least), left);
  return { least, middle: Math.min(most, Math.max(balance.middle, (2 * least + most) / 3)), most };
}

/** What the job states in place of the balance; a lone end pushes the others out of its way. */
function withStated(share: HeatSpan, { least, most }: StatedShare): HeatSpan {
  if (least !== undefined && most !== undefined) return { least, middle: (least + most) / 2, most };
  const low = least ?? Math.min(share.least, most ?? share.least);
  const high = most ?? Math.max(share.most, least ?? share.most);
  return { least: low, middle: Math.min(high, Math.max(low, share.middle)), most: high };
}

/**
 * Share of a pass's arc energy that the plate keeps, as a band: what reaches the work less what leaves with the melt.
 *
 * kept = reaching - A v e / (U I), with e the energy to melt a unit volume and the superheat of the melt; no less
 * than what brings the face left behind to melting, and no more than the melt leaves. Nobody has measured it for
 * this process, so it is a span; ends that the job states take its place.
 *
 * @param pass - current, voltage, travel, section, face and time over a place [record], each > 0
 * @param need - melting energy, and heat of a face per root of time [record], each > 0
 * @param stated - ends of the share stated by the job [record], 0 to 1, either may be left out
 * @returns gross energy, what leaves with the melt, the share kept and the share that must reach the work [record]
 * @source derived: energy balance; reaching share: DuPont and Marder 1995 for other arcs (judgement here)
 * @example
 * keptHeat({ current: 900, voltage: 42, travel: 0.012, area: 6e-5, face: 0.02, duration: 1 }, { energy: 1.01427e10, face: 1.67e7 }, {}).gross // => 3150000
 * keptHeat({ current: 900, voltage: 42, travel: 0.012, area: 6e-5, face: 0.02, duration: 1 }, { energy: 1.01427e10, face: 1.67e7 }, {}).share.most // => 0.64680571
 * keptHeat({ current: 900, voltage: 42, travel: 0.012, area: 6e-5, face: 0.02, duration: 1 }, { energy: 1.01427e10, face: 1.67e7 }, {}).reaching.middle // => 0.67
 */
export function keptHeat(pass: PassEnergy, need: MeltingNeed, stated: StatedShare): KeptHeat {
  const gross = (pass.current * pass.voltage) / pass.travel;
  const melt = (end: keyof HeatSpan): number =>
    pass.area * need.energy * (1 + SUPERHEAT[end] * SUPERHEAT_SHARE);
  const rest = (end: keyof HeatSpan): number => ARC_SHARE[end] - melt(end) / gross;
  const balance = { least: rest('least'), middle: rest('middle'), most: rest('most') };
  const face = (pass.face * need.face * Math.sqrt(pass.duration)) / gross;
  const left = Math.max(LEFT_LEAST, 1 - melt('most') / gross);
  const share = withStated(bandOf(balance, face, left), stated);
  const reaching = (end: keyof HeatSpan): number => share[end] + melt('middle') / gross;
  return {
    gross,
    withMelt: melt('middle'),
    share,
    reaching: { least: reaching('least'), middle: reaching('middle'), most: reaching('most') },
  };
}
