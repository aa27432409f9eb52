import type { RunExpectation } from './expectation.ts';

/** What the electrode in the torch has burnt, from pass to pass. */
export class ElectrodeInUse {
  private charge = 0;
  private fed = 0;

  addCharge(charge: number): void {
    this.charge += charge;
  }

  addFeed(length: number): void {
    this.fed += length;
  }

  /** Length that was burnt, as fed or else from the charge; undefined where neither tells it [m]. */
  burnt(expected: RunExpectation | undefined, hasCharge: boolean): number | undefined {
    if (this.fed > 0) return this.fed;
    return expected === undefined || !hasCharge ? undefined : this.charge * expected.wear;
  }

  /** Another one was put in. */
  change(): void {
    this.charge = 0;
    this.fed = 0;
  }
}
