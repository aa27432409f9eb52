import type { DutyInterval } from '../duty/index.ts';
import type { Lead } from './lead.ts';
import type { SourceBranch } from './power-source.ts';

/** What the arc holds: the electrode feed its voltage, or feed and source together a current. */
export type Arc =
  | {
      readonly holds: 'voltage';
      /** Arc voltage held [V]. */
      readonly voltage: number;
    }
  | {
      readonly holds: 'current';
      /** Current held [A]. */
      readonly current: number;
      /** Arc voltage wanted at that current [V]; whatever is left if not stated. */
      readonly voltage?: number;
    };

/** Sources, the leads that the whole current passes, and the arc. */
export interface ElectricLoop {
  readonly sources: readonly SourceBranch[];
  readonly leads: readonly Lead[];
  readonly arc: Arc;
  /** Temperature around the leads [K]. */
  readonly ambient: number;
  /** The job's real duty, from cold; an arc that never stops if not stated. */
  readonly duty?: readonly DutyInterval[];
  /** Solve with every conductor at this temperature [K], as for cold leads, instead of where they get to. */
  readonly lead_temperature?: number;
}
