import { expect, it } from 'vitest';
import { exampleJob, sampleAnswer } from '../sample-plan.test-data.ts';
import { knowledgeWords } from './knowledge-words.ts';

const inputsWith = (knowledge: { id: string; trials: number; jobs: number; date: string | null }) => ({
  inputs: { ...sampleAnswer(exampleJob('penstock-seam'), undefined).inputs, knowledge },
});

it('says that the published rows alone speak where a shop has tried nothing', () => {
  const words = knowledgeWords(inputsWith({ id: 'published-2', trials: 0, jobs: 0, date: null }));
  expect(words).toContain('not of this shop’s own trials');
});

it('names what a shop knows by identifier, counts and day', () => {
  const words = knowledgeWords(inputsWith({ id: 'yard-0a1b', trials: 1, jobs: 3, date: '2026-04-29' }));
  expect(words).toBe(
    'chances are of what the shop knows, yard-0a1b: 1 trial and 3 gauged jobs, the latest of 2026-04-29',
  );
});
