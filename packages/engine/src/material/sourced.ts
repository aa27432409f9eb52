/** How well a statement is backed: seen in a public text, recalled, worked out from others, or what shops do. */
export type Provenance = 'confirmed' | 'memory' | 'derived' | 'common practice';

/** A number with where it comes from. */
export interface SourcedNumber {
  /** The number itself, in `unit` [see unit]. */
  readonly value: number;
  /** SI unit, `-` for none. */
  readonly unit: string;
  readonly source: string;
  readonly provenance: Provenance;
  /** Spread over the metals meant, in `unit`. */
  readonly range?: {
    /** Least [see unit]. */
    readonly min: number;
    /** Most [see unit]. */
    readonly max: number;
  };
}

/** A piece of advice with where it comes from. */
export interface SourcedAdvice {
  readonly text: string;
  readonly source: string;
  readonly provenance: Provenance;
}
