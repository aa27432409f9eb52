import { describe, expect, it } from 'vitest';
import { MemoryStorage } from '../../testing/index.ts';
import { memoryOf } from './own-memory.ts';

describe('what a browser keeps for who works at it', () => {
  const browser = new MemoryStorage();
  const of = (account: string, shop: string) => memoryOf(browser, { account, shop });

  it('is met again by the same person in the same shop, and by nobody else', () => {
    browser.setItem('furrow.draft.kit', 'from before there were accounts');
    of('anna', 'north').setItem('furrow.draft.kit', 'the kit of north');
    expect(of('anna', 'north').getItem('furrow.draft.kit')).toBe('the kit of north');
    for (const other of [of('anna', 'south'), of('bert', 'north'), of('na', 'north/an')])
      expect(other.getItem('furrow.draft.kit')).toBeNull();
    expect(browser.getItem('furrow.draft.kit')).toBe('from before there were accounts');
  });

  it('is counted, listed and forgotten by itself', () => {
    of('bert', 'north').setItem('a', '1');
    of('bert', 'north').setItem('b', '2');
    expect(of('bert', 'north').length).toBe(2);
    expect([of('bert', 'north').key(0), of('bert', 'north').key(1), of('bert', 'north').key(2)]).toEqual([
      'a',
      'b',
      null,
    ]);
    of('bert', 'north').removeItem('a');
    expect(of('bert', 'north').getItem('a')).toBeNull();
    of('bert', 'north').clear();
    expect(of('bert', 'north').length).toBe(0);
    expect(of('anna', 'north').length).toBe(1);
  });
});
