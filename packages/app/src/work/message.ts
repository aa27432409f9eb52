import type { Answer, Issue, ReadJob, ReadKit, UnitSystem } from '@furrow/engine';

/** A job to plan; the id comes back with the reply. */
export interface PlanRequest {
  readonly id: number;
  readonly text: string;
  /** The same as read, where the page has read it already: reading it twice would cost the person time. */
  readonly read?: ReadJob;
  /** The kit to plan with; without one the process alone is planned. */
  readonly kit?: ReadKit | undefined;
  /** Text of the trials that the shop has learned from; the published rows alone without. */
  readonly knowledge?: string | undefined;
  /** Units in which the answer's words tell amounts. */
  readonly units: UnitSystem;
}

/** What came of it: the answer, what is wrong with the text, or that the planner itself failed. */
export type PlanReply =
  | { readonly id: number; readonly is: 'answer'; readonly read: ReadJob; readonly answer: Answer }
  | { readonly id: number; readonly is: 'issues'; readonly issues: readonly Issue[] }
  | { readonly id: number; readonly is: 'failure'; readonly message: string };
