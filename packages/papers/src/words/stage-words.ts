import type { CommissionStage } from '@furrow/engine';

/** Headings of the stages of commissioning in the order in which they are made, in words that say how the rig stands then. */
export const STAGE_TITLES: Readonly<Record<CommissionStage, string>> = {
  power_off: 'Power off, locked out',
  air_on: 'Air on, power off',
  dry_run: 'Dry run, power off',
  no_load: 'Power on, no arc',
  trial_arc: 'Trial arc on scrap',
};
