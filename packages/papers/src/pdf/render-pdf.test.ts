import { describe, expect, test } from 'vitest';
import type { PaperSize } from '../blocks/index.ts';
import { cardDocument } from '../kinds/index.ts';
import { exampleJob, sampleAnswer, samplePlan } from '../sample-plan.test-data.ts';
import { pdfContent } from './pdf-text.test-data.ts';
import { renderPdf } from './render-pdf.ts';

const read = exampleJob('penstock-seam');
const plan = samplePlan(read, { tracks: 1, layers: 2, gauge: true });
const card = cardDocument(read, sampleAnswer(read, plan), { units: 'metric', paper: 'a4' });

describe('PDF of a card', () => {
  test('carries its text as text, with headings, tables and figures tagged', async () => {
    const { pages, text, tags } = pdfContent(await renderPdf(card));
    expect(pages).toBe(2);
    expect(text).toContain(read.job.title);
    expect(text).toContain('travel 640 mm/min');
    expect(text).toContain(`job revision ${read.revision.slice(0, 12)}`);
    expect(text).toContain('page 1 of 2');
    for (const tag of ['Document', 'H1', 'Table', 'TR', 'TH', 'TD', 'Figure', 'L', 'LI']) {
      expect(tags).toContain(tag);
    }
  });

  test('has the same bytes twice, and no date of today', async () => {
    const [first, second] = [await renderPdf(card), await renderPdf(card)];
    expect(Buffer.compare(first, second)).toBe(0);
    const raw = Buffer.from(first).toString('latin1');
    expect(raw.match(/D:\d{8}/g)).toEqual(['D:19700101']);
    expect(raw).toContain('/Lang (en)');
    expect(raw).toContain('/Marked true');
  });

  const crowd = samplePlan(read, { tracks: 10, layers: 4, gauge: true, uneven: true });
  const long = {
    ...read,
    job: {
      ...read.job,
      title: 'Ω'.repeat(120),
      groove: { ...read.job.groove, purpose: 'W'.repeat(200) },
    },
  };
  const cautions = Array.from({ length: 9 }, () =>
    'Keep the watch that the permit asks for, and more. '.repeat(2),
  );
  test.each([
    ['a4', 'metric'],
    ['a4', 'inch'],
    ['letter', 'metric'],
    ['letter', 'inch'],
  ] as const)(
    'sets forty passes and the longest texts on %s in %s in letters that can be read',
    async (paper, units) => {
      const crowded = cardDocument(long, sampleAnswer(long, crowd, cautions), {
        units,
        paper: paper as PaperSize,
      });
      const { smallest, text } = pdfContent(await renderPdf(crowded));
      expect(smallest).toBeGreaterThanOrEqual(7.99);
      expect(text).toContain('Keep the watch that the permit asks for');
    },
  );

  test('goes on to further pages', async () => {
    const long = { ...card, fitted: false, blocks: [...card.blocks, ...card.blocks] };
    const { pages, text } = pdfContent(await renderPdf(long));
    expect(pages).toBeGreaterThan(1);
    expect(text).toContain(`page ${pages} of ${pages}`);
  });

  test('leaves no page with the sentence under the signatures alone', async () => {
    const [sentence, signatures] = [card.blocks.at(-1)!, card.blocks.at(-2)!];
    expect([sentence.kind, signatures.kind]).toEqual(['paragraph', 'signatures']);
    const counts = new Set<number>();
    for (let lines = 34; lines <= 46; lines += 1) {
      const filling = Array.from(
        { length: lines },
        () => ({ kind: 'paragraph', tone: 'plain', text: 'Line.' }) as const,
      );
      const paper = { ...card, fitted: false, blocks: [...filling, signatures, sentence] };
      const { pages, text } = pdfContent(await renderPdf(paper));
      counts.add(pages);
      const told = text.split(/page \d+ of \d+/u).find((page) => page.includes('Sign by hand'));
      expect(told, `${lines} lines`).toContain('name, date, signature');
      // and nobody signs a page that says nothing
      expect(told, `${lines} lines`).toContain('Line.');
    }
    expect([...counts].sort()).toEqual([1, 2]);
  });

  test('leaves no heading and its caution at the foot of a page without the table that they belong to', async () => {
    const table = {
      kind: 'table',
      caption: 'Checks',
      columns: [{ title: 'Check', align: 'start', weight: 1 }],
      rows: [['First row'], ['Second row']],
    } as const;
    const counts = new Set<number>();
    for (let lines = 32; lines <= 48; lines += 1) {
      const blocks = [
        ...Array.from(
          { length: lines },
          () => ({ kind: 'paragraph', tone: 'plain', text: 'Line.' }) as const,
        ),
        { kind: 'heading', level: 2, text: 'Stage of it' } as const,
        { kind: 'list', tone: 'caution', items: ['Caution of it.'], introduces: true } as const,
        table,
      ];
      const { pages, text } = pdfContent(await renderPdf({ ...card, fitted: false, blocks }));
      counts.add(pages);
      const told = text.split(/page \d+ of \d+/u).find((page) => page.includes('Stage of it'));
      for (const words of ['Caution of it.', 'First row']) expect(told, `${lines} lines`).toContain(words);
    }
    expect([...counts].sort()).toEqual([1, 2]);
  });

  test('puts a box for a sign that no typeface has, and keeps the sign for readers aloud', async () => {
    const titled = { ...read, job: { ...read.job, title: 'Seam 字 😀 7' } };
    const bytes = await renderPdf(
      cardDocument(titled, sampleAnswer(titled, plan), { units: 'metric', paper: 'a4' }),
    );
    expect(pdfContent(bytes).text).toMatch(/Seam +□/);
    const written = Buffer.concat([
      Buffer.from([0xfe, 0xff]),
      Buffer.from('Seam 字 😀 7', 'utf16le').swap16(),
    ]);
    expect(Buffer.from(bytes).includes(Buffer.from('/ActualText'))).toBe(true);
    expect(Buffer.from(bytes).includes(written)).toBe(true);
  });
});
