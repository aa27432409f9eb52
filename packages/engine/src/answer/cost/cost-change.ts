import type { Job, ReadJob } from '../../job/index.ts';
import type { ReadKit } from '../../kit/index.ts';
import { amountOf, MM, type Sentence, say } from '../../quantity/index.ts';

/** What could be changed about job or kit. */
export type CostChangeId = 'second_source' | 'larger_electrode' | 'wider_tolerance' | 'hired_compressor';

/** A change to try: what would be planned with it. */
export interface CostChange {
  readonly id: CostChangeId;
  readonly title: string;
  /** What exactly is changed, in words. */
  readonly says: Sentence;
  /** The changed job; undefined where the change cannot be tried, as `says` tells. */
  readonly read: ReadJob | undefined;
  /** The job with what is new alone, where that is enough to plan: what was there before was planned with already. */
  readonly newAlone?: ReadJob;
  readonly kit: ReadKit | undefined;
  /** Hired plant by the day, in the job's currency [-]. */
  readonly hirePerDay: number;
}

/** Diameters in the trade: 1/4, 5/16, 3/8, 1/2, 5/8, 3/4 and 1 in. */
const TRADE_SIZES = [6.35, 7.9375, 9.525, 12.7, 15.875, 19.05, 25.4].map((size) => size * MM);
/** By how much the tolerance of depth and of width is widened [m]. */
const WIDER = 2 * MM;
/** Greatest current that a job can state [A]. */
const CURRENT_MOST = 5000;
/** Most sources of one kind that a kit can state [-]. */
const SOURCES_MOST = 6;

/** The changes that are tried for a job, with or without a kit. */
export function costChanges(read: ReadJob, kit: ReadKit | undefined): readonly CostChange[] {
  return [
    secondSource(read, kit),
    largerElectrode(read, kit),
    widerTolerance(read, kit),
    hiredCompressor(read, kit),
  ];
}

function secondSource(read: ReadJob, kit: ReadKit | undefined): CostChange {
  const { job } = read;
  const hire = job.after.hire.source_per_day;
  const base = {
    id: 'second_source' as const,
    title: 'A second power source',
    hirePerDay: hire ?? 0,
  };
  const priced =
    hire === undefined ? 'its price per day is not stated, so it costs nothing here' : 'hired by the day';
  const most = Math.min(CURRENT_MOST, 2 * job.kit.current.most);
  const changed: ReadJob = {
    ...read,
    job: { ...job, kit: { ...job.kit, current: { ...job.kit.current, most } } },
  };
  if (kit === undefined) {
    return {
      ...base,
      says: `current up to ${most.toFixed(0)} A; ${priced}`,
      read: changed,
      kit: undefined,
    };
  }
  const [first, ...others] = kit.kit.sources;
  if (first === undefined || first.count >= SOURCES_MOST) {
    return { ...base, says: 'no more sources of this kind can be joined', read: undefined, kit };
  }
  return {
    ...base,
    says: `one more ${first.name} beside those of the kit, the leads as they are; ${priced}`,
    read: changed,
    kit: { ...kit, kit: { ...kit.kit, sources: [{ ...first, count: first.count + 1 }, ...others] } },
  };
}

function largerElectrode(read: ReadJob, kit: ReadKit | undefined): CostChange {
  const { job } = read;
  const base = { id: 'larger_electrode' as const, title: 'A larger electrode', hirePerDay: 0, kit };
  const largest = job.kit.electrodes.reduce((most, each) => (each.diameter > most.diameter ? each : most));
  const next = TRADE_SIZES.find((size) => size > largest.diameter + MM / 2);
  if (next === undefined) {
    return { ...base, says: 'the kit already has the largest size of the trade', read: undefined };
  }
  const { current_least: _least, current_most: _most, ...plain } = largest;
  const electrode = {
    ...plain,
    diameter: next,
    price_each: largest.price_each * (next / largest.diameter) ** 2,
  };
  return {
    ...base,
    says: say`${amountOf(next, 'bore')} besides those of the kit, as many as of the largest, priced by its section`,
    read: withElectrodes([...job.kit.electrodes, electrode]),
    newAlone: withElectrodes([electrode]),
  };

  function withElectrodes(electrodes: Job['kit']['electrodes']): ReadJob {
    return { ...read, job: { ...job, kit: { ...job.kit, electrodes } } };
  }
}

function widerTolerance(read: ReadJob, kit: ReadKit | undefined): CostChange {
  const { job } = read;
  const { depth, width } = job.groove;
  return {
    id: 'wider_tolerance',
    title: 'A wider tolerance',
    says: say`depth and greatest width may be ${amountOf(WIDER, 'length')} more than the job allows; whoever wants the groove has to agree`,
    read: {
      ...read,
      job: {
        ...job,
        groove: {
          ...job.groove,
          depth: { ...depth, plus: depth.plus + WIDER },
          width: { ...width, most: width.most + WIDER },
        },
      },
    },
    kit,
    hirePerDay: 0,
  };
}

function hiredCompressor(read: ReadJob, kit: ReadKit | undefined): CostChange {
  const hire = read.job.after.hire.compressor_per_day;
  const base = { id: 'hired_compressor' as const, title: 'A hired compressor', hirePerDay: hire ?? 0 };
  if (kit === undefined) {
    return {
      ...base,
      says: 'without a kit nothing is known of the air, so it limits nothing here',
      read: undefined,
      kit,
    };
  }
  const { air } = kit.kit;
  const delivery = air.compressor.delivery.map((point) => ({ ...point, flow: 2 * point.flow }));
  const priced =
    hire === undefined ? 'its price per day is not stated, so it costs nothing here' : 'hired by the day';
  return {
    ...base,
    says: `twice the delivery into the same receiver; ${priced}`,
    read,
    kit: {
      ...kit,
      kit: { ...kit.kit, air: { ...air, compressor: { ...air.compressor, delivery } } },
    },
  };
}
