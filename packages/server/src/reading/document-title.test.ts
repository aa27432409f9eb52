import { describe, expect, it } from 'vitest';
import { draftTitle, shownTitle } from './document-title.ts';

describe('draftTitle', () => {
  it.each([
    ['title: Penstock section 7\nseam: {', 'Penstock section 7'],
    ['{"title": "From JSON", "seam": 3}', 'From JSON'],
    ['title: 7', '7'],
    ['title: "two\\nlines"', 'two lines'],
    ['furrow: 1', 'Untitled job'],
    ['title: { a: b }', 'Untitled job'],
    ['title: ""', 'Untitled job'],
    ['', 'Untitled job'],
    ['- title: a', 'Untitled job'],
    ['just words', 'Untitled job'],
  ])('of %j is %j', (text, title) => {
    expect(draftTitle(text, 'Untitled job')).toBe(title);
  });

  it.each([
    ['lists in lists', '['.repeat(100_000)],
    ['groups as names of groups', `title: a\n${'{'.repeat(32)}${'}'.repeat(32)}`],
    ['references to references', `a: &a [x]\n${'b: &b [*a, *a]\n'.repeat(3000)}`],
    ['more than a text may have', `title: a\n${' '.repeat(200_000)}`],
  ])('is none in a text of %s', (_name, text) => {
    expect(draftTitle(text, 'Untitled job')).toBe('Untitled job');
  });

  it('is found among thousands of mistakes', () => {
    expect(draftTitle(`title: Tank seam\n${'a: b: c\n'.repeat(9_000)}`, 'Untitled job')).toBe('Tank seam');
  });
});

describe('shownTitle', () => {
  it('is one line of at most 120 characters that every database keeps', () => {
    expect(shownTitle(`a\0b\ud800c`, 'Untitled kit')).toBe('a b c');
    expect(shownTitle('\n', 'Untitled kit')).toBe('Untitled kit');
    expect(shownTitle('🔥'.repeat(200), 'Untitled kit')).toBe('🔥'.repeat(120));
  });
});
