import { expect, it } from 'vitest';
import { createPast } from './past.ts';

it('takes changes of the form back one by one, and what was typed as one', () => {
  const past = createPast();
  for (const [text, by] of [
    ['a', 'form'],
    ['b', 'form'],
    ['c', 'text'],
    ['cd', 'text'],
    ['cde', 'form'],
  ] as const)
    past.keep(text, by);
  expect([past.depth(), past.back(), past.back(), past.back(), past.back(), past.back()]).toEqual([
    4,
    'cde',
    'c',
    'b',
    'a',
    undefined,
  ]);
});

it('forgets the oldest of very many', () => {
  const past = createPast();
  for (let count = 0; count < 150; count += 1) past.keep(String(count), 'form');
  expect(past.depth()).toBe(100);
  let oldest: string | undefined;
  for (let text = past.back(); text !== undefined; text = past.back()) oldest = text;
  expect(oldest).toBe('50');
});
