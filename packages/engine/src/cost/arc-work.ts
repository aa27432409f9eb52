import type { CostPart, StepWork } from './cycle-step.ts';
import type { GrooveSection } from './groove-section.ts';
import type { CostPractice } from './practice.ts';
import type { WorkFactors } from './work-factors.ts';

/** Median and 90th percentile. */
export interface Typical {
  /** Median [unit of the member]. */
  readonly p50: number;
  /** 90th percentile [unit of the member]. */
  readonly p90: number;
}

/** 5th percentile, median and 95th percentile. */
export interface Scatter {
  /** 5th percentile [unit of the member]. */
  readonly p05: number;
  /** Median [unit of the member]. */
  readonly p50: number;
  /** 95th percentile [unit of the member]. */
  readonly p95: number;
}

/** What a plan says of its arc and of the groove it leaves, as cost asks for it. */
export interface ArcWork {
  /** Time with the arc burning [s]. */
  readonly arcTime: Typical;
  /** Electrodes begun [-]. */
  readonly electrodes: Typical;
  /** Price of one electrode, in the job's currency [-]. */
  readonly electrodePrice: number;
  /** Passes run [-]. */
  readonly passes: number;
  /** Time of one start [s]. */
  readonly startTime: number;
  /** Time between all layers: cleaning, and setting the torch [s]. */
  readonly layerTime: number;
  /** Time of one return of the carriage [s]. */
  readonly returnTime: number;
  /** Time of one electrode change [s]. */
  readonly changeTime: number;
  /** Time of all gauge readings [s]. */
  readonly gaugeTime: number;
  /** Waits for the interpass temperature, all together [s]. */
  readonly coolingTime: number;
  /** Time before the first arc: placing and connecting [s]. */
  readonly setUpTime: number;
  /** Time before the first arc: checks [s]. */
  readonly commissioningTime: number;
  /** Price of the power while the arc burns [1/s]. */
  readonly power: number;
  /** Price of the air while the arc burns [1/s]. */
  readonly air: number;
  /** Hired plant by the day, in the job's currency [-]. */
  readonly hirePerDay: number;
  /** Working time of a day [s]. */
  readonly shift: number;
  /** The median groove. */
  readonly section: GrooveSection;
  /** Depth at its deepest [m]. */
  readonly depth: Scatter;
  /** Width at the plate's surface [m]. */
  readonly width: Scatter;
  /** Chance that the depth is reached everywhere it must [-]. */
  readonly depthReached: number;
  /** Time to mend a groove that did not reach its depth; undefined: one more pass and its cleaning [s]. */
  readonly reworkTime: number | undefined;
}

/** What one trial draws of the arc. */
export interface ArcDraw {
  /** Time with the arc burning [s]. */
  readonly arcTime: number;
  /** Electrodes begun [-]. */
  readonly electrodes: number;
  /** Whether the depth was not reached, so that it is mended. */
  readonly rework: boolean;
}

/** The steps up to the groove: set-up, checks, and everything about the arc. */
export function arcSteps(
  work: ArcWork,
  draw: ArcDraw,
  practice: CostPractice,
  factors: WorkFactors,
): readonly StepWork[] {
  const { crew } = practice;
  const plain = (step: StepWork['step'], time: number): StepWork => ({
    step,
    time,
    money: { labour: time * crew },
  });
  const burning = (time: number, electrodes: number): Partial<Record<CostPart, number>> => ({
    labour: time * crew,
    electrodes: electrodes * work.electrodePrice,
    power: time * work.power,
    air: time * work.air,
  });
  const { handling } = factors;
  return [
    plain('set_up', work.setUpTime * factors.set_up),
    plain('commissioning', work.commissioningTime * factors.commissioning),
    plain('starts', (work.passes * work.startTime + work.layerTime) * handling),
    { step: 'arc', time: draw.arcTime, money: burning(draw.arcTime, draw.electrodes) },
    plain('returns', Math.max(0, work.passes - 1) * work.returnTime * handling),
    plain('electrode_changes', Math.max(0, draw.electrodes - 1) * work.changeTime * handling),
    plain('gauging', work.gaugeTime * handling),
    plain('cooling', work.coolingTime * factors.cooling),
    rework(),
  ];

  function rework(): StepWork {
    if (!draw.rework) return plain('rework', 0);
    if (work.reworkTime !== undefined) return plain('rework', work.reworkTime * factors.handling);
    const burn = draw.arcTime / work.passes;
    const around =
      (work.startTime + work.returnTime) * handling +
      practice.cleaning * work.section.seamLength * factors.cleaning;
    const money = burning(burn, draw.electrodes / work.passes);
    return {
      step: 'rework',
      time: burn + around,
      money: { ...money, labour: (burn + around) * crew },
    };
  }
}
