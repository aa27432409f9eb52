import { answerCost, type CostReport, jobFields, sentenceText, type UnitSystem } from '@furrow/engine';
import {
  assumptionTable,
  costDefaults,
  defaultsTable,
  extraTable,
  itemTable,
  type PaperBlock,
  type PaperDocument,
  refillText,
  totalTable,
  wayNotes,
  wayTable,
} from '../blocks/index.ts';
import { costDrawing } from '../drawing/index.ts';
import { jobWords, NEVER_IN_COST, unpricedText } from '../words/index.ts';
import { framedPaper } from './paper-frame.ts';
import type { PaperOptions, PaperSubject } from './paper-subject.ts';

/** Makes the estimate sheet, for the shop alone: where time and money go, and what the figures of the quote rest on. */
export function estimateDocument(subject: PaperSubject, options: PaperOptions): PaperDocument {
  const { read, answer, heat } = subject;
  const { units } = options;
  const cost = answerCost(read, answer, heat === undefined ? {} : { heat });
  return framedPaper(subject, options, {
    above: 'Estimate · for the shop, not for the customer',
    below: [read.job.groove.purpose, jobWords(read.job, units)],
    fitted: false,
    roles: [],
    blocks:
      cost.kind === 'no_plan'
        ? [{ kind: 'paragraph', tone: 'plain', text: sentenceText(cost.says, units) }]
        : [
            ...workBlocks(cost, units),
            ...defaultsTable(
              'Taken because the job does not state it',
              costDefaults(answer.inputs),
              jobFields(),
              units,
            ),
          ],
  });
}

function workBlocks(cost: CostReport, units: UnitSystem): PaperBlock[] {
  const unpriced = unpricedText(cost);
  return [
    totalTable(cost, units),
    {
      kind: 'paragraph',
      tone: 'plain',
      text:
        `Drawn ${cost.trials} times with the rates and the spreads that the job states or that stand in for them below.` +
        (unpriced === undefined ? '' : ` ${unpriced}`),
    },
    { kind: 'drawing', drawing: costDrawing({ cost, width: 540 }) },
    ...itemTable(cost, units),
    { kind: 'heading', level: 2, text: 'Refill' },
    { kind: 'paragraph', tone: 'plain', text: refillText(cost, units) },
    extraTable(cost, units),
    wayTable(cost, units),
    wayNotes(cost),
    assumptionTable(cost, units),
    { kind: 'heading', level: 2, text: 'What is not in it' },
    { kind: 'list', tone: 'plain', items: [...leftOut(cost), ...NEVER_IN_COST] },
    { kind: 'heading', level: 2, text: 'Cautions' },
    { kind: 'list', tone: 'caution', items: cost.cautions },
  ];
}

/** Steps and things that could cost, but count nothing here. */
function leftOut({ steps, items, unpriced, priced }: CostReport): string[] {
  const work = steps
    .filter((step) => step.time_s.mean === 0 && step.step !== 'rework')
    .map((step) => `${step.title.toLowerCase()}: no time is stated or needed`);
  const things = priced ? items.filter(({ part }) => unpriced.includes(part)) : [];
  return [...work, ...things.map((item) => `${item.title.toLowerCase()}: no price is stated`)];
}
