import type { Issue, IssueCode } from '@furrow/engine';

/** Further fields of the body of a refusal. */
export interface RefusedMore {
  readonly issues?: readonly Issue[];
}

/** Leaves a handler with an answer other than the one asked for; the error handler turns it into the reply. */
export class Refused extends Error {
  override readonly name = 'Refused';
  readonly code: IssueCode;
  readonly more: RefusedMore;

  constructor(code: IssueCode, message: string, more: RefusedMore = {}) {
    super(message);
    this.code = code;
    this.more = more;
  }
}
