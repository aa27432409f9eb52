import type { IssueCode } from './codes.ts';

/** Where in a file an issue lies: 1-based line and column. */
export interface FilePosition {
  /** Line, counted from 1 [-]. */
  readonly line: number;
  /** Column, counted from 1 [-]. */
  readonly column: number;
}

/** One expected failure, told to a person: where, what was read, what is accepted, what is nearest. */
export interface Issue {
  readonly code: IssueCode;
  /** One sentence a person in the shop can act on. */
  readonly message: string;
  /** Path of the field in the document, such as `groove.depth.wanted`; empty for the whole document. */
  readonly path: string;
  /** What was read, as written. */
  readonly read?: string;
  /** What is accepted here, in words. */
  readonly accepted?: string;
  /** The nearest thing that would be accepted. */
  readonly nearest?: string;
  readonly position?: FilePosition;
}

/** A value or the issues that prevent it; never both, never half. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly Issue[] };
