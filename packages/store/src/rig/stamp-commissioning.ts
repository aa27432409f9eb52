import { isDeepStrictEqual } from 'node:util';
import type { CommissioningContent, CommissioningEntry, Stamped } from './commissioning-store.ts';

/** Gives every entry its time: the one it has if it stands as it was saved before, else now. */
export function stampCommissioning(
  before: CommissioningContent,
  { readings, ticks, findings }: CommissioningEntry,
  now: string,
): CommissioningContent {
  const known = new Map(before.findings.map((finding) => [finding.id, finding]));
  return {
    readings: Object.fromEntries(
      Object.entries(readings).map(([id, { text, value, note }]) => [
        id,
        stamped({ text, value, note }, ownEntry(before.readings, id), now),
      ]),
    ),
    ticks: Object.fromEntries(ticks.map((id) => [id, ownEntry(before.ticks, id) ?? now])),
    findings: findings.map(({ id, symptoms, cause, note }) =>
      stamped({ id, symptoms, cause, note }, known.get(id), now),
    ),
  };
}

/** Whether an entry says just what is kept already, times aside. */
export function isUnchangedBy(kept: CommissioningContent, entry: CommissioningEntry): boolean {
  const { readings, ticks, findings } = stampCommissioning(kept, entry, '');
  return isDeepStrictEqual(
    { readings, ticks, findings },
    { readings: kept.readings, ticks: kept.ticks, findings: kept.findings },
  );
}

function stamped<Entry extends object>(
  entry: Entry,
  before: (Entry & Stamped) | undefined,
  now: string,
): Entry & Stamped {
  if (before === undefined) return { ...entry, at: now };
  const { at, ...rest } = before;
  return { ...entry, at: isDeepStrictEqual(rest, entry) ? at : now };
}

/** A name that was typed may be one that every object inherits. */
function ownEntry<Value>(record: Readonly<Record<string, Value>>, name: string): Value | undefined {
  return Object.hasOwn(record, name) ? record[name] : undefined;
}
