import { expect, it } from 'vitest';
import { figures } from './figures.ts';

it('gives no more figures than matter', () => {
  expect(figures(1_234_567)).toBe('1\u202f234\u202f567');
  expect(figures(0.004321)).toBe('0.0043');
  expect(figures(60)).toBe('60');
});
