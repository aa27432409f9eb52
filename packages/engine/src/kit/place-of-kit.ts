import { fireZone } from '../hazard/index.ts';
import type { Issue } from '../issue/index.ts';
import type { Job } from '../job/index.ts';
import {
  type AirPoint,
  type BayJet,
  type BayPoint,
  chooseStation,
  conductorSizeOf,
  jetOutlines,
  placeCautions,
  type StationChoice,
  stationAt,
  type WorkingLoop,
} from '../supply/index.ts';
import { hosesOfKit } from './air-of-kit.ts';
import type { Kit } from './kit-schema.ts';
import { stationTaskOfKit } from './station-of-kit.ts';

/** The bay that a kit describes. */
export type KitBay = NonNullable<Kit['bay']>;

/**
 * The bay that a job is done in: the kit's, where the job names it.
 *
 * @param kit - the kit [record], one that was read
 * @param job - the job [record], from `readJob`
 * @returns the bay [record]; undefined where the kit describes none or the job names no bay of the kit
 * @source none: bookkeeping
 * @example
 * bayOfJob({ bay: { name: 'Bay 2' } }, { site: { bay: 'bay 2' } })?.name // => "Bay 2"
 */
export function bayOfJob(
  kit: { readonly bay?: KitBay | undefined },
  job: { readonly site: Pick<Job['site'], 'bay'> },
): KitBay | undefined {
  const plain = (name: string | undefined): string | undefined => name?.trim().toLowerCase();
  const named = plain(job.site.bay);
  return named !== undefined && plain(kit.bay?.name) === named ? kit.bay : undefined;
}

/** Pieces of one kind in stock. */
export type StockPiece = {
  readonly name: string;
  /** Length of one [m]. */
  readonly length: number;
  /** How many [-]. */
  readonly count: number;
} & (
  | { readonly kind: 'lead'; readonly size: string }
  | {
      readonly kind: 'hose';
      /** Inside diameter [m]. */
      readonly bore: number;
    }
);

/** Where the control station stands in the bay of a kit and what is laid to it. */
export interface PlaceOutcome {
  readonly bay: KitBay;
  /** The place taken; undefined where no place does, as `issues` say. */
  readonly choice: StationChoice | undefined;
  /** `found`: least loss of all places on the grid; `stated`: the kit says where. */
  readonly chosen: 'found' | 'stated';
  /** The place of least loss, where the kit states another. */
  readonly least: Pick<StationChoice, 'station' | 'loss_W'> | undefined;
  /** Leads side by side in every run of leads, as in the leads laid now [-]. */
  readonly parallels: number;
  /** Where the jet throws: one outline for each stretch and way. */
  readonly jets: readonly (readonly BayPoint[])[];
  /** Everything in stock. */
  readonly stock: readonly StockPiece[];
  readonly cautions: readonly string[];
  readonly issues: readonly Issue[];
}

/**
 * Finds where the control station stands in the bay of a kit, under the load of a setting.
 *
 * @param kit - the kit [record], one that was read and has a bay
 * @param job - the job whose seam it is [record], from `readJob`
 * @param solved - the electric loop at the setting [record], from `solveLoop`
 * @param air - the air at the setting [record], from `airPoint`
 * @returns the place and what is laid to it, or why no place does [record]; undefined where the job names no bay of the kit
 * @source as chooseStation
 * @example
 * placeOfKit({}, { site: {} }, {}, {}) // => undefined
 */
export function placeOfKit(
  kit: Kit,
  job: Job,
  solved: WorkingLoop,
  air: Pick<AirPoint, 'torchFlow' | 'regulator'>,
): PlaceOutcome | undefined {
  const bay = bayOfJob(kit, job);
  if (bay === undefined) return undefined;
  // As many side by side as in the leads laid now.
  const parallels = Math.max(1, ...solved.leads.map((lead) => lead.parallels));
  const jet: BayJet = { ahead: fireZone(job.site.fire).ahead, bothWays: job.seam.path === 'girth' };
  const task = stationTaskOfKit(
    kit,
    bay,
    {
      current: solved.current_A,
      parallels,
      leadTemperature: Math.max(...solved.leads.map((lead) => lead.temperature_K)),
      torchFlow: air.torchFlow,
      regulator: air.regulator,
    },
    jet,
  );
  const found = chooseStation(task);
  const stated = bay.station !== undefined;
  const choice = bay.station === undefined ? found : stationAt(task, bay.station);
  return {
    bay,
    choice: choice.ok ? choice.value : undefined,
    chosen: stated ? 'stated' : 'found',
    least: stated && found.ok ? found.value : undefined,
    parallels,
    jets: jetOutlines(bay.seam, jet),
    stock: stockOf(kit),
    cautions: [
      ...seamCautions(bay, job),
      ...(choice.ok ? choice.value.cautions : placeCautions(task.bay, [])),
    ],
    issues: choice.ok ? [] : choice.issues.map((issue) => ({ ...issue, path: pathInKit(issue.path) })),
  };
}

/** How far the seam drawn in a bay may be off that of the job, as a share of it: a bay serves many jobs [-]. */
const SEAM_OFF_MOST = 0.1;

/** Says so where the seam drawn in the bay is that of another job; one all round a pipe is drawn shorter than it is. */
function seamCautions({ seam: drawn }: KitBay, { seam }: Job): readonly string[] {
  if (seam.path === 'girth') return [];
  const length = drawn
    .slice(1)
    .reduce((sum, point, index) => sum + Math.hypot(point.x - drawn[index]!.x, point.y - drawn[index]!.y), 0);
  return Math.abs(length - seam.length) <= SEAM_OFF_MOST * seam.length
    ? []
    : [
        'The seam drawn in the bay is not as long as that of the job: set its ends where this job’s seam lies.',
      ];
}

function pathInKit(path: string): string {
  return path.startsWith('bay') ? path : `bay.${path}`;
}

function stockOf(kit: Kit): readonly StockPiece[] {
  const leads = (kit.stock.leads ?? []).map(({ name, size, length, count }): StockPiece => {
    const known = conductorSizeOf(size, '');
    return { name, kind: 'lead', size: known.ok ? known.value.name : '', length, count };
  });
  const hoses = hosesOfKit(kit).map(
    ({ id, bore, length, count }): StockPiece => ({ name: id, kind: 'hose', bore, length, count }),
  );
  return [...leads, ...hoses];
}
