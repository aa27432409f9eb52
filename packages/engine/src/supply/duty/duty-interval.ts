/** Arc on or off for a while, as in the job's real duty. */
export interface DutyInterval {
  readonly arc: boolean;
  /** How long [s]. */
  readonly duration: number;
}
