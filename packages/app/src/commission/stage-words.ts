import type { CommissionCheck, CommissionStage } from '@furrow/engine';

/** Headings of the stages, in words that say how the rig stands then. */
export const STAGE_TITLES: Readonly<Record<CommissionStage, string>> = {
  power_off: 'Power off',
  air_on: 'Air on, power off',
  dry_run: 'Dry run, power off',
  no_load: 'Power on, no arc',
  trial_arc: 'Trial arc on scrap',
};

/** Checks of one stage that follow each other. */
export interface CheckStage {
  readonly stage: CommissionStage;
  /** A caution that holds for all of them; null where they differ. */
  readonly caution: string | null;
  readonly checks: readonly CommissionCheck[];
}

/** The checks by stage, in the order in which they are made. */
export function stagesOf(checks: readonly CommissionCheck[]): readonly CheckStage[] {
  const stages = new Map<CommissionStage, CommissionCheck[]>();
  for (const check of checks) stages.set(check.stage, [...(stages.get(check.stage) ?? []), check]);
  return [...stages].map(([stage, own]) => {
    const cautions = new Set(own.map(({ caution }) => caution));
    return { stage, checks: own, caution: cautions.size === 1 ? (own[0]?.caution ?? null) : null };
  });
}
