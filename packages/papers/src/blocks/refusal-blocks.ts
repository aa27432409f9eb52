import { type Answer, type ReadJob, sentenceText, type UnitSystem } from '@furrow/engine';
import { sectionDrawing } from '../drawing/index.ts';
import { bindingAmounts, constraintTitle } from '../words/index.ts';
import type { PaperBlock } from './paper-document.ts';

/** What a card says where there is no plan: why, and the least change that would free it. */
export function refusalBlocks({ job }: ReadJob, answer: Answer, units: UnitSystem): PaperBlock[] {
  return [
    { kind: 'heading', level: 2, text: 'Nothing to run' },
    ...refusalReasons(answer, units),
    {
      kind: 'drawing',
      drawing: sectionDrawing({ groove: job.groove, plate: job.plate, units, width: 540, height: 230 }),
    },
    ...(answer.cautions.length === 0
      ? []
      : [
          { kind: 'heading', level: 2, text: 'Cautions' } as const,
          { kind: 'list', tone: 'caution', items: answer.cautions } as const,
        ]),
    {
      kind: 'paragraph',
      tone: 'plain',
      text: 'This paper carries no setting. Change the job as shown above and plan it again before anything is run.',
    },
  ];
}

/** Why there is no plan, and the least change that would free each thing in the way. */
export function refusalReasons({ refusal }: Answer, units: UnitSystem): PaperBlock[] {
  return [
    {
      kind: 'paragraph',
      tone: 'lead',
      text: sentenceText(refusal?.summary ?? 'No set-up was found for this job.', units),
    },
    {
      kind: 'table',
      caption: 'What stands in the way, and the least change that would free it',
      columns: [
        { title: 'In the way', align: 'start', weight: 1.3, strong: true },
        { title: 'There is', align: 'end', weight: 0.9 },
        { title: 'Would do', align: 'end', weight: 0.9 },
        { title: 'What would free it', align: 'start', weight: 2.6, strong: true },
      ],
      rows: (refusal?.binding ?? []).map((entry) => {
        const { asked, there } = bindingAmounts(entry, units);
        const remedy = sentenceText(entry.remedy, units);
        return [
          constraintTitle(entry.constraint),
          there,
          asked,
          entry.frees ? remedy : `${remedy} (helps, not enough alone)`,
        ];
      }),
    },
  ];
}
