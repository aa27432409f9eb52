import type { z } from 'zod';
import type { IssueCode } from '../issue/index.ts';

/** A kind of file that people write: its name, its version line, its schema and the codes of its issues. */
export interface DocumentKind<Schema extends z.ZodObject> {
  /** What it is called in a sentence, such as `job`. */
  readonly name: string;
  /** Field that carries the version, the first line of a file. */
  readonly versionField: string;
  readonly schema: Schema;
  readonly codes: DocumentCodes;
}

/** Codes of the issues that reading a document can end in. */
export interface DocumentCodes {
  readonly combination: IssueCode;
  readonly missing: IssueCode;
  readonly unknown: IssueCode;
  readonly value: IssueCode;
  readonly syntax: IssueCode;
  readonly tooLarge: IssueCode;
  readonly version: IssueCode;
}
