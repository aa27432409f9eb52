import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cardDocument } from '../kinds/index.ts';
import { exampleJob, sampleAnswer, samplePlan } from '../sample-plan.test-data.ts';
import { renderHtml } from './render-html.ts';

const read = exampleJob('defect-pocket');
const plan = samplePlan(read, { tracks: 1, layers: 1, gauge: false });

test('no title, purpose or caution changes the elements of the page', () => {
  const elements = (title: string, purpose: string, caution: string): string[] => {
    const job = { ...read.job, title, groove: { ...read.job.groove, purpose } };
    const given = { ...read, job };
    const html = renderHtml(
      cardDocument(given, sampleAnswer(given, plan, [caution]), { units: 'metric', paper: 'a4' }),
    );
    expect(html).not.toMatch(/\p{Cs}/u);
    return [...html.matchAll(/<\/?([a-z0-9]+)/g)].map(([element]) => element);
  };
  const plain = elements('title', 'purpose', 'caution');
  const text = fc.oneof(
    fc.string({ unit: 'binary', minLength: 1, maxLength: 120 }),
    fc
      .array(fc.constantFrom('<', '>', '"', "'", '&', '</h1>', '<script>', '\u202e', 'א', '😀'), {
        minLength: 1,
        maxLength: 30,
      })
      .map((parts) => parts.join('')),
  );
  fc.assert(
    fc.property(text, text, text, (title, purpose, caution) => {
      expect(elements(title, purpose, caution)).toEqual(plain);
    }),
    { seed: 3, numRuns: 100 },
  );
});
