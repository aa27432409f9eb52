import type { Commissioning, CommissioningSave } from '@furrow/contract';

/** A reading as it was typed, with what it was read as. */
export interface RigReading {
  readonly text: string;
  /** The reading in SI units; null where it is no number [SI unit]. */
  readonly value: number | null;
  readonly note: string;
}

/** A fault that is looked into, or was found. */
export interface RigFinding {
  readonly id: string;
  readonly symptoms: CommissioningSave['findings'][number]['symptoms'];
  /** Identifier of the cause it turned out to be; null while not known. */
  readonly cause: string | null;
  readonly note: string;
}

/** What was ticked, read and found at the rig, each by its identifier. */
export interface RigRecord {
  readonly readings: Readonly<Record<string, RigReading>>;
  readonly ticks: Readonly<Record<string, true>>;
  readonly findings: Readonly<Record<string, RigFinding>>;
}

/** The record of a rig at which nothing was done yet. */
export const NOTHING_ENTERED: RigRecord = { readings: {}, ticks: {}, findings: {} };

type Entries = Pick<CommissioningSave, 'readings' | 'ticks' | 'findings'>;

/** The record in the form in which the store keeps it. */
export function entriesOf({ readings, ticks, findings }: RigRecord): Entries {
  return { readings: { ...readings }, ticks: Object.keys(ticks), findings: Object.values(findings) };
}

/** The record of entries that were kept. */
export function recordOf({ readings, ticks, findings }: Entries): RigRecord {
  return {
    readings: Object.fromEntries(
      Object.entries(readings).map(([id, { text, value, note }]) => [id, { text, value, note }]),
    ),
    ticks: Object.fromEntries(ticks.map((id) => [id, true] as const)),
    findings: Object.fromEntries(
      findings.map(({ id, symptoms, cause, note }) => [id, { id, symptoms, cause, note }]),
    ),
  };
}

/** The record of what the server has. */
export function savedRecord({ readings, ticks, findings }: Commissioning): RigRecord {
  return recordOf({ readings, ticks: Object.keys(ticks), findings });
}
