import { answerJob } from '@furrow/engine';
import { describe, expect, test } from 'vitest';
import { drawingToSvg } from './drawing/index.ts';
import { renderHtml } from './html/index.ts';
import { cardDocument } from './kinds/index.ts';
import { pdfContent } from './pdf/pdf-text.test-data.ts';
import { renderPdf } from './pdf/render-pdf.ts';
import { exampleJob } from './sample-plan.test-data.ts';
import { renderText } from './text/index.ts';

describe.each(['penstock-seam', 'casting-wash', 'defect-pocket'] as const)('papers of %s', (name) => {
  const read = exampleJob(name);
  const answer = answerJob({ job: read, version: '0.1.0' });

  test.each([
    ['a4', 'metric'],
    ['a4', 'inch'],
    ['letter', 'metric'],
    ['letter', 'inch'],
  ] as const)(
    'card of %s in %s is a sheet of two sides, in letters of eight points and more, with the settings on its front',
    async (paper, units) => {
      const card = cardDocument(read, answer, { units, paper });
      const { pages, smallest, text } = pdfContent(await renderPdf(card));
      expect(pages).toBeLessThanOrEqual(2);
      expect(smallest).toBeGreaterThanOrEqual(7.99);
      // every row of the tables that hands follow stands on the front
      expect(text).not.toContain(', continued');
      expect(text).toContain(read.job.title.slice(0, 12));
      if (answer.plan === undefined) expect(text).toContain('Nothing to run');
      else expect(text).toContain(String(Math.round(answer.plan.passes[0]!.current_A)));
      expect(renderHtml(card)).not.toMatch(/NaN|undefined|Infinity/);
      for (const block of card.blocks) {
        if (block.kind === 'drawing') expect(drawingToSvg(block.drawing)).not.toMatch(/NaN|Infinity/);
      }
    },
  );

  test('text stays within a hundred columns', () => {
    for (const units of ['inch', 'metric'] as const) {
      const lines = renderText(answer, read, units).split('\n');
      expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
    }
  });
});
