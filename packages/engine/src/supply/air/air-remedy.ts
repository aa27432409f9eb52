import { bisect } from '../../numeric/index.ts';
import { amountOf, boundOf, fromUnit, joinSentences, type Sentence, say } from '../../quantity/index.ts';
import type { DutyInterval } from '../duty/index.ts';
import type { AirDemand } from './air-demand.ts';
import { airPoint } from './air-point.ts';
import { widerHoses } from './air-sizes.ts';
import type { AirItem, AirRegulator, AirRun, AirSupply } from './air-supply.ts';
import { airDrawdown } from './drawdown.ts';

/** Air and duty as they would be after a change. */
interface Changed {
  readonly supply: AirSupply;
  readonly duty: readonly DutyInterval[];
}

/** A change whose size is sought: the larger, the more air. */
interface Growing {
  /** As it is now. */
  readonly now: number;
  readonly most: number;
  readonly at: (size: number) => Changed;
  readonly says: (size: number) => Sentence;
  /** Sizes are whole numbers of this. */
  readonly step: number;
}

/** Receivers and compressors larger than this many times are not asked for [-]. */
const LARGER_MOST = 4;
/** Longest pause between passes that is asked for [s]. */
const PAUSE_MOST = 1800;
/** Ways told at most [-]. */
const TOLD_MOST = 3;

/**
 * The least single changes that let both pressures hold through a duty, each tried before it is named, in words.
 *
 * Looked at in the order of what they cost a shop: the regulator's setting, what others take, one wider hose, longer
 * pauses, receiver, compressor. Where no single one does, the widest hose that helps most is told with what it gives.
 */
export function airRemedy(supply: AirSupply, demand: AirDemand, duty: readonly DutyInterval[]): Sentence {
  const now: Changed = { supply, duty };
  const holds = (changed: Changed): boolean => lacking(changed, demand) <= 0;
  if (holds(now)) return 'nothing: both pressures hold';
  const ways = [
    ...regulators(now).map((growing) => leastOf(growing, holds)),
    ...others(now, holds),
    ...hoses(now, holds),
    ...[pauses(now), receiver(now), compressor(now)].flatMap((growing) =>
      growing === undefined ? [] : [leastOf(growing, holds)],
    ),
  ].filter((way) => way !== undefined);
  if (ways.length > 0) return joinSentences(ways.slice(0, TOLD_MOST), ', or ');
  return none(now, demand);
}

/** By how much the worse of the two pressures falls short, as a share of what is wanted; above 0 is too little. */
function lacking({ supply, duty }: Changed, { regulator, torch }: AirDemand): number {
  const course = airDrawdown(supply, { pressure: regulator.value, at: 'regulator' }, duty);
  // What mends it must do so for a quick draw too.
  const point = course.ok ? airPoint(supply, course.value.lowestQuick) : course;
  if (!point.ok) return 1;
  const short = (flowing: number, wanted: number): number => 1 - 1e-9 - flowing / wanted;
  return Math.max(short(point.value.regulator, regulator.value), short(point.value.torch, torch.value));
}

function leastOf(
  { now, most, at, says, step }: Growing,
  holds: (changed: Changed) => boolean,
): Sentence | undefined {
  if (!holds(at(most))) return undefined;
  const least = bisect((size) => (holds(at(size)) ? 1 : -1), now, most, step / 8) ?? most;
  const rounded = Math.min(most, Math.ceil(least / step) * step);
  return holds(at(rounded)) ? says(rounded) : says(most);
}

function withItem(supply: AirSupply, place: number, item: AirItem): AirSupply {
  return { ...supply, path: supply.path.map((each, i) => (i === place ? item : each)) };
}

/** A regulator set higher, as far as the receiver's cut-in. */
function regulators({ supply, duty }: Changed): Growing[] {
  return supply.path.flatMap((item, place) => {
    if (item.kind !== 'regulator' || item.set >= supply.receiver.cutIn) return [];
    const raised = (set: number): AirRegulator => ({ ...item, set });
    return [
      {
        now: item.set,
        most: supply.receiver.cutIn,
        step: 1e4,
        at: (set) => ({ supply: withItem(supply, place, raised(set)), duty }),
        says: (set) => say`set “${item.id}” to ${boundOf(set, 'pressure', 'least')} without flow`,
      },
    ];
  });
}

/** Other users that take nothing while the torch blows. */
function others({ supply, duty }: Changed, holds: (changed: Changed) => boolean): Sentence[] {
  return supply.path.flatMap((item, place) => {
    if (item.kind !== 'draw' || item.freeAir === 0) return [];
    const without = withItem(supply, place, { ...item, freeAir: 0 });
    return holds({ supply: without, duty }) ? [`no air for “${item.id}” while the torch blows`] : [];
  });
}

/** One hose of the next size that does. */
function hoses({ supply, duty }: Changed, holds: (changed: Changed) => boolean): Sentence[] {
  return supply.path.flatMap((item, place) => {
    if (item.kind !== 'hose') return [];
    const size = widerHoses(item.bore).find(({ bore }) =>
      holds({ supply: withItem(supply, place, { ...item, bore }), duty }),
    );
    return size === undefined ? [] : [say`a hose of ${amountOf(size.bore, 'bore')} bore as “${item.id}”`];
  });
}

/** Longer pauses between the passes, in which the receiver fills. */
function pauses({ supply, duty }: Changed): Growing | undefined {
  if (duty.every(({ arc }) => arc)) return undefined;
  return {
    now: 0,
    most: PAUSE_MOST,
    step: 10,
    at: (more) => ({
      supply,
      duty: duty.map(({ arc, duration }) => ({ arc, duration: arc ? duration : duration + more })),
    }),
    says: (more) => say`${amountOf(more, 'time')} more between the passes, for the receiver to fill`,
  };
}

function receiver({ supply, duty }: Changed): Growing {
  const { volume } = supply.receiver;
  return {
    now: volume,
    most: LARGER_MOST * volume,
    step: 10 ** Math.floor(Math.log10(volume)) / 2,
    at: (larger) => ({ supply: { ...supply, receiver: { ...supply.receiver, volume: larger } }, duty }),
    says: (larger) => say`a receiver of ${boundOf(larger, 'volume', 'least')}`,
  };
}

function compressor({ supply, duty }: Changed): Growing {
  const { delivery } = supply.compressor;
  const larger = (more: number): AirSupply => ({
    ...supply,
    compressor: {
      delivery: delivery.map(({ pressure, freeAir }) => ({ pressure, freeAir: freeAir + more })),
    },
  });
  return {
    now: 0,
    most: (LARGER_MOST - 1) * Math.max(...delivery.map(({ freeAir }) => freeAir)),
    step: fromUnit(10, 'L/min'),
    at: (more) => ({ supply: larger(more), duty }),
    says: (more) => say`${boundOf(more, 'air_flow', 'least')} more from compressors`,
  };
}

/** What is told where no single change does. */
function none({ supply, duty }: Changed, demand: AirDemand): string {
  const widest = supply.path.flatMap((item, place) => {
    const size = item.kind === 'hose' ? widerHoses(item.bore).at(-1) : undefined;
    if (size === undefined) return [];
    const changed = { supply: withItem(supply, place, { ...(item as AirRun), bore: size.bore }), duty };
    return [{ name: item.id, short: lacking(changed, demand) }];
  });
  const short = lacking({ supply, duty }, demand);
  const best = widest.reduce<(typeof widest)[number] | undefined>(
    (least, each) => (each.short < (least?.short ?? short) ? each : least),
    undefined,
  );
  const alone = 'no single change of regulator, hose, pause, receiver or compressor does';
  return best === undefined ? alone : `${alone}; a wider hose as “${best.name}” helps most`;
}
