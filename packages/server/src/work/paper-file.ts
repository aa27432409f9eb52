import {
  DRAWING_KINDS,
  makeDrawing,
  makePaper,
  PAPER_KINDS,
  type PaperDocument,
  type PaperKind,
  type PaperOptions,
  type PaperSubject,
  paperTitle,
  paperWanting,
  renderPdf,
  scaleDrawingToDxf,
  scaleDrawingToSvg,
  subjectFor,
} from '@furrow/papers';
import { Refused } from '../guard/refused.ts';

/** What the papers of a job are made of, and how. */
export interface PaperSource {
  readonly subject: PaperSubject;
  /** Text of the trials that the answer was made with, where it was. */
  readonly trials?: string | undefined;
  /** Text of the gauge that the shop keeps, where it does. */
  readonly gauge?: string | undefined;
  readonly options: PaperOptions;
}

/** A file as it is sent. */
export interface SentFile {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** One file there can be of a job. */
export interface PossibleFile {
  readonly file: string;
  readonly title: string;
  /** Name of its page; null for a drawing. */
  readonly page: string | null;
  /** Why there is none; null where there is one. */
  readonly wanting: string | null;
}

const DRAWING_FORMATS = {
  svg: { type: 'image/svg+xml', write: scaleDrawingToSvg },
  dxf: { type: 'image/vnd.dxf', write: scaleDrawingToDxf },
} as const;

const DRAWING_TITLES = { section: 'Section', 'seam-strip': 'Seam strip', bay: 'Bay plan' } as const;

/** Every file there can be of a job, papers first. */
export function possibleFiles({ subject, options }: PaperSource): readonly PossibleFile[] {
  return [
    ...PAPER_KINDS.map((kind) => ({
      file: `${kind}.pdf`,
      title: paperTitle(kind),
      page: kind,
      wanting: paperWanting(kind, subject) ?? null,
    })),
    ...DRAWING_KINDS.flatMap((kind) => {
      const made = makeDrawing(kind, subject.read, subject.answer, options.units);
      return (['svg', 'dxf'] as const).map((format) => ({
        file: `${kind}.${format}`,
        title: `${DRAWING_TITLES[kind]} at full size, ${format.toUpperCase()}`,
        page: null,
        wanting: 'wanting' in made ? made.wanting : null,
      }));
    }),
  ];
}

/** Whether a name is that of a file there can be of a job. */
export function isPaperFile(name: string): boolean {
  const [stem = '', ending = '', ...more] = name.split('.');
  if (more.length > 0) return false;
  return ending === 'pdf'
    ? isPaperKind(stem)
    : Object.hasOwn(DRAWING_FORMATS, ending) && Object.hasOwn(DRAWING_TITLES, stem);
}

/** Makes the file of a name, or refuses it with why there is none. */
export async function paperFile(source: PaperSource, name: string): Promise<SentFile> {
  const [stem = '', ending = ''] = name.split('.');
  if (!isPaperFile(name)) throw noSuchFile(name);
  if (ending === 'pdf') {
    const bytes = await renderPdf(paperDocument(source, stem));
    return { name, type: 'application/pdf', bytes };
  }
  const { subject, options } = source;
  const kind = stem as keyof typeof DRAWING_TITLES;
  const made = makeDrawing(kind, subject.read, subject.answer, options.units);
  if ('wanting' in made) throw wanting(DRAWING_TITLES[kind], made.wanting);
  const { type, write } = DRAWING_FORMATS[ending as keyof typeof DRAWING_FORMATS];
  return { name, type, bytes: new TextEncoder().encode(write(made.drawing)) };
}

/** Makes the paper of a kind's name, or refuses it with why there is none. */
export function paperDocument({ subject, options }: PaperSource, kind: string): PaperDocument {
  if (!isPaperKind(kind)) throw noSuchFile(kind);
  const why = paperWanting(kind, subject);
  if (why !== undefined) throw wanting(paperTitle(kind), why);
  return makePaper(kind, subjectFor(kind, subject), options);
}

function isPaperKind(name: string): name is PaperKind {
  return (PAPER_KINDS as readonly string[]).includes(name);
}

function noSuchFile(name: string): Refused {
  const names = [...PAPER_KINDS.map((kind) => `${kind}.pdf`), 'section.svg', 'section.dxf'];
  return new Refused(
    'PATH_NOT_FOUND',
    `There is no paper “${name.slice(0, 60)}”; there are ${names.join(', ')} and the like for seam strip and bay.`,
  );
}

function wanting(title: string, why: string): Refused {
  return new Refused('PAPER_WANTING', `${title}: ${why}.`);
}
