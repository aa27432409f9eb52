import {
  type AnswerInputs,
  type CostAnswer,
  type CostChangeReport,
  type CostReport,
  jobFields,
  type ReadJob,
  sentenceText,
  type UnitSystem,
} from '@furrow/engine';
import {
  assumptionTable,
  changeNotes,
  changeTable,
  costDefaults,
  defaultsTable,
  extraTable,
  itemTable,
  type PaperBlock,
  refillText,
  stepTable,
  totalTable,
  trialText,
  wayNotes,
  wayTable,
} from '../blocks/index.ts';
import { NEVER_IN_COST, unpricedText } from '../words/index.ts';
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
    ...(changes.length === 0 ? [] : [changeTable(changes, cost, units), changeNotes(changes, units)]),
    assumptionTable(cost, units),
  ];
}
