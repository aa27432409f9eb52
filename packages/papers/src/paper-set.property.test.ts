import { answerJob, type Readings } from '@furrow/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { renderHtml } from './html/index.ts';
import { makePaper, PAPER_KINDS, type PaperKind, type PaperSubject, subjectFor } from './kinds/index.ts';
import { pdfContent } from './pdf/pdf-text.test-data.ts';
import { renderPdf } from './pdf/render-pdf.ts';
import { exampleJob } from './sample-plan.test-data.ts';

const read = exampleJob('casting-wash');
const answer = answerJob({ job: read, version: '0.1.0' });
const { heat } = subjectFor('quote', { read, answer });

/** A job and its record whose words are all hostile. */
function subjectOf(words: string): PaperSubject {
  const readings: Readings = {
    furrow_readings: 1,
    date: words,
    gauge: words,
    note: words,
    crew: [{ name: words, role: words }],
    events: [{ at: 0.1, what: words }],
    stations: [{ at: 0.1, depth: 0.004, note: words }],
  };
  const job = { ...read.job, title: words, note: words, groove: { ...read.job.groove, purpose: words } };
  return { read: { ...read, job }, answer, heat, readings: { readings, revision: 'a' } };
}

const hostile = fc.oneof(
  fc.string({ unit: 'binary', minLength: 1, maxLength: 80 }),
  fc
    .array(
      fc.constantFrom(
        '<script>',
        '</h1>',
        '"',
        "'",
        '&',
        '\u202e',
        'שלום',
        'مرحبا',
        '😀',
        '👨‍👩‍👧',
        '\u0000',
        '\n',
        'W'.repeat(40),
      ),
      { minLength: 1, maxLength: 12 },
    )
    .map((parts) => parts.join('')),
);
const kinds = PAPER_KINDS.filter((kind) => kind !== 'commissioning-sheet');
const paper = (kind: PaperKind, words: string) =>
  makePaper(kind, subjectOf(words), { units: 'inch', paper: 'letter' });

test('no words of a job or a record change the elements of a page', () => {
  const elements = (kind: PaperKind, words: string): string[] => {
    const html = renderHtml(paper(kind, words));
    expect(html).not.toMatch(/\p{Cs}/u);
    return [...html.matchAll(/<\/?([a-z0-9]+)/g)].map(([element]) => element);
  };
  const plain = new Map(kinds.map((kind) => [kind, elements(kind, 'words')]));
  fc.assert(
    fc.property(fc.constantFrom(...kinds), hostile, (kind, words) => {
      expect(elements(kind, words)).toEqual(plain.get(kind));
    }),
    { seed: 21, numRuns: 40 },
  );
});

test('no words break a PDF: its pages, its numbers and its revision stand', async () => {
  await fc.assert(
    fc.asyncProperty(fc.constantFrom(...kinds), hostile, async (kind, words) => {
      const { pages, text } = pdfContent(await renderPdf(paper(kind, words)));
      expect(pages).toBeGreaterThan(0);
      expect(text).toContain(`page ${pages} of ${pages}`);
      expect(text.split(`job revision ${answer.inputs.revision.slice(0, 12)}`)).toHaveLength(pages + 1);
    }),
    { seed: 22, numRuns: 15 },
  );
});
