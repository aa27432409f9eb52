import { expect, test } from 'vitest';
import { cardDocument } from '../kinds/index.ts';
import { exampleJob, sampleAnswer, samplePlan } from '../sample-plan.test-data.ts';
import { PAGE_FITS, pageFit } from './page-fit.ts';
import { PAPER_STYLESHEET } from './paper-stylesheet.ts';

const read = exampleJob('penstock-seam');
const options = { units: 'metric', paper: 'a4' } as const;

test('sets a crowded card smaller than a roomy one, and a paper of many pages at full size', () => {
  const roomy = cardDocument(read, sampleAnswer(read, undefined), options);
  const plan = samplePlan(read, { tracks: 10, layers: 4, gauge: true, uneven: true });
  const crowded = cardDocument(read, sampleAnswer(read, plan, Array(9).fill('word '.repeat(30))), options);
  expect(pageFit(roomy)).toBe(100);
  expect(pageFit(crowded)).toBeLessThan(80);
  expect(pageFit({ ...crowded, one_page: false })).toBe(100);
});

test('every size it can ask for stands in the style sheet', () => {
  for (const fit of PAGE_FITS) expect(PAPER_STYLESHEET).toContain(`html.fit-${fit} {`);
});
