import { type CommissionCheck, type Connection, rehearseReadings } from '@furrow/engine';
import { checkReading } from '@furrow/papers/words';
import { connectionId } from './connection-id.ts';
import { typedValue } from './judge-typed.ts';
import type { RigRecord } from './rig-record.ts';

/** The record of a made-up rig that is in order: every connection ticked, every check read; for the demo alone. */
export function inventedRecord(
  checks: readonly CommissionCheck[],
  connections: readonly Connection[],
  seed: number,
): RigRecord {
  const byId = new Map(checks.map((check) => [check.id, check]));
  const readings = rehearseReadings(checks, seed).map(({ check: id, value }) => {
    const check = byId.get(id)!;
    const text = check.kind === 'confirm' ? 'yes' : checkReading(check, Number(value), 'metric');
    return [id, { text, value: typedValue(check, text), note: '' }] as const;
  });
  return {
    readings: Object.fromEntries(readings),
    ticks: Object.fromEntries(connections.map((one) => [connectionId(one), true] as const)),
    findings: {},
  };
}
