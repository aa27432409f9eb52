import { readFileSync } from 'node:fs';
import {
  answerCost,
  answerHazard,
  answerHeat,
  answerJob,
  type HeatReport,
  readJob,
  readKit,
  type UnitSystem,
} from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import type { PaperBlock } from './blocks/index.ts';
import { makePaper, PAPER_KINDS } from './kinds/index.ts';
import { blocksToText } from './text/block-to-text.ts';
import {
  renderCostText,
  renderHazardText,
  renderHeatText,
  renderSupplyText,
  renderText,
} from './text/index.ts';

const EXAMPLES = new URL('../../../examples/', import.meta.url);

function good<Value>(read: { readonly ok: true; readonly value: Value } | { readonly ok: false }): Value {
  if (!read.ok) throw new Error('an example is not in order');
  return read.value;
}

const textOf = (name: string): string => readFileSync(new URL(name, EXAMPLES), 'utf8');
const kit = good(readKit(textOf('yard-kit.yaml')));
const job = good(readJob(textOf('defect-pocket.yaml')));

function heatOf(answer: ReturnType<typeof answerJob>): HeatReport {
  const steps = answerHeat(job, answer, { quality: 'quick' });
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  return step.value!.report;
}

const answer = answerJob({ job, kit, version: 'x' });
const heat = heatOf(answer);

/** Everything that the terminal says of the job, by the command that says it. */
function terminal(units: UnitSystem): string {
  const { title } = job.job;
  const { inputs } = answer;
  return [
    renderText(answer, job, units),
    renderSupplyText(answer, title, units),
    renderHazardText(answerHazard(job, answer, kit), title, units),
    renderHeatText(heat, title, units),
    renderCostText(answerCost(job, answer, { heat }), [], { read: job, inputs }, units),
  ].join('\n');
}

type Table = Extract<PaperBlock, { readonly kind: 'table' }>;

function tablesOf(units: UnitSystem): Table[] {
  return PAPER_KINDS.flatMap(
    (kind) => makePaper(kind, { read: job, answer, kit, heat }, { units, paper: 'a4' }).blocks,
  ).filter((block): block is Table => block.kind === 'table');
}

/** Text whatever the breadth of the columns it stands in. */
const words = (text: string): string => text.replaceAll(/[\s─]+/gu, ' ');

/** What stands at the head of a table. */
const headOf = ({ caption, columns }: Table): string =>
  words(`${caption} ${columns.map(({ title }) => title).join(' ')}`);

/** Each paper lists the defaults of its own matter. */
const OF_ONE_PAPER = 'Taken because the job does not state it';

describe.each(['metric', 'inch'] as const)('paper and terminal in %s units', (units) => {
  const told = words(terminal(units));
  const shared = tablesOf(units).filter(
    (table) => table.caption !== OF_ONE_PAPER && told.includes(headOf(table)),
  );

  it('share tables of plan, supply and cost', () => {
    const captions = shared.map(({ caption }) => caption);
    for (const caption of [
      'Passes in the order of the work',
      'Power sources at the setting',
      'Leads at the setting',
      'What a larger groove than planned adds in grinding and refill',
    ])
      expect(captions, caption).toContain(caption);
    expect(shared.length).toBeGreaterThanOrEqual(9);
  });

  it.each(shared.map((table) => [table.caption, table] as const))('say the same in “%s”', (_, table) => {
    expect(told).toContain(words(blocksToText([table])).trim());
  });
});

it('carries amounts of its own units only', () => {
  const [metric, inch] = [tablesOf('metric'), tablesOf('inch')];
  expect(inch.map(({ rows }) => rows.length)).toEqual(metric.map(({ rows }) => rows.length));
  const cells = (tables: readonly Table[]): string =>
    JSON.stringify(tables.filter(({ caption }) => caption !== OF_ONE_PAPER).map(({ rows }) => rows));
  expect(cells(inch)).toMatch(/\d psi/u);
  expect(cells(metric)).toMatch(/\d bar/u);
  expect(cells(metric)).not.toMatch(/\d psi/u);
});
