import {
  type Answer,
  type GaugeStop,
  type Limit,
  type Plan,
  planTables,
  type ReadJob,
  tryoutText,
  type UnitSystem,
} from '@furrow/engine';
import {
  expectationFigures,
  gaugeTable,
  type PaperBlock,
  type PaperDocument,
  passTable,
  refusalBlocks,
  settingFigures,
  sureList,
} from '../blocks/index.ts';
import { seamStripDrawing, sectionDrawing } from '../drawing/index.ts';
import {
  adviceWords,
  doubtWords,
  gaugePlaces,
  jobWords,
  knowledgeWords,
  limitWords,
  sourceWords,
} from '../words/index.ts';
import { framedPaper } from './paper-frame.ts';
import type { PaperOptions } from './paper-subject.ts';

/** Makes the one-page set-up card of a result; for a refusal, a card that gives no numbers to run. */
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
    one_page: true,
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
    width: 300,
    height: 170,
  });
  const lanes = plan.passes.length + plan.gauge_stops.length;
  const strip = seamStripDrawing({ job, plan, units, width: 540, height: Math.min(170, 46 + 15 * lanes) });
  const tight = plan.limits.filter((limit) => limit.verdict !== 'holds');
  return [
    { kind: 'figures', size: 'big', items: settingFigures(read, plan, units) },
    {
      kind: 'columns',
      columns: [
        {
          weight: 1.08,
          blocks: [
            passTable(plan, units),
            { kind: 'heading', level: 2, text: 'How sure' },
            sureList(plan.assurance),
          ],
        },
        { weight: 1, blocks: [{ kind: 'drawing', drawing: section }] },
      ],
    },
    ...gaugeBlocks(plan, units),
    { kind: 'drawing', drawing: strip },
    { kind: 'figures', size: 'plain', items: expectationFigures(plan, units) },
    {
      kind: 'columns',
      columns: [
        {
          weight: 0.75,
          blocks: [
            {
              kind: 'heading',
              level: 2,
              text: marginsTitle(tight),
            },
            { kind: 'list', tone: 'plain', items: tight.map((limit) => limitWords(limit, units)) },
          ],
        },
        {
          weight: 1.25,
          blocks: [
            { kind: 'heading', level: 2, text: 'Cautions' },
            { kind: 'list', tone: 'caution', items: answer.cautions },
          ],
        },
      ],
    },
    { kind: 'paragraph', tone: 'plain', text: answer.advice.map(adviceWords).join(' ') },
    {
      kind: 'paragraph',
      tone: 'small',
      text: `${doubtWords(plan)} ${sentenceOf(knowledgeWords(answer))} Limits rest on: ${sourceWords(plan.limits).join('; ')}.`,
    },
  ];
}

/** Words as a sentence of their own. */
function sentenceOf(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

/** A limit that is advice may fail and leave the plan standing: then the heading may not say less than the list. */
function marginsTitle(tight: readonly Limit[]): string {
  if (tight.length === 0) return 'Margins: every one holds';
  return tight.some(({ verdict }) => verdict === 'fails')
    ? 'Tight margins, and advice not kept'
    : 'Tight margins';
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
    gaugeTable(stop, units, form),
    { kind: 'paragraph', tone: 'plain', text: gaugePlaces(stop, units) },
  ];
  if (stops.length === 1) return blocks(stops[0]!, 'whole');
  const pairs = stops.flatMap((_stop, index) => (index % 2 === 0 ? [stops.slice(index, index + 2)] : []));
  return pairs.map((pair) => ({
    kind: 'columns',
    columns: pair.map((stop) => ({ weight: 1, blocks: blocks(stop, 'narrow') })),
  }));
}
