/** Work that a search may still do, in passes run in one shop each: the same on every machine, unlike time. */
export interface Work {
  /** Passes left [-]; a search that has none left stops with what it has found. */
  left: number;
}
