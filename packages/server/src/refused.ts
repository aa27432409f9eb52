import type { Issue, IssueCode } from '@furrow/engine';

/** Leaves a handler with an answer other than the one asked for; the error handler turns it into the reply. */
export class Refused extends Error {
  override readonly name = 'Refused';
  readonly code: IssueCode;
  /** Further fields of the reply's body. */
  readonly more: { readonly issues?: readonly Issue[] };

  constructor(code: IssueCode, message: string, more: Refused['more'] = {}) {
    super(message);
    this.code = code;
    this.more = more;
  }
}
