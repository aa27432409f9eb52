import { expect, it } from 'vitest';
import { amountOf } from './amount.ts';
import { joinSentences, say, sentencesWritten, sentenceText } from './sentence.ts';

const mark = say`Mark ${amountOf(0.5, 'length')} and time ${3} runs of ${'the carriage'}.`;

it('keeps amounts in SI until the reader’s units are known', () => {
  expect(sentenceText(mark, 'metric')).toBe('Mark 500 mm and time 3 runs of the carriage.');
  expect(sentenceText(mark, 'inch')).toBe('Mark 19 3/4 in and time 3 runs of the carriage.');
});

it('is plain text where no amount stands in it, and nests', () => {
  expect(say`no ${'amount'}`).toBe('no amount');
  expect(sentenceText(say`First: ${mark}`, 'metric')).toBe(`First: ${sentenceText(mark, 'metric')}`);
  expect(sentenceText(joinSentences([mark, 'Stop.']), 'inch')).toMatch(/carriage\. Stop\.$/u);
});

it('is text in JSON, wherever it stands, and leaves the rest as it is', () => {
  const result = { rows: [{ says: mark, depth_mm: 3, none: null }], band: new Float64Array([1]), plain: 'x' };
  const written = sentencesWritten(result, 'metric');
  expect(written).toEqual({ ...result, rows: [{ ...result.rows[0], says: sentenceText(mark, 'metric') }] });
  expect(written.band).toBe(result.band);
});
