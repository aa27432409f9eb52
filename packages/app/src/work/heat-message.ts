import type { Answer, HeatAnswer, ReadJob } from '@furrow/engine';

/** A planned job whose heat is asked for; a newer request takes the place of one that is under way. */
export interface HeatRequest {
  readonly is: 'solve';
  readonly id: number;
  readonly read: ReadJob;
  readonly answer: Answer;
  /** Place of the section from the start of the seam; the middle if left out [m]. */
  readonly station?: number;
  /** Text of the trials that the answer was made with. */
  readonly knowledge?: string | undefined;
}

/** What the page tells the worker. */
export type HeatCommand = HeatRequest | { readonly is: 'stop' };

/** Grids that are run: first a coarse look, then one whose error was estimated. */
export const HEAT_QUALITIES = ['quick', 'refined'] as const;
export type HeatQuality = (typeof HEAT_QUALITIES)[number];

/** What comes of it: how far it is, the answer of each grid, that there is no plan to heat anything, or a failure. */
export type HeatReply =
  | {
      readonly id: number;
      readonly is: 'progress';
      readonly quality: HeatQuality;
      /** Share done [-]. */
      readonly share: number;
    }
  | {
      readonly id: number;
      readonly is: 'answer';
      readonly quality: HeatQuality;
      readonly heat: HeatAnswer;
      /** How long this grid took [ms]. */
      readonly took_ms: number;
    }
  | { readonly id: number; readonly is: 'nothing' }
  | { readonly id: number; readonly is: 'failure'; readonly message: string };
