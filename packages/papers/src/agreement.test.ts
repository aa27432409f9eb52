import { readFileSync } from 'node:fs';
import {
  answerCost,
  answerHazard,
  answerHeat,
  answerJob,
  type HeatReport,
  readJob,
  readKit,
  readReadings,
  sentencesWritten,
  type UnitSystem,
  writtenAnswer,
} from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import type { PaperBlock } from './blocks/index.ts';
import { makePaper, PAPER_KINDS, type PaperKind } from './kinds/index.ts';
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

/** A demo job with all that is answered about it: worked out once, told in both systems of units. */
function worked(name: string) {
  const job = good(readJob(textOf(`${name}.yaml`)));
  const answer = answerJob({ job, kit, version: 'x' });
  const steps = answerHeat(job, answer, { quality: 'quick' });
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  const heat: HeatReport = step.value!.report;
  const hazard = answerHazard(job, answer, kit);
  const cost = answerCost(job, answer, { heat });
  const readings =
    name === 'penstock-seam' ? good(readReadings(textOf('readings/penstock-seam.yaml'))) : undefined;
  return { job, answer, heat, hazard, cost, readings };
}

type Worked = ReturnType<typeof worked>;

const JOBS = ['penstock-seam', 'casting-wash', 'defect-pocket'].map((name) => [name, worked(name)] as const);
const SYSTEMS = ['metric', 'inch'] as const;

/** Everything that the terminal says of a job, by the command that says it. */
function terminal({ job, answer, heat, hazard, cost }: Worked, units: UnitSystem): string {
  const { title } = job.job;
  const { inputs } = answer;
  return [
    renderText(answer, job, units),
    renderSupplyText(answer, title, units),
    renderHazardText(hazard, title, units),
    renderHeatText(heat, title, units),
    renderCostText(cost, [], { read: job, inputs }, units),
  ].join('\n');
}

function blocksOf({ job: read, answer, heat, readings }: Worked, kind: PaperKind, units: UnitSystem) {
  const subject = { read, answer, kit, heat, ...(readings !== undefined && { readings }) };
  return makePaper(kind, subject, { units, paper: 'a4' }).blocks;
}

type Table = Extract<PaperBlock, { readonly kind: 'table' }>;

function tablesOf(of: Worked, units: UnitSystem): Table[] {
  return PAPER_KINDS.flatMap((kind) => blocksOf(of, kind, units)).filter(
    (block): block is Table => block.kind === 'table',
  );
}

/** Text whatever the breadth of the columns it stands in. */
const words = (text: string): string => text.replaceAll(/[\s─]+/gu, ' ');

/** What stands at the head of a table. */
const headOf = ({ caption, columns }: Table): string =>
  words(`${caption} ${columns.map(({ title }) => title).join(' ')}`);

/** Each paper lists the defaults of its own matter. */
const OF_ONE_PAPER = 'Taken because the job does not state it';

/** Amounts of the one system and of the other; `90 in 100` is a chance, copper by its mm² keeps the name it is bought by. */
const FOREIGN = {
  inch: /\d\s?(?:mm|cm|m|bar|°C|kPa|kg|kg\/m³|L|mm\/min|m\/min|L\/min|m³|m3|kJ\/mm)(?![\w²/])/u,
  metric: /\d\s?(?:in(?! 10)|ft|psi|°F|lb|lb\/in³|scfm|cfm|gal|in\/min|in²|kJ\/in)(?![\w²/])/u,
};

/** Sizes that are read in both: an electrode `1/2 in (12.7 mm)`, a hose `19.1 mm (3/4 in)`. */
const IN_BOTH = /[\d /]+ in \([\d.]+ mm\)|[\d.]+ mm \([\d /]+ in\)/gu;

/** What stands as somebody wrote it: the texts of the files, sources, and why a default is what it is. */
const QUOTED = /\.(?:defaults_used\.|source(?:\.text)?$|why$|inputs\.)/u;

/** All texts of a result with where they stand. */
function textsIn(value: unknown, at = ''): [string, string][] {
  if (typeof value === 'string') return [[at, value]];
  if (value === null || typeof value !== 'object' || ArrayBuffer.isView(value)) return [];
  return Object.entries(value).flatMap(([key, each]) => textsIn(each, `${at}.${key}`));
}

/** Texts that hold an amount of the other system; names that the files give are no amounts. */
function foreign(
  { job, readings }: Worked,
  units: UnitSystem,
  texts: readonly (readonly [string, string])[],
) {
  const names = [
    job.job.title,
    ...(kit.kit.stock.leads ?? []).map((lead) => lead.name),
    ...textsIn(readings?.readings).map(([, text]) => text),
  ].filter((name) => name.length > 3);
  const unnamed = (text: string): string =>
    names
      .reduce((left, each) => left.replaceAll(each, ''), text.replaceAll('\u00a0', ' '))
      .replaceAll(IN_BOTH, '');
  return texts.filter(([at, text]) => !QUOTED.test(at) && FOREIGN[units].test(unnamed(text)));
}

describe.each(JOBS)('%s', (_name, of) => {
  describe.each(SYSTEMS)('in %s units', (units) => {
    it('says nothing in other units in its results', () => {
      const results = [
        writtenAnswer(of.answer, units),
        sentencesWritten([of.heat, of.hazard, of.cost], units),
      ];
      expect(foreign(of, units, textsIn(results))).toEqual([]);
    });

    it('says nothing in other units on the terminal', () => {
      const lines = terminal(of, units).split('\n');
      expect(lines.length).toBeGreaterThan(150);
      expect(
        foreign(
          of,
          units,
          lines.map((line) => ['', line]),
        ),
      ).toEqual([]);
    });

    it.each(PAPER_KINDS)('says nothing in other units on the %s', (kind) => {
      const texts = textsIn(blocksOf(of, kind, units));
      expect(texts.length).toBeGreaterThan(20);
      expect(foreign(of, units, texts)).toEqual([]);
    });

    const told = words(terminal(of, units));
    const shared = tablesOf(of, units).filter(
      (table) => table.caption !== OF_ONE_PAPER && told.includes(headOf(table)),
    );

    it('shares tables between paper and terminal', () => {
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

    it.each(shared.map((table) => [table.caption, table] as const))('says the same in “%s”', (_, table) => {
      expect(told).toContain(words(blocksToText([table])).trim());
    });
  });
});
