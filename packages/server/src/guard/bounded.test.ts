import { describe, expect, it } from 'vitest';
import { boundedIssues, boundedText } from './bounded.ts';

const issue = { code: 'JOB_FIELD_VALUE', message: 'm', path: 'p' } as const;

describe('boundedText', () => {
  it('leaves what a person reads, and cuts the rest between characters', () => {
    expect(boundedText('x'.repeat(400))).toBe('x'.repeat(400));
    expect(boundedText('x'.repeat(401))).toBe(`${'x'.repeat(400)} …`);
    expect(boundedText(`${'x'.repeat(399)}🔥${'x'.repeat(9)}`)).toBe(`${'x'.repeat(399)} …`);
  });
});

describe('boundedIssues', () => {
  it('tells the first fifty, each with its place', () => {
    const many = Array.from({ length: 60 }, (_, n) => ({ ...issue, position: { line: n, column: 1 } }));
    expect(boundedIssues(many)).toEqual(many.slice(0, 50));
  });

  it('shortens words, and leaves out what would have to be whole', () => {
    const long = 'y'.repeat(900);
    const [short] = boundedIssues([{ ...issue, message: long, read: long, nearest: long }]);
    expect(short?.message).toHaveLength(402);
    expect(short?.read).toHaveLength(402);
    expect(short).not.toHaveProperty('nearest');
    expect(boundedIssues([{ ...issue, nearest: '3 mm' }])).toEqual([{ ...issue, nearest: '3 mm' }]);
  });
});
