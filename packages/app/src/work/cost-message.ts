import type { Answer, CostAnswer, CostChangeReport, ReadJob, ReadKit } from '@furrow/engine';

/** A planned job whose time and money are asked for; a newer request takes the place of one that is under way. */
export interface CostRequest {
  readonly id: number;
  readonly read: ReadJob;
  readonly answer: Answer;
  /** The kit that the answer was made with. */
  readonly kit?: ReadKit | undefined;
  /** Text of the trials that the answer was made with. */
  readonly knowledge?: string | undefined;
}

/** What comes of it: the cost, then each change that was tried, then the end; or a failure. */
export type CostReply =
  | { readonly id: number; readonly is: 'cost'; readonly cost: CostAnswer }
  | { readonly id: number; readonly is: 'change'; readonly change: CostChangeReport }
  | { readonly id: number; readonly is: 'done' }
  | { readonly id: number; readonly is: 'failure'; readonly message: string };
