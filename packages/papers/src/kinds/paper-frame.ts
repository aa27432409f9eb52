import type { PaperBlock, PaperCode, PaperDocument } from '../blocks/index.ts';
import { shortKnowledgeWords } from '../words/index.ts';
import type { PaperOptions, PaperSubject } from './paper-subject.ts';

/** Characters of a revision that a paper shows. */
const REVISION_SHOWN = 12;

/** A kind of paper around its own blocks. */
export interface PaperFrame {
  /** What kind of paper it is, in a few words above the title. */
  readonly above: string;
  /** Lines under the title. */
  readonly below?: readonly string[];
  readonly fitted: boolean;
  readonly blocks: readonly PaperBlock[];
  /** Who signs by hand. */
  readonly roles: readonly string[];
  /** Whether it is for a customer, whom it does not concern what the shop plans with. */
  readonly goesOut?: boolean;
}

/** Sets a paper's blocks under its title and above its signatures, and names what it was made from. */
export function framedPaper(
  subject: Pick<PaperSubject, 'read' | 'answer'>,
  options: PaperOptions,
  frame: PaperFrame,
): PaperDocument {
  const { inputs } = subject.answer;
  const { job } = subject.read;
  return {
    title: job.title,
    language: 'en',
    revision: inputs.revision,
    program_version: inputs.program_version,
    units: options.units,
    paper: options.paper,
    fitted: frame.fitted,
    colophon: colophon(subject, options, frame.goesOut === true),
    blocks: [
      {
        kind: 'heading',
        level: 1,
        above: frame.above,
        text: job.title,
        ...(frame.below !== undefined && { below: frame.below }),
        code: codeOf(inputs.revision, options.address),
      },
      ...frame.blocks,
      ...(frame.roles.length === 0 ? [] : [{ kind: 'signatures', roles: frame.roles } as const]),
      {
        kind: 'paragraph',
        tone: 'small',
        text: 'Sign by hand; the software never signs. Local codes and licensed practice govern, and the people who hold them decide.',
      },
    ],
  };
}

/** A revision as papers show it. */
export function shownRevision(revision: string): string {
  return revision.slice(0, REVISION_SHOWN);
}

/** What a paper was made from, for the foot of each page. */
function colophon(
  { answer: { inputs } }: Pick<PaperSubject, 'answer'>,
  options: PaperOptions,
  goesOut: boolean,
): string {
  const number = options.revision_number === undefined ? '' : `${options.revision_number}, `;
  const kit = inputs.kit_revision === undefined ? [] : [`kit revision ${shownRevision(inputs.kit_revision)}`];
  const job = `job revision ${number}${shownRevision(inputs.revision)}`;
  const program = `Furrow ${inputs.program_version}`;
  if (goesOut) return [job, program, ...releaseWords(options)].join(' · ');
  return [
    job,
    ...kit,
    program,
    `seed ${inputs.seed}`,
    shortKnowledgeWords({ inputs }),
    ...releaseWords(options),
  ].join(' · ');
}

/** Which account released a paper: who answers for handing it out, not a signature. */
function releaseWords({ released }: PaperOptions): readonly string[] {
  if (released === undefined) return [];
  if (released === null) return ['not released'];
  const by = released.by === null ? '' : ` by ${released.by}`;
  return [`released${by} on ${released.at.slice(0, 16).replace('T', ' ')} UTC`];
}

function codeOf(revision: string, address: string | undefined): PaperCode {
  return address === undefined
    ? { content: `furrow:revision:${revision}`, words: 'Revision of the job' }
    : { content: address, words: 'Address of the job' };
}
