import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import {
  type CombinationIssue,
  DOCUMENT_TEXT_MOST,
  type DocumentKind,
  documentCodes,
  documentJsonSchema,
  type JsonSchema,
  readDocument,
} from '../document/index.ts';
import type { Outcome } from '../issue/index.ts';
import { shareOf } from './effects.ts';
import { mergeSummaries } from './summary.ts';
import { type QuantitySummary, type ShopSummary, summarySchema } from './summary-schema.ts';

/** Greatest size of a summary file [characters]. */
export const SUMMARY_TEXT_MOST = DOCUMENT_TEXT_MOST;

const SUMMARY: DocumentKind<typeof summarySchema> = {
  name: 'summary',
  versionField: 'furrow_summary',
  schema: summarySchema,
  codes: documentCodes('SUMMARY'),
};

/** Coefficients of the law of each quantity, which come before the parts of the families. */
const LAWS = { depth: ['level', 'slope', 'angle'], extra_width: ['level'], wear: ['level'] } as const;
type Quantity = keyof typeof LAWS;
const QUANTITIES = Object.keys(LAWS) as Quantity[];

/** Share of its greatest precision that a precision may be below zero by rounding [-]. */
const ROUNDING = 1e-9;

/** What shops have learned, as read. */
export interface ReadSummary {
  /** Each shop once, by name. */
  readonly shops: readonly ShopSummary[];
  /** SHA-256 of the content, in hex. */
  readonly revision: string;
}

/**
 * Reads a summary file, YAML or JSON, or tells what is wrong and where.
 *
 * @param text - the file's content [text], at most 200 000 characters
 * @returns the shops, or the issues [record]
 * @source none: bookkeeping
 * @example
 * readSummary('furrow_summary: 1').ok // => false
 */
export function readSummary(text: string): Outcome<ReadSummary> {
  const outcome = readDocument(text, SUMMARY, {
    wholeOf: (summary) => summary,
    contradictions: ({ shops }) =>
      shops.flatMap((shop, index) =>
        QUANTITIES.flatMap((name) =>
          faultsOf(shop[name], name).map(
            (message): CombinationIssue => ({
              at: ['shops', index, name],
              message: `What ${shop.shop} says of ${name.replace('_', ' ')} does not hold together: ${message}.`,
              read: `${shop[name].columns.length} columns`,
              accepted: 'a summary as `furrow knowledge export` writes it',
            }),
          ),
        ),
      ),
  });
  if (!outcome.ok) return outcome;
  const { whole, revision } = outcome.value;
  return { ok: true, value: { shops: mergeSummaries(whole.shops), revision } };
}

/**
 * The JSON Schema (draft 2020-12) of a summary file, made from its one schema.
 *
 * @returns the JSON Schema [record]
 * @source JSON Schema draft 2020-12
 * @example
 * summaryJsonSchema()['title'] // => "Furrow summary"
 */
export function summaryJsonSchema(): JsonSchema {
  return documentJsonSchema(summarySchema, 'Furrow summary');
}

/**
 * Writes summaries as a file: the same shops give the same bytes.
 *
 * @param shops - summaries [list], from `summaryOf` or a file
 * @returns content of the file, JSON [text]
 * @source none: bookkeeping
 * @example
 * readSummary(writeSummary([summaryOf(learnFrom({ shop: 'yard', id: 'yard-1', observations: [] }))])).value.shops[0].shop // => "yard"
 */
export function writeSummary(shops: readonly ShopSummary[]): string {
  const text = JSON.stringify({ furrow_summary: 1, shops: mergeSummaries(shops) }, null, 1);
  // numbers and names stand side by side, so that a person sees the whole of it
  return `${text.replace(/\[\s*([^[\]{}]*?)\s*\]/gu, (_, inner: string) => `[${inner.replace(/\s*\n\s*/gu, ' ')}]`)}\n`;
}

function faultsOf({ columns, information, pull }: QuantitySummary, name: Quantity): string[] {
  const size = columns.length;
  const law: readonly string[] = LAWS[name];
  if (law.some((each, i) => columns[i] !== each)) return [`its first columns are not ${law.join(', ')}`];
  if (new Set(columns).size !== size) return ['a column is there twice'];
  const strange = columns.slice(law.length).find((each) => shareOf(each) === undefined);
  if (strange !== undefined) return [`there is no column “${strange}”`];
  if (pull.length !== size || information.length !== (size * (size + 1)) / 2) {
    return [`${size} columns need ${size} numbers of pull and ${(size * (size + 1)) / 2} of information`];
  }
  return isPrecision(information, size) ? [] : ['its information is no precision of anything'];
}

/** Whether a lower triangle is that of a matrix without negative directions. */
function isPrecision(information: readonly number[], size: number): boolean {
  const matrix = Matrix.zeros(size, size);
  let next = 0;
  for (let r = 0; r < size; r += 1) {
    for (let c = 0; c <= r; c += 1) {
      matrix.set(r, c, information[next]!);
      matrix.set(c, r, information[next]!);
      next += 1;
    }
  }
  const most = Math.max(0, ...matrix.diagonal());
  const eased = Matrix.add(matrix, Matrix.eye(size).mul(ROUNDING * most + Number.MIN_VALUE ** 0.5));
  return new CholeskyDecomposition(eased).isPositiveDefinite();
}
