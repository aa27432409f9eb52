import { readFileSync } from 'node:fs';
import { answerJob, readJob, readKit } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { renderHtml } from './html/index.ts';
import { makePaper } from './kinds/index.ts';
import { renderSupplyText } from './text/index.ts';

const EXAMPLES = new URL('../../../examples/', import.meta.url);
const textOf = (name: string): string => readFileSync(new URL(name, EXAMPLES), 'utf8');

function readValue<Value>(
  outcome: { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly issues: object },
): Value {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

/** An amount in a unit that a shop working in inches does not read; copper by its mm² keeps the name it is bought by. */
const METRIC = /\d\s?(?:mm|cm|m|bar|°C|kPa|kg|L|mm\/min|m\/min|L\/min|m³)(?![\w²])/u;

/** What stands as somebody else wrote it: text for the kit's file, and what a source is called. */
const QUOTED = /\.defaults_used\.|\.source(?:\.text)?$/u;

/** All texts of a result with where they stand. */
function textsOf(value: unknown, at = ''): [string, string][] {
  if (typeof value === 'string') return [[at, value]];
  if (value === null || typeof value !== 'object' || ArrayBuffer.isView(value)) return [];
  return Object.entries(value).flatMap(([key, each]) => textsOf(each, `${at}.${key}`));
}

const kit = readValue(readKit(textOf('yard-kit.yaml')));

describe.each(['penstock-seam', 'casting-wash', 'defect-pocket'])('%s with its kit, in inches', (name) => {
  const job = readValue(readJob(textOf(`${name}.yaml`)));
  const answer = answerJob({ job, kit, version: 'x', system: 'inch' });
  const names = [job.job.title, ...(kit.kit.stock.leads ?? []).map((lead) => lead.name)];
  const unnamed = (text: string): string => names.reduce((left, each) => left.replaceAll(each, ''), text);
  const metric = (texts: [string, string][]): [string, string][] =>
    texts.filter(([at, text]) => !QUOTED.test(at) && METRIC.test(unnamed(text)));

  it('tells supply and checks without a metric amount', () => {
    expect(answer.supply?.checks.length).toBeGreaterThan(20);
    expect(metric(textsOf(answer.supply))).toEqual([]);
  });

  it('says so in the terminal too', () => {
    const lines = renderSupplyText(answer, job.job.title, 'inch').split('\n');
    expect(lines.length).toBeGreaterThan(40);
    expect(metric(lines.map((line) => ['', line]))).toEqual([]);
  });

  it('says so on the commissioning paper too', () => {
    const document = makePaper(
      'commissioning-sheet',
      { read: job, answer, kit },
      { units: 'inch', paper: 'letter' },
    );
    const body = renderHtml(document).replace(/<style.*?<\/style>|<svg.*?<\/svg>/gsu, '');
    const lines = body.split(/<[^>]*>/u).filter((line) => line.trim() !== '');
    expect(lines.length).toBeGreaterThan(200);
    expect(metric(lines.map((line) => ['', line]))).toEqual([]);
  });
});
