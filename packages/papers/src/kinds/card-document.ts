import {
  type Answer,
  type GaugeStop,
  type Plan,
  planTables,
  type ReadJob,
  type UnitSystem,
} from '@furrow/engine';
import {
  expectationFigures,
  gaugeTable,
  type PaperBlock,
  type PaperDocument,
  passTable,
  refusalBlocks,
  rigFigures,
  settingFigures,
  sureList,
  torchDrawingOf,
} from '../blocks/index.ts';
import { seamStripDrawing, sectionDrawing } from '../drawing/index.ts';
import { gaugePlaces, jobWords, knowledgeWords, limitWords, sentenceOf, tryoutText } from '../words/index.ts';
import { framedPaper } from './paper-frame.ts';
import type { PaperOptions } from './paper-subject.ts';

/** Makes the set-up card of a result, what is set on its front; for a refusal, a card that gives no numbers to run. */
export function cardDocument(read: ReadJob, answer: Answer, options: PaperOptions): PaperDocument {
  const { job } = read;
  const { plan } = answer;
  const body =
    plan === undefined
      ? [
          ...refusalBlocks(read, answer, options.units),
          { kind: 'paragraph', tone: 'small', text: sentenceOf(knowledgeWords(answer)) } as const,
        ]
      : planBlocks(read, answer, plan, options);
  return framedPaper({ read, answer }, options, {
    above: plan === undefined ? 'No set-up' : 'Set-up card · air carbon-arc gouging',
    fitted: true,
    roles: plan === undefined ? ['Read by'] : ['Prepared by', 'Checked by', 'Released by'],
    below: [job.groove.purpose, jobWords(job, options.units)],
    blocks: body,
  });
}

function planBlocks(read: ReadJob, answer: Answer, plan: Plan, { units }: PaperOptions): PaperBlock[] {
  const { job } = read;
  const section = sectionDrawing({
    groove: job.groove,
    plate: job.plate,
    plan,
    units,
    width: 265,
    height: 170,
  });
  const torch = torchDrawingOf(read, answer, plan, units, { width: 258, height: 128 });
  const lanes = plan.passes.length + plan.gauge_stops.length;
  const strip = seamStripDrawing({ job, plan, units, width: 531, height: Math.min(620, 40 + 15 * lanes) });
  const failing = plan.limits.filter(({ verdict }) => verdict === 'fails');
  const tight = plan.limits.filter(({ id, verdict }) => verdict === 'tight' && !SET_ON_THE_CARD.test(id));
  return [
    ...titled(
      'Advice not kept: look at it before the first arc',
      'caution',
      failing.map((limit) => limitWords(limit, units)),
    ),
    { kind: 'figures', size: 'big', items: settingFigures(plan, units) },
    { kind: 'figures', size: 'big', items: rigFigures(read, answer, plan, units) },
    passTable(plan, units),
    ...gaugeBlocks(plan, units),
    {
      kind: 'columns',
      columns: [
        { weight: 1, blocks: [{ kind: 'drawing', drawing: section }] },
        {
          weight: 1,
          blocks: [
            { kind: 'drawing', drawing: torch },
            { kind: 'heading', level: 2, text: 'How sure' },
            sureList(plan.assurance),
          ],
        },
      ],
    },
    { kind: 'drawing', drawing: strip },
    { kind: 'figures', size: 'plain', items: expectationFigures(plan, units) },
    ...titled(
      'Little to spare',
      'plain',
      tight.map((limit) => limitWords(limit, units)),
    ),
    ...cautionBlocks(answer.cautions),
  ];
}

/** Limits of what is set by the card itself: that they are near tells the crew nothing. */
const SET_ON_THE_CARD = /^(?:electrode_current|source_current|travel|arc_voltage|shade_table)/u;

/** The cautions in two columns, so that the rest can be set larger. */
function cautionBlocks(cautions: readonly string[]): PaperBlock[] {
  const half = Math.ceil(cautions.length / 2);
  const column = (items: readonly string[]) => ({
    weight: 1,
    blocks: [{ kind: 'list', tone: 'caution', items } as const],
  });
  return cautions.length === 0
    ? []
    : [
        { kind: 'heading', level: 2, text: 'Cautions' },
        { kind: 'columns', columns: [column(cautions.slice(0, half)), column(cautions.slice(half))] },
      ];
}

/** A list under its heading; nothing where it is empty. */
function titled(text: string, tone: 'plain' | 'caution', items: readonly string[]): PaperBlock[] {
  return items.length === 0
    ? []
    : [
        { kind: 'heading', level: 2, text },
        { kind: 'list', tone, items },
      ];
}

/** What to cut before the table after it can be read. */
function firstCut(stop: GaugeStop, plan: Plan, units: UnitSystem): PaperBlock[] {
  const text = stop.after_layer === 0 ? tryoutText(plan, units) : undefined;
  return text === undefined ? [] : [{ kind: 'paragraph', tone: 'plain', text }];
}

/** The tables of the gauge stops: one over the whole width, several in pairs. */
function gaugeBlocks(plan: Plan, units: UnitSystem): PaperBlock[] {
  const stops = planTables(plan);
  const blocks = (stop: GaugeStop, form: 'whole' | 'narrow'): PaperBlock[] => [
    ...firstCut(stop, plan, units),
    { kind: 'paragraph', tone: 'plain', text: gaugePlaces(stop, units) },
    gaugeTable(stop, units, form),
  ];
  if (stops.length === 1) return blocks(stops[0]!, 'whole');
  const pairs = stops.flatMap((_stop, index) => (index % 2 === 0 ? [stops.slice(index, index + 2)] : []));
  return pairs.map((pair) => ({
    kind: 'columns',
    columns: pair.map((stop) => ({ weight: 1, blocks: blocks(stop, 'narrow') })),
  }));
}
