import { describe, expect, it } from 'vitest';
import { freshEntry, listWords } from './list-words.ts';

describe('listWords', () => {
  it('tells leads as laid from leads in stock', () => {
    expect(listWords('leads').one).toBe('lead');
    expect(listWords('stock.leads').one).toBe('lead in stock');
    expect(listWords('bay.obstacles.*.outline').one).toBe('corner');
  });

  it('calls a list that is not known by its own name', () => {
    expect(listWords('new_things')).toEqual({ one: 'new thing', all: 'New things', least: 0, fresh: {} });
  });

  it('names a new entry where entries have names, and invents nothing else', () => {
    expect(freshEntry(listWords('leads'), 2, true)).toEqual({ name: 'Lead 3' });
    expect(freshEntry(listWords('kit.electrodes'), 1, false)).toEqual({ diameter: '1/2 in' });
  });
});
