import { describe, expect, test } from 'vitest';
import { readWorkedValue, workedDifference } from './worked-value.ts';

function differs(written: string, actual: unknown): string | undefined {
  return workedDifference(readWorkedValue(written), actual);
}

describe('numbers are compared to the digits written', () => {
  test.each<[string, number, boolean]>([
    ['0.132', 0.13249, true],
    ['0.132', 0.1326, false],
    ['0.000132...', 0.00013299, true],
    ['0.000132...', 0.000133, false],
    ['0.000132...', 0.00013199, false],
    ['-1.5...', -1.59, true],
    ['-1.5...', -1.49, false],
    ['-1.5...', 1.55, false],
    ['1.50e-4', 0.000150499, true],
    ['1.50e-4', 0.00015051, false],
    ['3', 3, true],
    ['3', 3.2, false],
    ['3...', 3.2, true],
    ['3...', 4, false],
    ['0.3', 0.1 + 0.2, true],
    ['0', -0, true],
    ['NaN', Number.NaN, true],
    ['-Infinity', Number.NEGATIVE_INFINITY, true],
  ])('%s and %d: %s', (written, actual, same) => {
    expect(differs(written, actual) === undefined).toBe(same);
  });

  test('a text is not a number', () => {
    expect(differs('3', '3')).toBe('3 is written, got "3"');
  });
});

describe('structures', () => {
  test('keys may be bare, quotes single, the order free, members without a value absent', () => {
    expect(
      differs(`{ ok: true, "value": [1, 'a"b\\'c'] }`, { value: [1, `a"b'c`], ok: true, no: undefined }),
    ).toBe(undefined);
  });
  test('a difference is told with its path', () => {
    expect(differs('{"a":{"b":[1,2.0]}}', { a: { b: [1, 2.1] } })).toBe('at a.b[1]: 2.0 is written, got 2.1');
  });
  test('a member that is not written is a difference, unless the rest is cut', () => {
    expect(differs('{"a":1}', { a: 1, b: 2 })).toContain('no member b is written');
    expect(differs('{"a":1, ...}', { a: 1, b: 2 })).toBeUndefined();
    expect(differs('{"a":1, ...}', { b: 2 })).toContain('at a: 1 is written');
  });
  test('lists have their length, unless the rest is cut; typed arrays are lists', () => {
    expect(differs('[1,2]', [1, 2, 3])).toContain('a list of 2 is written');
    expect(differs('[1, 2, ...]', new Float64Array([1, 2, 3]))).toBeUndefined();
    expect(differs('[1, 2, ...]', [1])).toContain('a list of 2 or more');
    expect(differs('[]', {})).toContain('a list is written');
    expect(differs('{}', [])).toContain('a record is written');
  });
  test('words', () => {
    expect(differs('undefined', undefined)).toBeUndefined();
    expect(differs('null', undefined)).toBe('null is written, got undefined');
    expect(differs('false', false)).toBeUndefined();
  });
});

test.each(['', 'about 3', '[1', '{a 1}', '"open', '1 2', '{a: 1'])('%j is not a value', (text) => {
  expect(() => readWorkedValue(text)).toThrow(/expected at/);
});
