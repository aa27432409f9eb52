import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { distance } from 'fastest-levenshtein';
import { type Document, isNode, isPair, isScalar, LineCounter, parseDocument } from 'yaml';
import { z } from 'zod';
import type { FilePosition, Issue, Outcome } from '../issue/index.ts';
import { parseAmount } from '../quantity/index.ts';
import { combinationIssues } from './combination.ts';
import {
  type CompletedDocument,
  completeDocument,
  type DefaultUsed,
  type DocumentPath,
  pathText,
} from './complete.ts';
import { fieldFacts, type IssueParams } from './field.ts';
import { type Job, jobOf } from './job.ts';
import { jobSchema } from './schema.ts';

/** Greatest size of a job file [characters]. */
export const JOB_TEXT_MOST = 200_000;

/** A job as read: in SI, with the defaults that stood in and the hash of its content. */
export interface ReadJob {
  readonly job: Job;
  readonly defaultsUsed: readonly DefaultUsed[];
  /** SHA-256 of the content, defaults included, in hex; layout and comments do not count. */
  readonly revision: string;
}

/**
 * Reads a job file, YAML or JSON, into a job in SI, or tells what is wrong with it and where.
 *
 * Each default used is listed; nothing is filled in silently. Keys may carry the unit
 * (`thickness_mm: 32`) in place of an amount with its unit (`thickness: 32 mm`).
 *
 * @param text - the file's content [text], at most 200 000 characters
 * @returns the job, the defaults used and the revision, or the issues [record]
 * @source none: bookkeeping
 * @example
 * readJob('furrow: 1').ok // => false
 */
export function readJob(text: string): Outcome<ReadJob> {
  if (text.length > JOB_TEXT_MOST) {
    return refuse(
      'JOB_TOO_LARGE',
      `The file has ${text.length} characters; a job has at most ${JOB_TEXT_MOST}.`,
    );
  }
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, uniqueKeys: true });
  if (document.errors.length > 0) {
    return { ok: false, issues: document.errors.map((error) => syntaxIssue(error, lines)) };
  }
  let raw: unknown;
  try {
    raw = document.toJS({ maxAliasCount: 50 });
  } catch (error) {
    return refuse('JOB_SYNTAX', `The file cannot be read: ${(error as Error).message}`);
  }
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    return refuse(
      'JOB_SYNTAX',
      'The file is empty or holds no fields; a job starts with the line “furrow: 1”.',
    );
  }
  const version = (raw as { furrow?: unknown }).furrow;
  if (typeof version === 'number' && version !== 1) {
    const read = String(version);
    return refuse('JOB_VERSION', `The file is of version ${read}; this program reads version 1.`, {
      path: 'furrow',
      read,
      accepted: '1',
      ...positionOf(document, lines, ['furrow']),
    });
  }
  const completed = completeDocument(jobSchema, raw);
  const parsed = jobSchema.safeParse(completed.value);
  if (!parsed.success) {
    const issues = parsed.error.issues.flatMap((issue) => personIssues(issue, completed, document, lines));
    return { ok: false, issues };
  }
  const job = jobOf(parsed.data);
  const combination = combinationIssues(job).map((issue) => ({
    ...issue,
    ...positionOf(document, lines, writtenPath(completed, issue.at)),
    path: pathText(issue.at),
  }));
  if (combination.length > 0) {
    return { ok: false, issues: combination.map(({ at: _at, ...issue }) => issue) };
  }
  return {
    ok: true,
    value: { job, defaultsUsed: completed.defaultsUsed, revision: revisionOf(parsed.data) },
  };
}

function refuse(code: Issue['code'], message: string, more: Partial<Issue> = {}): Outcome<ReadJob> {
  return { ok: false, issues: [{ code, message, path: '', ...more }] };
}

function syntaxIssue(error: { message: string; pos: [number, number] }, lines: LineCounter): Issue {
  const { line, col } = lines.linePos(error.pos[0]);
  return {
    code: 'JOB_SYNTAX',
    message: `Line ${line}: the file is not readable as YAML or JSON. ${error.message}`,
    path: '',
    accepted: 'YAML or JSON',
    position: { line, column: col },
  };
}

/** Turns one schema issue into the issues a person reads. */
function personIssues(
  issue: z.core.$ZodIssue,
  completed: CompletedDocument,
  document: Document,
  lines: LineCounter,
): Issue[] {
  const path = issue.path.filter((part) => typeof part !== 'symbol');
  const written = writtenPath(completed, path);
  const at = { path: pathText(path), ...positionOf(document, lines, written) };
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => unknownField(key, path, written, document, lines));
  }
  const readValue = document.getIn(written, false);
  const facts = factsAt(path);
  const name = facts === undefined ? at.path : `${facts.title} (${at.path})`;
  if (issue.code === 'custom') {
    const { furrow, ...params } = issue.params as unknown as IssueParams;
    return [{ code: furrow, message: `${at.path}: ${issue.message}`, ...params, ...at }];
  }
  if (readValue === undefined) {
    const help = facts === undefined ? '' : ` ${facts.help}`;
    return [{ code: 'JOB_FIELD_MISSING', message: `${name} is missing and has no default.${help}`, ...at }];
  }
  const read = shown(readValue);
  if (facts?.kind !== undefined && typeof readValue === 'number') {
    const outcome = parseAmount(String(readValue), facts.kind);
    if (!outcome.ok)
      return outcome.issues.map((bare) => ({ ...bare, message: `${at.path}: ${bare.message}`, read, ...at }));
  }
  const accepted = acceptedWords(issue);
  return [
    {
      code: 'JOB_FIELD_VALUE',
      message: `${name}: “${read}” is not accepted here; accepted is ${accepted}.`,
      read,
      accepted,
      ...nearestOption(issue, read),
      ...at,
    },
  ];
}

function unknownField(
  key: string,
  path: DocumentPath,
  written: DocumentPath,
  document: Document,
  lines: LineCounter,
): Issue {
  const names = fieldNames(path);
  const nearest = nearestOf(key, names);
  const hint = nearest === undefined ? `Known here: ${names.join(', ')}.` : `Did you mean “${nearest}”?`;
  return {
    code: 'JOB_FIELD_UNKNOWN',
    message: `The field “${shown(key)}” is not known ${path.length === 0 ? 'at the top of a job' : `in ${pathText(path)}`}. ${hint}`,
    path: pathText([...path, key]),
    read: shown(key),
    accepted: names.join(', '),
    ...(nearest === undefined ? {} : { nearest }),
    ...positionOf(document, lines, [...written, key]),
  };
}

function acceptedWords(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_value':
      return issue.values.map(String).join(', ');
    case 'invalid_type':
      return (
        { string: 'text', object: 'a group of fields', array: 'a list', int: 'a whole number' }[
          issue.expected as string
        ] ?? `a ${issue.expected}`
      );
    case 'too_small':
      return issue.origin === 'number' || issue.origin === 'int'
        ? `a number of at least ${issue.minimum}`
        : `at least ${issue.minimum} ${issue.origin === 'array' ? 'entry' : 'character'}`;
    case 'too_big':
      return issue.origin === 'number' || issue.origin === 'int'
        ? `a number of at most ${issue.maximum}`
        : `at most ${issue.maximum} ${issue.origin === 'array' ? 'entries' : 'characters'}`;
    default:
      return issue.message;
  }
}

function nearestOption(issue: z.core.$ZodIssue, read: string): { nearest?: string } {
  if (issue.code !== 'invalid_value') return {};
  const nearest = nearestOf(read, issue.values.map(String));
  return nearest === undefined ? {} : { nearest };
}

function nearestOf(word: string, known: readonly string[]): string | undefined {
  const ranked = known
    .map((name) => ({ name, steps: distance(word.slice(0, 60).toLowerCase(), name.toLowerCase()) }))
    .sort((a, b) => a.steps - b.steps);
  const best = ranked[0];
  return best !== undefined && best.steps <= Math.max(2, Math.floor(best.name.length / 2))
    ? best.name
    : undefined;
}

function schemaAt(path: DocumentPath): z.ZodType | undefined {
  let schema: z.ZodType | undefined = jobSchema;
  for (const part of path) {
    if (schema instanceof z.ZodOptional) schema = schema.unwrap() as z.ZodType;
    if (schema instanceof z.ZodArray) schema = schema.element as z.ZodType;
    else if (schema instanceof z.ZodObject && Object.hasOwn(schema.shape, part))
      schema = schema.shape[part] as z.ZodType;
    else return undefined;
  }
  return schema instanceof z.ZodOptional ? (schema.unwrap() as z.ZodType) : schema;
}

function factsAt(path: DocumentPath): ReturnType<typeof fieldFacts.get> {
  const schema = schemaAt(path);
  return schema === undefined ? undefined : fieldFacts.get(schema);
}

function fieldNames(path: DocumentPath): string[] {
  const schema = schemaAt(path);
  return schema instanceof z.ZodObject ? Object.keys(schema.shape) : [];
}

function writtenPath(completed: CompletedDocument, path: DocumentPath): DocumentPath {
  return completed.writtenAs.get(pathText(path)) ?? path;
}

/** Position of the value at a path, or of the nearest part of the path that stands in the file. */
function positionOf(document: Document, lines: LineCounter, path: DocumentPath): { position?: FilePosition } {
  for (let length = path.length; length >= 0; length -= 1) {
    const offset = offsetAt(document, path.slice(0, length));
    if (offset !== undefined) {
      const { line, col } = lines.linePos(offset);
      return { position: { line, column: col } };
    }
  }
  return {};
}

function offsetAt(document: Document, path: DocumentPath): number | undefined {
  const key = path.at(-1);
  const parent = path.length <= 1 ? document.contents : document.getIn(path.slice(0, -1), true);
  if (typeof key === 'string' && isNode(parent) && 'items' in parent) {
    for (const pair of parent.items) {
      if (isPair(pair) && isScalar(pair.key) && String(pair.key.value) === key) {
        const value = isNode(pair.value) && isScalar(pair.value) ? pair.value.range?.[0] : undefined;
        return value ?? pair.key.range?.[0];
      }
    }
    return undefined;
  }
  const node = path.length === 0 ? document.contents : document.getIn(path, true);
  return isNode(node) ? node.range?.[0] : undefined;
}

/** A value as it is quoted in a message: short, on one line. */
function shown(value: unknown): string {
  const text = typeof value === 'string' ? value : (JSON.stringify(value) ?? String(value));
  const line = text.replace(/\s+/gu, ' ');
  return line.length > 60 ? `${line.slice(0, 59)}…` : line;
}

/** SHA-256 over the content with its keys in order, so that layout and comments do not count. */
function revisionOf(content: unknown): string {
  return bytesToHex(sha256(utf8ToBytes(JSON.stringify(sortedKeys(content)))));
}

function sortedKeys(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sortedKeys);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(entries.map(([key, item]) => [key, sortedKeys(item)]));
}
