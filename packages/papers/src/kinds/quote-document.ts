import { answerCost, type CostReport, sentenceText, type UnitSystem } from '@furrow/engine';
import { grooveTable, type PaperBlock, type PaperDocument } from '../blocks/index.ts';
import {
  byLength,
  jobWords,
  moneyRange,
  NEVER_IN_COST,
  perLength,
  unpricedText,
  workTimeRange,
} from '../words/index.ts';
import { framedPaper } from './paper-frame.ts';
import type { PaperOptions, PaperSubject } from './paper-subject.ts';

/**
 * Makes the quote for a customer: what is made, a range of money and time, what is in it and what is not. The offer is left
 * to be written by hand; how the shop comes to the figures is on the estimate sheet.
 */
export function quoteDocument(subject: PaperSubject, options: PaperOptions): PaperDocument {
  const { read, answer, heat } = subject;
  const { job } = read;
  const { units } = options;
  const cost = answerCost(read, answer, heat === undefined ? {} : { heat });
  return framedPaper(subject, options, {
    above: cost.kind === 'no_plan' ? 'Quote: nothing to quote' : 'Quote · estimate for gouging and refill',
    below: [job.groove.purpose, jobWords(job, units)],
    fitted: false,
    goesOut: true,
    roles:
      cost.kind === 'no_plan' ? ['Read by'] : ['Prepared by', 'Approved by', 'Accepted for the customer'],
    blocks:
      cost.kind === 'no_plan'
        ? [{ kind: 'paragraph', tone: 'plain', text: sentenceText(cost.says, units) }]
        : [...offerBlocks(cost, units), grooveTable(job, units), ...scopeBlocks(cost)],
  });
}

function offerBlocks(cost: CostReport, units: UnitSystem): PaperBlock[] {
  const { currency, cost_per_m, time_s, priced } = cost;
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
        ...(priced
          ? [
              {
                label: 'Estimated cost',
                value: moneyRange(cost.cost.p50, cost.cost.p90, currency),
                note: 'even chance of no more, to nine in ten of no more',
              },
              {
                label: byLength(units),
                value: moneyRange(
                  perLength(cost_per_m.p50, units),
                  perLength(cost_per_m.p90, units),
                  currency,
                ),
              },
            ]
          : []),
        {
          label: 'Working time',
          value: workTimeRange(time_s.p50, time_s.p90),
          note: 'one step after the other',
        },
      ],
    },
    {
      kind: 'paragraph',
      tone: 'plain',
      text:
        unpricedText(cost) ??
        'The range is an estimate, not an offer: the work can cost more or less than either figure. The price offered and how long it stands are written by hand.',
    },
  ];
}

function scopeBlocks({ steps, unpriced, items, priced }: CostReport): PaperBlock[] {
  const taken = steps.filter(({ step, time_s }) => step !== 'rework' && time_s.mean > 0);
  const idle = steps.filter(({ step, time_s }) => step !== 'rework' && time_s.mean === 0);
  const lacking = priced ? items.filter(({ part }) => unpriced.includes(part)) : [];
  return [
    { kind: 'heading', level: 2, text: 'What is in it' },
    { kind: 'list', tone: 'plain', items: [inWords(taken)] },
    { kind: 'heading', level: 2, text: 'What is not in it' },
    {
      kind: 'list',
      tone: 'plain',
      items: [
        ...(idle.length === 0 ? [] : [inWords(idle)]),
        ...lacking.map(({ title }) => `${title.toLowerCase()}: no price is stated`),
        ...NEVER_IN_COST,
      ],
    },
  ];
}

/** Steps in one line, in the order of the work. */
function inWords(steps: CostReport['steps']): string {
  return steps.map(({ title }) => title.toLowerCase()).join(', ');
}
