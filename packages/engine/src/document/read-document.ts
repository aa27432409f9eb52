import type { z } from 'zod';
import type { Issue, IssueCode, Outcome } from '../issue/index.ts';
import { type Reader, type Sentence, sentencesWritten } from '../quantity/index.ts';
import { completeDocument, type DefaultUsed, type DocumentPath, pathText } from './complete.ts';
import type { DocumentKind } from './document-kind.ts';
import { positionOf } from './file-position.ts';
import { type ParsedText, parseText } from './parse-text.ts';
import { personIssues, writtenPath } from './person-issues.ts';
import { revisionOf } from './revision.ts';

/** An issue with the path it belongs to, before its place in the file is looked up; its own code where it has one. */
export type CombinationIssue = Pick<Issue, 'read'> & {
  readonly message: Sentence;
  readonly accepted?: Sentence;
  readonly nearest?: Sentence;
  readonly code?: IssueCode;
  /** Names and indexes from the top of the document [-]. */
  readonly at: DocumentPath;
};

/** A document as read: in SI, with the defaults that stood in and the hash of its content. */
export interface ReadDocument<Content, Whole> {
  /** What follows from the content. */
  readonly whole: Whole;
  readonly content: Content;
  readonly defaultsUsed: readonly DefaultUsed[];
  /** SHA-256 of the content, defaults included, in hex. */
  readonly revision: string;
}

/** What a room makes of a document that its schema accepts: the whole, and where fields contradict each other. */
export interface Meaning<Content, Whole> {
  readonly wholeOf: (content: Content) => Whole;
  readonly contradictions: (whole: Whole) => readonly CombinationIssue[];
}

/**
 * Reads a document, YAML or JSON, by its kind, or tells what is wrong with it and where.
 *
 * @param text - the file's content [text], at most 200 000 characters
 * @param kind - name, version line, schema and codes [record], see DocumentKind
 * @param meaning - what follows from the content, and what contradicts itself in it [record], see Meaning
 * @param reader - whose units mistakes are told in [text], inch or metric; both where it is not known who reads
 * @returns content, what follows from it, defaults used and revision, or the issues [record]
 * @source none: bookkeeping
 * @example
 * const width = amount('length', { least: 0, most: 1 }, { title: 'Width', help: 'How wide.' });
 * const kind = { name: 'box', versionField: 'box', schema: z.strictObject({ box: z.literal(1), width }), codes: {} };
 * const meaning = { wholeOf: (box) => box, contradictions: () => [] };
 * readDocument('box: 1\nwidth: 40 mm', kind, meaning).value.content // => {"box":1,"width":0.04}
 */
export function readDocument<Schema extends z.ZodObject, Whole>(
  text: string,
  kind: DocumentKind<Schema>,
  meaning: Meaning<z.output<Schema>, Whole>,
  reader: Reader = 'both',
): Outcome<ReadDocument<z.output<Schema>, Whole>> {
  const file = parseText(text, kind);
  if (!file.ok) return file;
  const { raw, document, lines } = file.value;
  const version = raw[kind.versionField];
  if (typeof version === 'number' && version !== 1) {
    return { ok: false, issues: [versionIssue(version, kind, file.value)] };
  }
  const completed = completeDocument(kind.schema, raw);
  const parsed = kind.schema.safeParse(completed.value);
  if (!parsed.success)
    return { ok: false, issues: personIssues(parsed.error, completed, file.value, kind, reader) };
  const whole = meaning.wholeOf(parsed.data);
  const issues = meaning.contradictions(whole).map(
    ({ at, ...issue }): Issue => ({
      code: kind.codes.combination,
      ...sentencesWritten(issue, reader),
      ...positionOf(document, lines, writtenPath(completed, at)),
      path: pathText(at),
    }),
  );
  if (issues.length > 0) return { ok: false, issues };
  const { defaultsUsed } = completed;
  return {
    ok: true,
    value: { whole, content: parsed.data, defaultsUsed, revision: revisionOf(parsed.data) },
  };
}

function versionIssue(
  version: number,
  { versionField, codes }: DocumentKind<z.ZodObject>,
  { document, lines }: ParsedText,
): Issue {
  return {
    code: codes.version,
    message: `The file is of version ${version}; this program reads version 1.`,
    path: versionField,
    read: String(version),
    accepted: '1',
    ...positionOf(document, lines, [versionField]),
  };
}
