import type { CommissionCheck, Connection } from '@furrow/engine';
import type { VNode } from 'preact';
import { connectionId } from './connection-id.ts';
import { judgeTyped } from './judge-typed.ts';
import { useRigState } from './rig-context.ts';
import type { RigRecord } from './rig-record.ts';

interface RigProgressProps {
  readonly connections: readonly Connection[];
  readonly checks: readonly CommissionCheck[];
}

/** How far the rig is, in words. */
export function RigProgress({ connections, checks }: RigProgressProps): VNode {
  const record = useRigState((state) => state.record);
  return (
    <p class="rig-progress" role="status" aria-label="Progress">
      {progressText(record, connections, checks)}
    </p>
  );
}

/** Connections ticked, checks made, and how many of them are not as they should be. */
export function progressText(
  { ticks, readings }: RigRecord,
  connections: readonly Connection[],
  checks: readonly CommissionCheck[],
): string {
  const ticked = connections.filter((connection) => Object.hasOwn(ticks, connectionId(connection))).length;
  const judged = checks.flatMap((check) => {
    const typed = judgeTyped(check, readings[check.id]?.text ?? '');
    return typed.is === 'judged' ? [typed.judgement.verdict] : [];
  });
  const off = judged.filter((verdict) => verdict !== 'in_band' && verdict !== 'met').length;
  return [
    ...(connections.length === 0 ? [] : [`${ticked} of ${connections.length} connections ticked`]),
    `${judged.length} of ${checks.length} checks made`,
    off === 0 ? 'none of them off' : `${off} of them not as it should be`,
  ].join(', ');
}
