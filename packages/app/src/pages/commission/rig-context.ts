import type { CommissionCheck, UnitSystem } from '@furrow/engine';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { useSelected } from '../../ui/store/index.ts';
import type { Rig, RigState } from './rig.ts';
import type { RigReading } from './rig-record.ts';

/** Hands the record of the rig to every component of its page. */
export const RigContext = createContext<Rig | undefined>(undefined);

/** The record of the rig. */
export function useRig(): Rig {
  const rig = useContext(RigContext);
  if (rig === undefined) throw new Error('a component of the rig stands outside of it');
  return rig;
}

/** What a component needs of the record. */
export function useRigState<Selected>(select: (state: RigState) => Selected): Selected {
  return useSelected(useRig().store, select);
}

const NOTHING: RigReading = { text: '', value: null, note: '' };

/** The reading at a check; empty as long as there is none. */
export function useReading(check: string): RigReading {
  return useRigState((state) => state.record.readings[check]) ?? NOTHING;
}

/** What the rows of the page need beside the record. */
export interface CheckRowFacts {
  readonly check: CommissionCheck;
  readonly system: UnitSystem;
  /** When job and kit were last changed: older readings belong to another plan [ISO time]. */
  readonly changedAt: string;
}
