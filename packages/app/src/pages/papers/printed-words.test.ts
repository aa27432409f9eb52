import { describe, expect, it } from 'vitest';
import { changesOf, printedWords } from './printed-words.ts';

const printed = {
  revision_number: 2,
  printed_at: '2026-03-04T08:00:00.000Z',
  released_by: null,
  superseded: true,
  changes: ['Groove, depth: 12.0 mm before, 13.0 mm now.'],
};
const paper = { file: 'quote.pdf', title: 'Quote', page: 'quote', wanting: null, printed };

describe('printedWords', () => {
  it('tells the revision, that nothing was printed yet, or why there is nothing to print', () => {
    expect(printedWords(paper)).toContain('printed at revision 2, ');
    expect(printedWords({ ...paper, printed: null })).toBe('not printed yet');
    expect(printedWords({ ...paper, page: null, printed: null })).toBe('not downloaded yet');
    expect(printedWords({ ...paper, printed: null, wanting: 'no kit' })).toBe('not yet: no kit');
  });
});

describe('changesOf', () => {
  it('tells each change once for all papers of one revision', () => {
    const card = { ...paper, title: 'Card' };
    const older = { ...paper, title: 'Record', printed: { ...printed, revision_number: 1 } };
    const good = { ...paper, title: 'Good', printed: { ...printed, superseded: false, changes: [] } };
    expect(changesOf([paper, card, older, good, { ...paper, printed: null }])).toEqual([
      { revision: 2, papers: ['Quote', 'Card'], changes: printed.changes },
      { revision: 1, papers: ['Record'], changes: printed.changes },
    ]);
  });
});
