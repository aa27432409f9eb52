/** Steps of the whole cycle, in the order of the work. */
export const CYCLE_STEPS = [
  'set_up',
  'commissioning',
  'starts',
  'arc',
  'returns',
  'electrode_changes',
  'gauging',
  'cooling',
  'rework',
  'cleaning',
  'grinding',
  'inspection',
  'refill',
  'flush',
] as const;

/** A step of the whole cycle. */
export type CycleStep = (typeof CYCLE_STEPS)[number];

/** What money is spent on, in the order in which it is told. */
export const COST_PARTS = [
  'labour',
  'electrodes',
  'power',
  'air',
  'discs',
  'filler',
  'gas_and_flux',
  'hire',
] as const;

/** What money is spent on. */
export type CostPart = (typeof COST_PARTS)[number];

/** What one step takes. */
export interface StepWork {
  readonly step: CycleStep;
  /** Time [s]. */
  readonly time: number;
  /** Money by what it is spent on, in the job's currency [-]. */
  readonly money: Readonly<Partial<Record<CostPart, number>>>;
}
