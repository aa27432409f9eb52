import type { Merged } from '../../sheet/keep/index.ts';
import type { RigRecord } from './rig-record.ts';

type Entries = Readonly<Record<string, unknown>>;

/** Whether two records hold the same. */
export function sameRecord(one: RigRecord, other: RigRecord): boolean {
  const parts = ['readings', 'ticks', 'findings'] as const;
  return parts.every((part) => changedIn(one[part], other[part]).length === 0);
}

/** Brings two records together that were both made from a third: an entry only one of them changed is as that one has it. */
export function mergeRecords(base: RigRecord, mine: RigRecord, theirs: RigRecord): Merged<RigRecord> {
  const clashes: string[] = [];
  const merged = <Part extends keyof RigRecord>(part: Part): RigRecord[Part] => {
    const own = changedIn(base[part], mine[part]);
    const ofOthers = new Set(changedIn(base[part], theirs[part]));
    const result: Record<string, unknown> = { ...theirs[part] };
    for (const id of own) {
      if (ofOthers.has(id) && !same(at(mine[part], id), at(theirs[part], id))) clashes.push(id);
      if (Object.hasOwn(mine[part], id)) result[id] = at(mine[part], id);
      else delete result[id];
    }
    return result as RigRecord[Part];
  };
  const content = { readings: merged('readings'), ticks: merged('ticks'), findings: merged('findings') };
  return { content, clashes };
}

function changedIn(before: Entries, after: Entries): string[] {
  const ids = new Set([...Object.keys(before), ...Object.keys(after)]);
  return [...ids].filter((id) => !same(at(before, id), at(after, id)));
}

function at(entries: Entries, id: string): unknown {
  return Object.hasOwn(entries, id) ? entries[id] : undefined;
}

/** Entries are small and plain; the order of their keys does not count. */
function same(one: unknown, other: unknown): boolean {
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null)
    return Object.is(one, other);
  const keys = Object.keys(one);
  if (keys.length !== Object.keys(other).length) return false;
  return keys.every((key) => same(at(one as Entries, key), at(other as Entries, key)));
}
