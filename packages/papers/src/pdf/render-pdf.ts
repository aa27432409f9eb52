import PDFDocument from 'pdfkit';
import type { PaperDocument } from '../blocks/index.ts';
import { SOFT_INK } from '../style/index.ts';
import { BLOCK_GAP, blockBox } from './block-box.ts';
import type { Box, Paint } from './paint.ts';
import { paintLine } from './text-box.ts';
import { textLines } from './text-layout.ts';
import { typefacesOf } from './typefaces.ts';

/** Sheet sizes [pt]. */
const SHEETS = { a4: [595.28, 841.89], letter: [612, 792] } as const;
const MARGIN = 32;
const FOOT = 20;

/** Factors tried for a paper whose letters fill its pages, largest first; none is smaller than 1, as its smallest letters could no longer be read. */
const SCALES = Array.from({ length: 11 }, (_unused, index) => (120 - 2 * index) / 100);
/** Space between a heading and what it heads, where more is left over between blocks [pt]. */
const HEAD_GAP = BLOCK_GAP / 2;
/** Size of the letters at the foot [pt]. */
const FOOT_SIZE = 8;

/** A paper as a PDF file. */
export interface PaperPdf {
  readonly bytes: Uint8Array;
  /** Number of pages [-]. */
  readonly pages: number;
}

/** Sets a paper as a PDF with selectable, tagged text; the same paper gives the same bytes. */
export async function renderPdf(paper: PaperDocument): Promise<Uint8Array> {
  return (await renderPaperPdf(paper)).bytes;
}

/** The same, with the number of its pages. */
export async function renderPaperPdf(paper: PaperDocument): Promise<PaperPdf> {
  const [width, height] = SHEETS[paper.paper];
  const pdf = new PDFDocument({
    size: [width, height],
    margin: 0,
    autoFirstPage: false,
    bufferPages: true,
    tagged: true,
    pdfVersion: '1.7',
    lang: paper.language,
    displayTitle: true,
    info: {
      Title: paper.title,
      Creator: `Furrow ${paper.program_version}`,
      Producer: `Furrow ${paper.program_version}`,
      Keywords: `revision ${paper.revision}`,
      // the epoch stands for no date: a clock would make two files out of one result
      CreationDate: new Date(0),
    },
  });
  const bytes = collected(pdf);
  const faces = typefacesOf(pdf);
  const column = width - 2 * MARGIN;
  const room = height - 2 * MARGIN - FOOT;
  const dealt = fitted(paper, column, room, { pdf, faces, scale: 1 });
  const root = pdf.struct('Document', { title: paper.title, lang: paper.language });
  pdf.addStructure(root);
  for (const { boxes, gap } of dealt) {
    pdf.addPage();
    let top = MARGIN;
    for (const box of boxes) {
      box.paint(MARGIN, top, root);
      top += box.height + (box.heads === true ? Math.min(gap, HEAD_GAP) : gap);
    }
  }
  root.end();
  footers(paper, { pdf, faces, scale: 1 }, width, height);
  const pages = pdf.bufferedPageRange().count;
  pdf.end();
  return { bytes: await bytes, pages };
}

/** Deals the boxes out to pages; what can be cut goes on over the page, and headings stay with what follows. */
function paged(boxes: readonly Box[], gap: number, room: number): Box[][] {
  const pages: Box[][] = [[]];
  let used = 0;
  const turn = (): void => {
    pages.push([]);
    used = 0;
  };
  boxes.forEach((whole, index) => {
    let box = whole;
    if (whole.startsPage === true && used > 0) turn();
    for (;;) {
      const left = room - used + 0.01;
      if (box.height + following(box, boxes.slice(index + 1), gap) <= left) break;
      const cut = box.cut?.(left);
      if (cut === undefined && used === 0) break;
      if (cut !== undefined) pages.at(-1)!.push(cut.first);
      const company = cut === undefined && box.keepsWithBefore === true ? endOf(pages.at(-1)!) : undefined;
      turn();
      if (company !== undefined) {
        pages.at(-1)!.push(company);
        used = company.height + gap;
      }
      box = cut?.rest ?? box;
    }
    pages.at(-1)!.push(box);
    used += box.height + gap;
  });
  return pages;
}

/** Takes the end of a page off, for what follows to stand with; undefined where nothing would be left, or it belongs to what stands above. */
function endOf(page: Box[]): Box | undefined {
  if (page.length < 2 || page.at(-2)!.keepsWithNext === true) return undefined;
  return page.pop();
}

/** Room that has to be left under a heading for the beginning of what it heads, and for what that stays with in turn. */
function following(box: Box, [next, ...rest]: readonly Box[], gap: number): number {
  if (box.keepsWithNext !== true || next === undefined || next.startsPage === true) return 0;
  return gap + (next.least ?? next.height) + following(next, rest, gap);
}

function collected(pdf: PDFKit.PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    pdf.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    pdf.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    pdf.on('error', reject);
  });
}

/** The boxes of one page, and the gap between them [pt]. */
interface DealtPage {
  readonly boxes: readonly Box[];
  readonly gap: number;
}

/** Lays the blocks out at the largest factor that needs no page more, and cuts no table more, than the smallest does. */
function fitted(paper: PaperDocument, width: number, room: number, paint: Paint): readonly DealtPage[] {
  const at = (scale: number): Box[][] => {
    const boxes = paper.blocks.map((block) => blockBox(block, width, { ...paint, scale }));
    return paged(boxes, BLOCK_GAP * scale, room);
  };
  const dealt = (pages: readonly Box[][], scale: number): DealtPage[] =>
    pages.map((boxes) => ({ boxes, gap: scale * (paper.fitted ? gapOf(boxes, room, scale) : BLOCK_GAP) }));
  const least = at(1);
  if (!paper.fitted) return dealt(least, 1);
  // larger always needs more room, but for a line that breaks elsewhere: halving finds the largest that fits
  let fits = SCALES.length - 1;
  let best = least;
  for (let from = 0; from < fits; ) {
    const middle = Math.floor((from + fits) / 2);
    const tried = at(SCALES[middle]!);
    if (tried.length <= least.length && tried.flat().length <= least.flat().length) {
      fits = middle;
      best = tried;
    } else {
      from = middle + 1;
    }
  }
  return dealt(best, SCALES[fits]!);
}

/** What is left over of a page goes between its boxes, within reason [pt before the factor]. */
function gapOf(boxes: readonly Box[], room: number, scale: number): number {
  const height = boxes.reduce((sum, box) => sum + box.height, 0);
  const gaps = boxes.slice(0, -1).filter((box) => box.heads !== true).length;
  const spare = (room - height) / Math.max(1, gaps) / scale;
  return Math.min(2.2 * BLOCK_GAP, Math.max(BLOCK_GAP, spare));
}

function footers(paper: PaperDocument, paint: Paint, width: number, height: number): void {
  const { pdf, faces } = paint;
  const { count } = pdf.bufferedPageRange();
  for (let page = 0; page < count; page += 1) {
    pdf.switchToPage(page);
    pdf.markContent('Artifact', { type: 'Pagination' });
    const baseline = height - MARGIN + 4;
    const column = width - 2 * MARGIN;
    pdf.lineWidth(0.35).undash();
    pdf
      .moveTo(MARGIN, baseline - 11)
      .lineTo(width - MARGIN, baseline - 11)
      .stroke('#aeb8bf');
    const [right] = textLines(`page ${page + 1} of ${count}`, 'regular', FOOT_SIZE, column, faces);
    const rightWidth = right?.width ?? 0;
    const lines = textLines(paper.colophon, 'regular', FOOT_SIZE, column - rightWidth - 14, faces);
    lines.slice(0, 2).forEach((line, index) => {
      paintLine(line, MARGIN, baseline + 9.5 * index, FOOT_SIZE, SOFT_INK, pdf);
    });
    if (right !== undefined)
      paintLine(right, width - MARGIN - rightWidth, baseline, FOOT_SIZE, SOFT_INK, pdf);
    pdf.endMarkedContent();
  }
}
