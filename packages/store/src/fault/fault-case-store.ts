/** A fault that was found. */
export interface FoundFault {
  /** Given by whoever found it, so that a case sent twice counts once. */
  readonly id: string;
  /** Identifier of the cause. */
  readonly cause: string;
  /** What was seen, by identifier of the observable. */
  readonly symptoms: Readonly<Record<string, string>>;
}

/** Where the faults that the shop found are kept. The rules are those of the job store. */
export interface FaultCaseStore {
  /** All cases, oldest first. */
  list(): Promise<readonly FoundFault[]>;
  /** Adds a case, or replaces the one of the same id. */
  put(found: FoundFault): Promise<void>;
  /** Takes a case out; false if there is none of this id. */
  remove(id: string): Promise<boolean>;
}
