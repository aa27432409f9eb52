import type { Job } from '../job/index.ts';
import type { Source } from '../limit/index.ts';
import { metalOf, type SourcedNumber } from '../material/index.ts';
import { amountOf, fromUnit, type Sentence, say } from '../quantity/index.ts';
import { REFILL_PRACTICE } from './refill-practice.ts';
import { DAY_SHARE } from './work-factors.ts';

/** A value that the cost rests on although the job does not state it. */
export interface CostAssumption {
  readonly topic: string;
  readonly text: Sentence;
  readonly source: Source;
}

/** Everything that turns a section into hours and money, in SI; money in the job's currency. */
export interface CostPractice {
  /** The crew's hour with its overhead, by the second [1/s]. */
  readonly crew: number;
  /** The same while grinding [1/s]. */
  readonly grinder: number;
  /** The same while inspecting [1/s]. */
  readonly inspector: number;
  /** The same while welding [1/s]. */
  readonly welder: number;
  /** Cleaning of one metre [s/m]. */
  readonly cleaning: number;
  /** Inspection of one metre [s/m]. */
  readonly inspection: number;
  /** Grinding one metre of cap flush; 0 where it stays as welded [s/m]. */
  readonly flush: number;
  /** Metal ground off while the skin is taken off [m3/s]. */
  readonly grindingRate: number;
  /** Discs while grinding [1/s]. */
  readonly discs: number;
  /** Ground off the gouged face [m]. */
  readonly skinAllowance: number;
  /** Density of the plate, taken for that of the weld metal too [kg/m3]. */
  readonly density: number;
  /** Weld metal while the arc of the re-weld burns [kg/s]. */
  readonly deposition: number;
  /** Share of the welder's time with the arc burning [-]. */
  readonly operatingFactor: number;
  /** Share of the filler bought that ends as weld metal [-]. */
  readonly efficiency: number;
  /** Weld metal above the plate, as a share of what fills the groove [-]. */
  readonly capShare: number;
  /** Filler as bought [1/kg]. */
  readonly filler: number;
  /** Shielding gas while the arc of the re-weld burns [1/s]. */
  readonly gas: number;
  /** Flux with the weld metal [1/kg]. */
  readonly flux: number;
  readonly assumptions: readonly CostAssumption[];
}

const HOUR = 3600;
const MINUTE = 60;

/**
 * The process of the re-weld as it is called in a sentence.
 *
 * @param job - the job [record], from `readJob`
 * @returns the name [text]
 * @source none: bookkeeping
 * @example
 * refillTitle({ reweld: { process: 'stick' } }) // => "stick electrode"
 */
export function refillTitle(job: Pick<Job, 'reweld'>): string {
  return REFILL_PRACTICE[job.reweld.process].title;
}

/**
 * Gathers what a job states of its work after the arc, and what stands in where it states nothing.
 *
 * Each value that stands in is listed with its source; it depends on the process of the re-weld, so it is not
 * among the defaults of the job.
 *
 * @param job - the job [record], from `readJob`
 * @returns rates, paces and assumptions [record]
 * @source CST-020, CST-062 (confirmed); CST-063 (memory)
 * @example
 * costPracticeOf(demoJob.job).skinAllowance // => 0.0015
 */
export function costPracticeOf(job: Job): CostPractice {
  const { after, rates, heat } = job;
  const { refill } = after;
  const usual = REFILL_PRACTICE[job.reweld.process];
  const density = metalOf(job.plate.material).density;
  const assumptions: CostAssumption[] = [
    {
      topic: 'Density of the weld metal',
      text: say`${amountOf(density.value, 'density')}, that of the plate`,
      source: { text: density.source, provenance: density.provenance },
    },
    {
      topic: 'A bad day',
      text: `durations of the kinds of work move together, correlation ${DAY_SHARE}`,
      source: { text: 'judgement, no source', provenance: 'derived' },
    },
  ];
  const stated = (
    value: number | undefined,
    usually: SourcedNumber,
    topic: string,
    shown: Sentence,
  ): number => {
    if (value !== undefined) return value;
    assumptions.push({
      topic,
      text: say`${shown}, usual for ${usual.title}`,
      source: { text: usually.source, provenance: usually.provenance },
    });
    return usually.value;
  };
  const { deposition, operatingFactor, efficiency } = usual;
  const hourly = (rate: number): number => (rate + after.overhead_per_hour) / HOUR;
  return {
    crew: hourly(rates.labour_per_hour),
    grinder: hourly(after.grinder_per_hour ?? rates.labour_per_hour),
    inspector: hourly(after.inspector_per_hour ?? rates.labour_per_hour),
    welder: hourly(refill.welder_per_hour ?? rates.labour_per_hour),
    cleaning: after.cleaning_min_per_m * MINUTE,
    inspection: after.inspection_min_per_m * MINUTE,
    flush: after.cap === 'flush' ? after.flush_grinding_min_per_m * MINUTE : 0,
    grindingRate: fromUnit(after.skin_grinding_cm3_per_min, 'cm3/min'),
    discs: after.discs_per_hour / HOUR,
    skinAllowance: heat.skin_allowance,
    density: density.value,
    deposition:
      stated(
        refill.deposition_kg_per_h,
        deposition,
        'Deposition',
        say`${amountOf(deposition.value, 'mass')} per hour of arc`,
      ) / HOUR,
    operatingFactor: stated(
      refill.operating_factor,
      operatingFactor,
      'Operating factor',
      `arc burning ${(operatingFactor.value * 100).toFixed(0)} % of the welder’s time`,
    ),
    efficiency: stated(
      refill.efficiency,
      efficiency,
      'Deposition efficiency',
      `${(efficiency.value * 100).toFixed(1)} % of the filler becomes weld metal`,
    ),
    capShare: refill.cap_share,
    filler: refill.filler_per_kg,
    gas: refill.gas_per_arc_hour / HOUR,
    flux: refill.flux_per_kg,
    assumptions,
  };
}
