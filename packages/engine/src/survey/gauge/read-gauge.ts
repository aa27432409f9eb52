import {
  type CombinationIssue,
  type DefaultUsed,
  DOCUMENT_TEXT_MOST,
  type DocumentField,
  type DocumentKind,
  documentCodes,
  documentFields,
  documentJsonSchema,
  type JsonSchema,
  readDocument,
} from '../../document/index.ts';
import type { Outcome } from '../../issue/index.ts';
import { type Gauge, gaugeSchema } from './gauge-schema.ts';

/** Greatest size of a gauge file [characters]. */
export const GAUGE_TEXT_MOST = DOCUMENT_TEXT_MOST;

const GAUGE: DocumentKind<typeof gaugeSchema> = {
  name: 'gauge',
  versionField: 'furrow_gauge',
  schema: gaugeSchema,
  codes: documentCodes('GAUGE'),
};

/** A gauge file as read. */
export interface ReadGauge {
  readonly gauge: Gauge;
  readonly defaultsUsed: readonly DefaultUsed[];
  /** SHA-256 of the content, in hex; layout and comments do not count. */
  readonly revision: string;
}

/**
 * Reads a gauge, its study and its checks from a file, YAML or JSON, or tells what is wrong and where.
 *
 * @param text - the file's content [text], at most 200 000 characters
 * @returns the gauge in SI and its revision, or the issues [record]
 * @source none: bookkeeping
 * @example
 * readGauge('furrow_gauge: 1\ngauge: bridge gauge').value.gauge.method // => "anova_pooled"
 */
export function readGauge(text: string): Outcome<ReadGauge> {
  const outcome = readDocument(text, GAUGE, {
    wholeOf: (gauge) => gauge,
    contradictions: (gauge) => [...twoStudies(gauge), ...crossedGaps(gauge), ...nestedGaps(gauge)],
  });
  if (!outcome.ok) return outcome;
  const { whole: gauge, revision, defaultsUsed } = outcome.value;
  return { ok: true, value: { gauge, revision, defaultsUsed } };
}

/**
 * Every field of a gauge file, for forms, in the order of the file.
 *
 * @returns the fields [list]
 * @source none: bookkeeping
 * @example
 * gaugeFields().find((field) => field.path === 'seating').kind // => "length"
 */
export function gaugeFields(): readonly DocumentField[] {
  return documentFields(gaugeSchema);
}

/**
 * The JSON Schema (draft 2020-12) of a gauge file, made from its one schema.
 *
 * @returns the JSON Schema [record]
 * @source JSON Schema draft 2020-12
 * @example
 * gaugeJsonSchema()['title'] // => "Furrow gauge"
 */
export function gaugeJsonSchema(): JsonSchema {
  return documentJsonSchema(gaugeSchema, 'Furrow gauge');
}

function twoStudies({ crossed, nested }: Gauge): CombinationIssue[] {
  return crossed === undefined || nested === undefined
    ? []
    : [
        {
          at: ['nested'],
          message: 'The file holds a crossed study and a nested one; a reading has one uncertainty.',
          read: 'crossed and nested',
          accepted: 'one of the two',
        },
      ];
}

/** Each appraiser reads each part, and as often. */
function crossedGaps({ crossed = [] }: Gauge): CombinationIssue[] {
  const [first] = crossed;
  if (first === undefined) return [];
  const uneven = crossed.findIndex(({ readings }) => readings.length !== first.readings.length);
  if (uneven >= 0) return [unevenReadings('crossed', uneven, first.readings.length, crossed[uneven]!)];
  const twice = crossed.findIndex(
    ({ part, appraiser }, i) =>
      crossed.findIndex((each) => each.part === part && each.appraiser === appraiser) !== i,
  );
  if (twice >= 0) {
    const { part, appraiser } = crossed[twice]!;
    return [
      {
        at: ['crossed', twice],
        message: `Part ${part} by ${appraiser} is there twice.`,
        read: `${part} by ${appraiser}`,
        accepted: 'all readings of one part by one appraiser in one row',
      },
    ];
  }
  const parts = [...new Set(crossed.map(({ part }) => part))];
  const appraisers = [...new Set(crossed.map(({ appraiser }) => appraiser))];
  for (const part of parts)
    for (const appraiser of appraisers)
      if (!crossed.some((each) => each.part === part && each.appraiser === appraiser))
        return [
          {
            at: ['crossed'],
            message: `Part ${part} was not read by ${appraiser}: a crossed study is whole, or none.`,
            read: `${crossed.length} rows`,
            accepted: `${parts.length * appraisers.length} rows: each part by each appraiser`,
          },
        ];
  return parts.length > 1
    ? []
    : [
        {
          at: ['crossed'],
          message: 'A crossed study with one part cannot tell the parts from the gauge.',
          read: '1 part',
          accepted: 'at least 2 parts, better 10 over the depths that are gauged',
        },
      ];
}

/** As many readings a day, days a run and runs a standard. */
function nestedGaps({ nested = [] }: Gauge): CombinationIssue[] {
  const [first] = nested;
  if (first === undefined) return [];
  const uneven = nested.findIndex(({ readings }) => readings.length !== first.readings.length);
  if (uneven >= 0) return [unevenReadings('nested', uneven, first.readings.length, nested[uneven]!)];
  const days = countsOf(nested, ({ standard, run }) => `${standard}\n${run}`);
  const runs = countsOf(
    [...new Set(nested.map(({ standard, run }) => `${standard}\n${run}`))],
    (each) => each.split('\n')[0]!,
  );
  const wanted: CombinationIssue[] = [];
  for (const [counts, of, each] of [
    [days, 'days', 'run'],
    [runs, 'runs', 'standard'],
  ] as const) {
    if (new Set(counts).size > 1 || counts[0]! < 2)
      wanted.push({
        at: ['nested'],
        message: `Not each ${each} of the study has as many ${of}, or it has one alone.`,
        read: [...new Set(counts)].sort((a, b) => a - b).join(', '),
        accepted: `as many ${of} in each ${each}, at least 2`,
      });
  }
  return wanted;
}

function countsOf<T>(rows: readonly T[], keyOf: (row: T) => string): number[] {
  const counts = new Map<string, number>();
  for (const row of rows) counts.set(keyOf(row), (counts.get(keyOf(row)) ?? 0) + 1);
  return [...counts.values()];
}

function unevenReadings(
  list: 'crossed' | 'nested',
  row: number,
  wanted: number,
  { readings }: { readonly readings: readonly unknown[] },
): CombinationIssue {
  return {
    at: [list, row, 'readings'],
    message: 'Not every row of the study has as many readings.',
    read: String(readings.length),
    accepted: String(wanted),
  };
}
