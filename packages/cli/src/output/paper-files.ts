import { createHash } from 'node:crypto';
import {
  DRAWING_KINDS,
  makeDrawing,
  makePaper,
  PAPER_KINDS,
  type PaperOptions,
  type PaperSubject,
  paperTitle,
  paperWanting,
  renderPaperPdf,
  scaleDrawingToDxf,
  scaleDrawingToSvg,
  subjectFor,
} from '@furrow/papers';

/** One file of the papers, ready to be written. */
export interface PaperFile {
  readonly file: string;
  readonly title: string;
  /** Number of pages; null for a drawing [-]. */
  readonly pages: number | null;
  readonly bytes: Uint8Array;
  /** SHA-256 of its bytes, in hex. */
  readonly sha256: string;
}

/** The papers and drawings of a job, and which there are none of, with why. */
export interface PaperFiles {
  readonly files: readonly PaperFile[];
  readonly left_out: readonly { readonly paper: string; readonly why: string }[];
}

/** Makes every paper as a PDF, and every drawing as SVG and DXF. */
export async function paperFiles(whole: PaperSubject, options: PaperOptions): Promise<PaperFiles> {
  // one look at the heat serves all papers that tell of it
  const subject = subjectFor('procedure-sheet', whole);
  const files: PaperFile[] = [];
  const left: { paper: string; why: string }[] = [];
  for (const kind of PAPER_KINDS) {
    const why = paperWanting(kind, subject);
    if (why !== undefined) {
      left.push({ paper: kind, why });
      continue;
    }
    const { bytes, pages } = await renderPaperPdf(makePaper(kind, subjectFor(kind, subject), options));
    files.push(fileOf(`${kind}.pdf`, paperTitle(kind), pages, bytes));
  }
  for (const kind of DRAWING_KINDS) {
    const made = makeDrawing(kind, subject.read, subject.answer, options.units);
    if ('wanting' in made) {
      left.push({ paper: kind, why: made.wanting });
      continue;
    }
    const { drawing } = made;
    const text = (content: string): Uint8Array => new TextEncoder().encode(content);
    files.push(
      fileOf(`${kind}.svg`, drawing.title, null, text(scaleDrawingToSvg(drawing))),
      fileOf(`${kind}.dxf`, drawing.title, null, text(scaleDrawingToDxf(drawing))),
    );
  }
  return { files, left_out: left };
}

function fileOf(file: string, title: string, pages: number | null, bytes: Uint8Array): PaperFile {
  return { file, title, pages, bytes, sha256: createHash('sha256').update(bytes).digest('hex') };
}
