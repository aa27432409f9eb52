import type { CommissionCheck, CommissionStage } from '@furrow/engine';

/** Checks of one stage that follow each other. */
export interface CheckStage {
  readonly stage: CommissionStage;
  /** The caution that most of them share, told once; null where there is none. */
  readonly caution: string | null;
  readonly checks: readonly CommissionCheck[];
}

/** The checks by stage, in the order in which they are made. */
export function stagesOf(checks: readonly CommissionCheck[]): readonly CheckStage[] {
  const stages = new Map<CommissionStage, CommissionCheck[]>();
  for (const check of checks) stages.set(check.stage, [...(stages.get(check.stage) ?? []), check]);
  return [...stages].map(([stage, own]) => ({ stage, checks: own, caution: commonCaution(own) }));
}

/** The caution that most of these checks have; null where none is shared. */
function commonCaution(checks: readonly CommissionCheck[]): string | null {
  const shares = new Map<string, number>();
  for (const { caution } of checks) {
    if (caution !== null) shares.set(caution, (shares.get(caution) ?? 0) + 1);
  }
  const [first] = [...shares].sort(([, one], [, other]) => other - one);
  return first !== undefined && (first[1] > 1 || checks.length === 1) ? first[0] : null;
}
