/** A spell of steady noise in a shift. */
export interface NoiseTask {
  /** Level at the ear [dBA]. */
  readonly level: number;
  /** How long it lasts [s]. */
  readonly time: number;
}
