import {
  type AnswerInputs,
  type CostAnswer,
  type CostChangeReport,
  type CostReport,
  formatAmount,
  jobFields,
  type ReadJob,
  sentenceText,
  type UnitSystem,
} from '@furrow/engine';
import {
  assumptionTable,
  changeTable,
  costDefaults,
  defaultsTable,
  extraTable,
  itemTable,
  type PaperBlock,
  refillText,
  stepTable,
  totalTable,
  wayNotes,
  wayTable,
} from '../blocks/index.ts';
import { money, NEVER_IN_COST, sharePercent, unpricedText, workTime } from '../words/index.ts';
import { blocksToText } from './block-to-text.ts';
import { GOVERNED, heading, paragraph, titled } from './told.ts';

/** Writes time and money of a job for the terminal, and what changes of it would do. */
export function renderCostText(
  cost: CostAnswer,
  changes: readonly CostChangeReport[],
  { read, inputs }: { readonly read: ReadJob; readonly inputs: AnswerInputs },
  units: UnitSystem,
): string {
  return blocksToText([
    { kind: 'heading', level: 1, text: read.job.title },
    ...(cost.kind === 'no_plan'
      ? [paragraph(sentenceText(cost.says, units))]
      : [
          ...reportBlocks(cost, changes, units),
          ...defaultsTable(
            'Taken because the job does not state it',
            costDefaults(inputs),
            jobFields(),
            units,
          ),
          ...titled('What is not in it', 'plain', NEVER_IN_COST),
          { kind: 'list', tone: 'caution', items: cost.cautions } as const,
        ]),
    paragraph(GOVERNED),
  ]);
}

function reportBlocks(
  cost: CostReport,
  changes: readonly CostChangeReport[],
  units: UnitSystem,
): PaperBlock[] {
  const unpriced = unpricedText(cost);
  return [
    totalTable(cost, units),
    ...(unpriced === undefined ? [] : [paragraph(unpriced)]),
    paragraph(trialText(cost, units)),
    stepTable(cost),
    ...itemTable(cost, units),
    heading('Refill'),
    paragraph(refillText(cost, units)),
    extraTable(cost, units),
    wayTable(cost, units),
    wayNotes(cost),
    ...(changes.length === 0
      ? []
      : [
          changeTable(changes, cost, units),
          {
            kind: 'list',
            tone: 'plain',
            items: changes.map(({ title, says }) => `${title}: ${sentenceText(says, units)}.`),
          } as const,
        ]),
    assumptionTable(cost, units),
  ];
}

/** How the figures were drawn, and how far they can be off by that alone. */
function trialText(
  { time_s, cost, currency, seam_length_m, trials, seed, reworked, priced }: CostReport,
  units: UnitSystem,
): string {
  const off = (time: number, amount: number): string =>
    priced ? `${workTime(time)} and ${money(amount, currency)}` : workTime(time);
  return (
    `${formatAmount(seam_length_m, 'length', units)} of seam; ${trials} trials, seed ${seed}. By the number of trials alone ` +
    `the first column can be off by ${off(time_s.p50_half_width, cost.p50_half_width)}, ` +
    `the second by ${off(time_s.p90_half_width, cost.p90_half_width)} (95 %). ` +
    `In ${sharePercent(reworked)} of the trials the depth was not reached at first.`
  );
}
