import type { Job, KitElectrode } from '../job/index.ts';
import { inUnit } from '../quantity/index.ts';
import { currentRangeOf, electrodeName } from '../removal/index.ts';
import type { MissNote } from './miss.ts';

/** Currents tried between the ends of the range [-]. */
const CURRENTS = 5;
/** Part of an electrode's greatest current that plans keep to [-]: at its limit it spalls, and little time is gained. */
const CURRENT_MOST = 0.95;

/** Currents that electrode and source both allow, greatest first; a locked one may be the electrode's greatest. */
export function currentsOf(electrode: KitElectrode, job: Job, miss: MissNote): number[] {
  const range = currentRangeOf(electrode);
  const name = electrodeName(electrode.diameter);
  if (range === undefined) {
    miss({
      constraint: 'electrode_current',
      title: 'Current of the electrode',
      demand: inUnit(electrode.diameter, 'mm'),
      limit: 0,
      unit: 'mm',
      remedy: `state current_least and current_most for the ${name} electrode: no published range covers its size`,
      size: 10,
    });
    return [];
  }
  const least = Math.max(range.least, job.kit.current.least);
  const most = Math.min(range.most, job.kit.current.most);
  const locked = job.locks.current;
  if (locked !== undefined) {
    if (locked >= least && locked <= most) return [locked];
    const limit = locked > most ? most : least;
    miss({
      constraint: 'locks.current',
      title: 'Locked current',
      demand: locked,
      limit,
      unit: 'A',
      remedy: `unlock the current, or lock it between ${least} A and ${most} A`,
      size: Math.abs(locked / limit - 1),
    });
    return [];
  }
  if (least > most) {
    const tooWeak = range.least > job.kit.current.most;
    const [demand, limit] = tooWeak
      ? [range.least, job.kit.current.most]
      : [range.most, job.kit.current.least];
    miss({
      constraint: tooWeak ? 'source_current_most' : 'source_current_least',
      title: 'Current of the source',
      demand,
      limit,
      unit: 'A',
      remedy: `${tooWeak ? 'a second source, or ' : ''}an electrode of another size than ${name}`,
      size: Math.abs(demand / limit - 1),
    });
    return [];
  }
  const top = Math.max(least, Math.min(most, CURRENT_MOST * range.most));
  if (top === least) return [top];
  return Array.from({ length: CURRENTS }, (_, step) => top - ((top - least) * step) / (CURRENTS - 1));
}
