import { answerCost, type CostReport, jobFields, sentenceText, type UnitSystem } from '@furrow/engine';
import {
  assumptionTable,
  costDefaults,
  defaultsTable,
  extraTable,
  itemTable,
  type PaperBlock,
  type PaperDocument,
} from '../blocks/index.ts';
import { costDrawing } from '../drawing/index.ts';
import { byLength, jobWords, moneyRange, NEVER_IN_COST, perLength, workTime } from '../words/index.ts';
import { framedPaper } from './paper-frame.ts';
import type { PaperOptions, PaperSubject } from './paper-subject.ts';

/** Makes the quote: a range of money and what it rests on, with the offer itself left to be written by hand. */
export function quoteDocument(subject: PaperSubject, options: PaperOptions): PaperDocument {
  const { read, answer, heat } = subject;
  const { job } = read;
  const { units } = options;
  const cost = answerCost(read, answer, heat === undefined ? {} : { heat });
  return framedPaper(subject, options, {
    above: cost.kind === 'no_plan' ? 'Quote: nothing to quote' : 'Quote · estimate for gouging and refill',
    below: [job.groove.purpose, jobWords(job, units)],
    one_page: false,
    roles:
      cost.kind === 'no_plan' ? ['Read by'] : ['Prepared by', 'Approved by', 'Accepted for the customer'],
    blocks: [
      ...(cost.kind === 'no_plan'
        ? [{ kind: 'paragraph', tone: 'plain', text: sentenceText(cost.says, units) } as const]
        : [
            ...offerBlocks(cost, units),
            ...workBlocks(cost, units),
            ...defaultsTable(
              'Taken because the job does not state it',
              costDefaults(answer.inputs),
              jobFields(),
            ),
          ]),
    ],
  });
}

function offerBlocks(cost: CostReport, units: UnitSystem): PaperBlock[] {
  const { currency, cost_per_m, time_s } = cost;
  return [
    {
      kind: 'fields',
      across: 3,
      items: [
        { label: 'Customer' },
        { label: 'Quote number' },
        { label: 'Date' },
        { label: 'Price offered' },
        { label: 'Valid until' },
        { label: 'Terms' },
      ],
    },
    {
      kind: 'figures',
      size: 'big',
      items: [
        {
          label: 'Estimated cost',
          value: moneyRange(cost.cost.p50, cost.cost.p90, currency),
          note: 'even chance of no more, to nine in ten of no more',
        },
        {
          label: byLength(units),
          value: moneyRange(perLength(cost_per_m.p50, units), perLength(cost_per_m.p90, units), currency),
        },
        {
          label: 'Working time',
          value: `${workTime(time_s.p50)} to ${workTime(time_s.p90)}`,
          note: 'one step after the other',
        },
      ],
    },
    {
      kind: 'paragraph',
      tone: 'plain',
      text:
        'The range is an estimate, not an offer. It was drawn ' +
        `${cost.trials} times with the rates and the spreads that the job states or that stand in for them below; ` +
        'the work can cost more or less than either figure. The price offered and how long it stands are written by hand.',
    },
  ];
}

function workBlocks(cost: CostReport, units: UnitSystem): PaperBlock[] {
  return [
    { kind: 'heading', level: 2, text: 'What is in it' },
    { kind: 'drawing', drawing: costDrawing({ cost, width: 540 }) },
    itemTable(cost, units),
    { kind: 'heading', level: 2, text: 'What is not in it' },
    { kind: 'list', tone: 'plain', items: [...leftOut(cost), ...NEVER_IN_COST] },
    extraTable(cost, units),
    assumptionTable(cost),
    { kind: 'heading', level: 2, text: 'Cautions' },
    { kind: 'list', tone: 'caution', items: cost.cautions },
  ];
}

/** Steps and things that could cost, but count nothing here. */
function leftOut({ steps, items }: CostReport): string[] {
  const work = steps
    .filter((step) => step.time_s.mean === 0 && step.step !== 'rework')
    .map((step) => `${step.title.toLowerCase()}: no time is stated or needed`);
  const things = items
    .filter((item) => item.cost.mean === 0 && item.part !== 'hire')
    .map((item) => `${item.title.toLowerCase()}: no price is stated`);
  return [...work, ...things];
}
