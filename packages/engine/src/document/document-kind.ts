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

/** Ends of the codes of the issues that reading a document can end in. */
const ENDS = {
  combination: 'COMBINATION',
  missing: 'FIELD_MISSING',
  unknown: 'FIELD_UNKNOWN',
  value: 'FIELD_VALUE',
  syntax: 'SYNTAX',
  tooLarge: 'TOO_LARGE',
  version: 'VERSION',
} as const;

/** Codes of the issues that reading a document can end in. */
export type DocumentCodes = Readonly<Record<keyof typeof ENDS, IssueCode>>;

/** How the codes of a kind begin: every end makes one of them. */
type StartOf<Code> = Code extends `${infer Start}_FIELD_UNKNOWN` ? Start : never;

/**
 * The codes of a kind of document, by how all of them begin.
 *
 * @param start - beginning of its codes [text], such as JOB
 * @returns the codes [record]
 * @source none: bookkeeping
 * @example
 * documentCodes('JOB').missing // => "JOB_FIELD_MISSING"
 */
export function documentCodes(start: StartOf<IssueCode>): DocumentCodes {
  const entries = Object.entries(ENDS).map(([key, end]) => [key, `${start}_${end}`]);
  return Object.fromEntries(entries) as DocumentCodes;
}
