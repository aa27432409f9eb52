import {
  type Answer,
  jobFields,
  type Plan,
  planTables,
  type ReadJob,
  sentenceText,
  type UnitSystem,
} from '@furrow/engine';
import {
  choiceTable,
  expectationFigures,
  gaugeTable,
  limitTable,
  type PaperBlock,
  passesNote,
  passTable,
  refusalReasons,
  remedyList,
  rigFigures,
  settingFigures,
  stationTable,
  sureList,
} from '../blocks/index.ts';
import {
  adviceWords,
  defaultText,
  defaultTitle,
  doubtWords,
  gaugePlaces,
  jobWords,
  knowledgeWords,
  tryoutText,
  wayWords,
} from '../words/index.ts';
import { blocksToText } from './block-to-text.ts';
import { GOVERNED, heading, paragraph, titled } from './told.ts';

/** Writes a result for the terminal: the plan or the refusal, and what it rests on. */
export function renderText(answer: Answer, read: ReadJob, units: UnitSystem): string {
  const { job } = read;
  const { inputs } = answer;
  return blocksToText([
    { kind: 'heading', level: 1, text: job.title, below: [job.groove.purpose, jobWords(job, units)] },
    ...(answer.plan === undefined
      ? [heading('NO PLAN: nothing to run'), ...refusalReasons(answer, units)]
      : planBlocks(read, answer, answer.plan, units)),
    ...(answer.supply === undefined ? [] : [paragraph(sentenceText(answer.supply.time.says, units))]),
    ...(answer.alternatives.length === 0 ? [] : [choiceTable(answer.alternatives, units)]),
    ...titled('For this metal', 'plain', answer.advice.map(adviceWords)),
    ...titled('Cautions', 'caution', answer.cautions),
    ...titled(
      'Defaults used',
      'plain',
      inputs.defaults_used.map(
        (each) =>
          `${defaultTitle(each.path, jobFields(), units)} (${each.path}): ${defaultText(each, jobFields(), units)}, ${each.why}`,
      ),
    ),
    paragraph(`${knowledgeWords(answer).replace(/^./u, (first) => first.toUpperCase())}.`),
    paragraph(
      `Furrow ${inputs.program_version}, job revision ${inputs.revision.slice(0, 12)}, seed ${inputs.seed}, ` +
        `removal law ${inputs.posterior_id}. ${GOVERNED}`,
    ),
  ]);
}

function planBlocks(read: ReadJob, answer: Answer, plan: Plan, units: UnitSystem): PaperBlock[] {
  return [
    paragraph(`PLAN: ${passesNote(plan)}, ${wayWords(plan)}`),
    {
      kind: 'figures',
      size: 'plain',
      items: [
        ...settingFigures(plan, units),
        ...rigFigures(read, answer, plan, units),
        ...expectationFigures(plan, units),
      ],
    },
    passTable(plan, units),
    ...planTables(plan).flatMap((stop): PaperBlock[] => [
      ...(stop.after_layer === 0 ? [paragraph(tryoutText(plan, units)!)] : []),
      gaugeTable(stop, units),
      paragraph(gaugePlaces(stop, units)),
      ...(stop.stations_choice.length === 0 ? [] : [stationTable(stop)]),
    ]),
    heading('How sure'),
    sureList(plan.assurance),
    paragraph(doubtWords(plan)),
    limitTable('Margins', plan.limits, units),
    remedyList(plan.limits, units),
  ];
}
