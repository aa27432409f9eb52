import { expect, it } from 'vitest';
import { nestedDeeper } from './nesting.ts';

function nested(levels: number): unknown {
  let value: unknown = 1;
  for (let level = 0; level < levels; level += 1) value = level % 2 === 0 ? { a: value, b: 2 } : [value];
  return value;
}

it('counts levels of groups and lists', () => {
  expect(nestedDeeper(1, 0)).toBe(false);
  expect(nestedDeeper(nested(3), 3)).toBe(false);
  expect(nestedDeeper(nested(4), 3)).toBe(true);
  expect(nestedDeeper(nested(100_000), 20)).toBe(true);
});

it('calls a value endless that holds itself', () => {
  const own: unknown[] = [];
  own.push({ a: own });
  expect(nestedDeeper(own, 20)).toBe(true);
});

it('looks at a part that many share only once', () => {
  let value: unknown = 1;
  for (let level = 0; level < 18; level += 1) value = Array(1000).fill(value);
  expect(nestedDeeper(value, 20)).toBe(false);
});
