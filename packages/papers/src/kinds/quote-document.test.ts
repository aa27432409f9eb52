import { answerJob } from '@furrow/engine';
import { describe, expect, test } from 'vitest';
import { drawingToSvg } from '../drawing/index.ts';
import { renderHtml } from '../html/index.ts';
import { pdfContent } from '../pdf/pdf-text.test-data.ts';
import { renderPdf } from '../pdf/render-pdf.ts';
import { exampleJob } from '../sample-plan.test-data.ts';
import { workTimeRange } from '../words/index.ts';
import { estimateDocument } from './estimate-document.ts';
import { quoteDocument } from './quote-document.ts';

const read = exampleJob('penstock-seam');
const answer = answerJob({ job: read, version: '0.1.0' });

describe('the quote', () => {
  test.each([
    ['a4', 'metric', /By the metre/u],
    ['letter', 'inch', /By the foot/u],
  ] as const)('on %s in %s gives a range and leaves the offer to a hand', async (paper, units, length) => {
    const quote = quoteDocument({ read, answer }, { units, paper });
    const { pages, text } = pdfContent(await renderPdf(quote));
    expect(pages).toBe(1);
    expect(text).toMatch(/Estimated cost/u);
    expect(text).toMatch(length);
    const fields = quote.blocks.find((block) => block.kind === 'fields')!;
    expect(fields.items.map(({ label }) => label)).toEqual(
      expect.arrayContaining(['Price offered', 'Valid until']),
    );
    expect(fields.items.every((field) => !('value' in field))).toBe(true);
    expect(renderHtml(quote)).not.toMatch(/NaN|undefined|Infinity/u);
    for (const block of quote.blocks) {
      if (block.kind === 'drawing') expect(drawingToSvg(block.drawing)).not.toMatch(/NaN|Infinity/u);
    }
  });

  test('shows no money as certain: both ends of a range, told as chances', () => {
    const quote = quoteDocument({ read, answer }, { units: 'metric', paper: 'a4' });
    const figures = quote.blocks.find((block) => block.kind === 'figures')!;
    expect(figures.items[0]!.value).toMatch(/^\d+ to \d+ EUR$/u);
    expect(figures.items[0]!.note).toContain('chance');
  });

  test('says what is not in it, by what the job states', () => {
    const { job } = read;
    const refill = { ...job.after.refill, filler_per_kg: 0 };
    const unpriced = { ...read, job: { ...job, after: { ...job.after, refill } } };
    const quoteOf = (from: typeof read) =>
      JSON.stringify(quoteDocument({ read: from, answer }, { units: 'metric', paper: 'a4' }));
    expect(quoteOf(unpriced)).toContain('filler: no price is stated');
    expect(quoteOf(read)).not.toContain('filler: no price is stated');
  });

  test('keeps to itself how the shop works: no step with its time, no rework, no rate', () => {
    const quote = JSON.stringify(quoteDocument({ read, answer }, { units: 'metric', paper: 'a4' }));
    expect(quote).not.toMatch(/rework|judgement|labour|trials|seed|knowledge|kit revision|\d min \d/iu);
  });

  test.each([
    [57_840, 67_620, '16 to 19 h'],
    [9_100, 10_500, '2.5 to 3 h'],
    [2_500, 2_950, '40 to 50 min'],
    [3_500, 7_300, '0.5 to 2.5 h'],
  ])('tells a time from %i s to %i s as %s', (low, high, text) => {
    expect(workTimeRange(low, high)).toBe(text);
  });

  test('tells no money where no price is stated, and asks for it', () => {
    const bare = exampleJob('penstock-seam', (text) =>
      text.replace(/^rates:\n(?: {2}.*\n)+/mu, '').replace(/^after:\n(?: {2}.*\n)+/mu, ''),
    );
    const own = answerJob({ job: bare, version: '0.1.0' });
    for (const make of [quoteDocument, estimateDocument]) {
      const paper = JSON.stringify(make({ read: bare, answer: own }, { units: 'metric', paper: 'a4' }));
      expect(paper).not.toMatch(/\d ¤|EUR|\b0 to 0\b|Money/u);
      expect(paper).toContain('No labour rate is stated');
      expect(paper).toMatch(/1\d (?:h \d+ min|to \d+ h)/u);
    }
  });

  test('carries markup of the title as text', () => {
    const sly = { ...read, job: { ...read.job, title: '<script>alert(1)</script>' } };
    expect(
      renderHtml(quoteDocument({ read: sly, answer }, { units: 'inch', paper: 'letter' })),
    ).not.toContain('<script>alert');
  });

  test('without a plan quotes nothing', () => {
    const { plan: _plan, basis: _basis, ...rest } = answer;
    const refused = { ...rest, refusal: { summary: 'The plate is too thin.', binding: [] } };
    const quote = quoteDocument({ read, answer: refused }, { units: 'metric', paper: 'a4' });
    expect(JSON.stringify(quote)).toContain('The plate is too thin.');
    expect(quote.blocks.some((block) => block.kind === 'figures')).toBe(false);
  });
});
