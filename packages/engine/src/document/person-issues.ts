import { distance } from 'fastest-levenshtein';
import { z } from 'zod';
import type { Issue } from '../issue/index.ts';
import { parseAmount, type Reader, sentencesWritten, sentenceText } from '../quantity/index.ts';
import { type CompletedDocument, type DocumentPath, pathText } from './complete.ts';
import type { DocumentCodes } from './document-kind.ts';
import { type FieldFacts, fieldFacts, type IssueParams } from './field.ts';
import { positionOf } from './file-position.ts';
import type { ParsedText } from './parse-text.ts';
import { shown } from './printable.ts';
import { unitOfKey } from './unit-keys.ts';

/** Issues told at once: more would not be read. */
const ISSUES_MOST = 50;

/** What a document is held against. */
interface Rules {
  readonly name: string;
  readonly schema: z.ZodObject;
  readonly codes: DocumentCodes;
}

/** Turns what the schema found into the issues a person reads. */
export function personIssues(
  error: z.ZodError,
  completed: CompletedDocument,
  file: ParsedText,
  rules: Rules,
  reader: Reader,
): Issue[] {
  const told = new Map<string, Issue>();
  for (const found of error.issues) {
    for (const issue of issuesOf(found, completed, file, rules, reader)) {
      // The last of two on one matter is the narrower one: 99999999999 is above 2^53 and above 100000.
      told.set(`${issue.code} ${issue.path}`, issue);
      if (told.size >= ISSUES_MOST) return [...told.values()];
    }
  }
  return [...told.values()];
}

/** Where the file has a path that came about by renaming keyed units. */
export function writtenPath(completed: CompletedDocument, path: DocumentPath): DocumentPath {
  return completed.writtenAs.get(pathText(path)) ?? path;
}

function* issuesOf(
  issue: z.core.$ZodIssue,
  completed: CompletedDocument,
  file: ParsedText,
  rules: Rules,
  reader: Reader,
): Generator<Issue> {
  const path = issue.path.filter((part) => typeof part !== 'symbol');
  const written = writtenPath(completed, path);
  if (issue.code === 'unrecognized_keys') {
    for (const key of issue.keys) yield unknownField(key, path, written, file, rules);
    return;
  }
  const at = { path: pathText(path), ...positionOf(file.document, file.lines, written) };
  if (issue.code === 'custom') {
    const {
      furrow = rules.codes.value,
      says = issue.message,
      ...params
    } = issue.params as unknown as IssueParams;
    const message = `${at.path}: ${sentenceText(says, reader)}`;
    yield { code: furrow, message, ...sentencesWritten(params, reader), ...at };
    return;
  }
  const readValue = valueAt(file.raw, written);
  const facts = factsAt(rules.schema, path);
  const name = facts === undefined ? at.path : `${facts.title} (${at.path})`;
  if (readValue === undefined || readValue === null) {
    const help = facts === undefined ? '' : ` ${facts.help}`;
    yield { code: rules.codes.missing, message: `${name} is missing and has no default.${help}`, ...at };
    return;
  }
  const read = shown(readValue);
  if (facts?.kind !== undefined && typeof readValue === 'number') {
    const outcome = parseAmount(String(readValue), facts.kind);
    if (!outcome.ok) {
      for (const bare of outcome.issues) {
        yield { ...bare, message: `${at.path}: ${bare.message}`, read, ...at };
      }
      return;
    }
  }
  const accepted = amountWords(facts) ?? acceptedWords(issue);
  yield {
    code: rules.codes.value,
    message: `${name}: “${read}” is not accepted here; accepted is ${accepted}.`,
    read,
    accepted,
    ...nearestOption(issue, read),
    ...at,
  };
}

/** What is left of an amount whose decimal comma YAML took for the end of a field: `5 mm` of `9,5 mm`. */
const PARTED_AMOUNT = /^\d+(\s|$)/u;

function unknownField(
  key: string,
  path: DocumentPath,
  written: DocumentPath,
  file: ParsedText,
  rules: Rules,
): Issue {
  const names = fieldNames(rules.schema, path);
  const keyed = names.find((name) => {
    const kind = factsAt(rules.schema, [...path, name])?.kind;
    return kind !== undefined && unitOfKey(key, name, kind) !== undefined;
  });
  const nearest = keyed ?? nearestOf(key, names);
  const place = path.length === 0 ? `at the top of a ${rules.name}` : `in ${pathText(path)}`;
  const hint = PARTED_AMOUNT.test(key)
    ? 'A comma inside { } parts two fields; put the amount in quotes, such as "9,5 mm".'
    : nearest === undefined
      ? `Known here: ${names.join(', ')}.`
      : `Did you mean “${nearest}”?`;
  const group = valueAt(file.raw, written) as Record<string, unknown>;
  const message =
    keyed === undefined
      ? `The field “${shown(key)}” is not known ${place}. ${hint}`
      : typeof group[key] === 'number' && Number.isFinite(group[key])
        ? `The field “${keyed}” is stated twice ${place}, once as “${key}”; keep one.`
        : `The field “${key}” ${place} takes a plain number, because its unit is in its name; read was “${shown(group[key])}”.`;
  return {
    code: rules.codes.unknown,
    message,
    path: pathText([...path, shown(key)]),
    read: shown(key),
    accepted: names.join(', '),
    ...(nearest === undefined ? {} : { nearest }),
    ...positionOf(file.document, file.lines, [...written, key]),
  };
}

/** What is accepted for an amount; undefined for any other field. */
function amountWords(facts: FieldFacts | undefined): string | undefined {
  if (facts?.kind === undefined) return undefined;
  const outcome = parseAmount('', facts.kind);
  return outcome.ok ? undefined : outcome.issues[0]?.accepted;
}

function acceptedWords(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_value':
      return issue.values
        .map((value) => (typeof value === 'number' ? `the number ${value}, without quotes` : String(value)))
        .join(', ');
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

/** What stands in the file at a path, references followed. */
function valueAt(raw: unknown, path: DocumentPath): unknown {
  let value = raw;
  for (const part of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, part)) return undefined;
    value = (value as Record<string | number, unknown>)[part];
  }
  return value;
}

function schemaAt(root: z.ZodType, path: DocumentPath): z.ZodType | undefined {
  let schema: z.ZodType | undefined = root;
  for (const part of path) {
    if (schema instanceof z.ZodOptional) schema = schema.unwrap() as z.ZodType;
    if (schema instanceof z.ZodArray) schema = schema.element as z.ZodType;
    else if (schema instanceof z.ZodObject && Object.hasOwn(schema.shape, part))
      schema = schema.shape[part] as z.ZodType;
    else return undefined;
  }
  return schema instanceof z.ZodOptional ? (schema.unwrap() as z.ZodType) : schema;
}

function factsAt(root: z.ZodType, path: DocumentPath): FieldFacts | undefined {
  const schema = schemaAt(root, path);
  return schema === undefined ? undefined : fieldFacts.get(schema);
}

function fieldNames(root: z.ZodType, path: DocumentPath): string[] {
  const schema = schemaAt(root, path);
  return schema instanceof z.ZodObject ? Object.keys(schema.shape) : [];
}
