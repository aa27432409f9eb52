import { createHash } from 'node:crypto';
import { expect, it } from 'vitest';
import { revisionOf } from './revision.ts';

it('is the SHA-256 of the content as JSON with its keys in order', () => {
  const sorted = '{"a":[{"x":1,"y":"é"},2],"b":{"c":null,"d":0.1}}';
  const content = { b: { d: 0.1, c: null }, a: [{ y: 'é', x: 1 }, 2] };
  expect(revisionOf(content)).toBe(createHash('sha256').update(sorted).digest('hex'));
});

it('minds the order of a list, not that of keys', () => {
  expect(revisionOf({ a: 1, b: 2 })).toBe(revisionOf({ b: 2, a: 1 }));
  expect(revisionOf([1, 2])).not.toBe(revisionOf([2, 1]));
});
