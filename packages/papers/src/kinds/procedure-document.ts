import { jobFields, type Plan, planTables } from '@furrow/engine';
import {
  defaultsTable,
  expectationFigures,
  gaugeTable,
  grooveTable,
  heatBlocks,
  limitTable,
  type PaperBlock,
  type PaperDocument,
  passTable,
  plateTable,
  refusalBlocks,
  rigFigures,
  settingFigures,
  supplyBlocks,
  sureList,
  torchDrawingOf,
  turningBlocks,
} from '../blocks/index.ts';
import { seamStripDrawing, sectionDrawing } from '../drawing/index.ts';
import {
  adviceWords,
  doubtWords,
  gaugePlaces,
  jobWords,
  knowledgeWords,
  sentenceOf,
  tryoutText,
} from '../words/index.ts';
import { framedPaper, shownRevision } from './paper-frame.ts';
import type { PaperOptions, PaperSubject } from './paper-subject.ts';

/** Parts of the job that bear on the procedure; what costs and hazards assume stands on their own papers. */
const PARTS = /^(?:seam|plate|groove|kit|plan|locks|heat|reweld)\b/u;

/** Makes the procedure sheet: everything that a welding engineer signs for. */
export function procedureDocument(subject: PaperSubject, options: PaperOptions): PaperDocument {
  const { read, answer } = subject;
  const { job } = read;
  const { units } = options;
  const { plan, supply, inputs } = answer;
  return framedPaper(subject, options, {
    above:
      plan === undefined ? 'Procedure sheet: nothing to run' : 'Procedure sheet · air carbon-arc gouging',
    below: [job.groove.purpose, jobWords(job, units)],
    fitted: false,
    roles: plan === undefined ? ['Read by'] : ['Prepared by', 'Checked by', 'Released by'],
    blocks: [
      ...(job.note === undefined ? [] : [{ kind: 'paragraph', tone: 'plain', text: job.note } as const]),
      {
        kind: 'fields',
        across: 4,
        items: [
          { label: 'Procedure number' },
          { label: 'Date' },
          {
            label: 'Job revision',
            value: `${options.revision_number === undefined ? '' : `${options.revision_number} · `}${shownRevision(inputs.revision)}`,
          },
          {
            label: 'Kit',
            value:
              supply === undefined
                ? 'none: limits of supply not known'
                : `${supply.kit.title} · ${shownRevision(supply.kit.revision)}`,
          },
        ],
      },
      {
        kind: 'columns',
        columns: [
          { weight: 1, blocks: [plateTable(job, units)] },
          { weight: 1, blocks: [grooveTable(job, units)] },
        ],
      },
      ...(plan === undefined ? refusalBlocks(read, answer, units) : planBlocks(subject, plan, options)),
      ...(supply === undefined ? [] : supplyBlocks(supply, units)),
      ...heatBlocks(job, subject.heat, units),
      ...(plan === undefined
        ? []
        : [
            limitTable('Limits, with where each comes from', plan.limits, units),
            { kind: 'heading', level: 2, text: 'Cautions' } as const,
            {
              kind: 'list',
              tone: 'caution',
              items: [...answer.cautions, ...(supply?.cautions ?? [])],
            } as const,
          ]),
      { kind: 'heading', level: 2, text: 'On this metal' },
      { kind: 'list', tone: 'plain', items: answer.advice.map(adviceWords) },
      ...defaultsTable(
        'Taken because the job does not state it',
        inputs.defaults_used.filter(({ path }) => PARTS.test(path)),
        jobFields(),
        options.units,
      ),
    ],
  });
}

function planBlocks({ read, answer }: PaperSubject, plan: Plan, { units }: PaperOptions): PaperBlock[] {
  const { job } = read;
  const lanes = plan.passes.length + plan.gauge_stops.length;
  return [
    { kind: 'heading', level: 2, text: 'Setting' },
    { kind: 'figures', size: 'plain', items: settingFigures(plan, units) },
    { kind: 'figures', size: 'plain', items: rigFigures(read, answer, plan, units) },
    ...turningBlocks(read, answer, plan, units),
    { kind: 'drawing', drawing: torchDrawingOf(read, answer, plan, units, { width: 400, height: 190 }) },
    passTable(plan, units),
    ...planTables(plan).flatMap((stop): PaperBlock[] => [
      {
        kind: 'heading',
        level: 2,
        text: stop.after_layer === 0 ? 'First cut' : `Stop after layer ${stop.after_layer}`,
      },
      ...(stop.after_layer === 0
        ? [{ kind: 'paragraph', tone: 'plain', text: tryoutText(plan, units)! } satisfies PaperBlock]
        : []),
      { kind: 'paragraph', tone: 'plain', text: gaugePlaces(stop, units) },
      gaugeTable(stop, units),
    ]),
    { kind: 'heading', level: 2, text: 'What to expect' },
    { kind: 'figures', size: 'plain', items: expectationFigures(plan, units) },
    {
      kind: 'columns',
      columns: [
        {
          weight: 1.3,
          blocks: [
            {
              kind: 'drawing',
              drawing: sectionDrawing({
                groove: job.groove,
                plate: job.plate,
                plan,
                units,
                width: 290,
                height: 160,
              }),
            },
          ],
        },
        {
          weight: 1,
          blocks: [
            { kind: 'heading', level: 2, text: 'How sure' },
            sureList(plan.assurance),
            {
              kind: 'paragraph',
              tone: 'small',
              text: `${doubtWords(plan)} ${sentenceOf(knowledgeWords(answer))}`,
            },
          ],
        },
      ],
    },
    {
      kind: 'drawing',
      drawing: seamStripDrawing({ job, plan, units, width: 531, height: Math.min(620, 46 + 15 * lanes) }),
    },
  ];
}
