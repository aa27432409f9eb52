import type { HistoryEntry } from '@furrow/contract';
import { expect, test } from 'vitest';
import { entryWords } from './entry-words.ts';

const entry = (given: Partial<HistoryEntry>): HistoryEntry => ({
  ...{ number: 1, at: '', who: null, who_id: null, act: 'save', kind: 'job', thing: '', before: null },
  ...{ after: null, content: null, previous: '', hash: '', ...given },
});

test.each([
  [{ after: '1' }, 'saved a job, the first revision'],
  [{ before: '3', after: '4', kind: 'kit' }, 'saved the kit, revision 4'],
  [{ act: 'release', kind: 'paper', after: 'id set-up-card.pdf' }, 'handed out a paper: set-up-card.pdf'],
  [{ act: 'erase', kind: 'run' }, 'erased for good: a run'],
  [{ act: 'set', kind: 'shop', after: 'Quay' }, 'changed a shop: Quay'],
  [
    { act: 'set', kind: 'account', after: '{"administrator":true,"shut":true,"shops":{"yard":"viewer"}}' },
    'changed an account: administrator, viewer in yard, shut',
  ],
  [
    { act: 'add', kind: 'account', after: '{"administrator":false,"shut":false,"shops":{}}' },
    'added an account: no rights',
  ],
  [{ act: 'set', kind: 'account', after: 'no JSON' }, 'changed an account: no JSON'],
  [{ act: 'later act', kind: 'later kind' }, 'later act later kind'],
])('%o is told as: %s', (given, words) => {
  expect(entryWords(entry(given))).toBe(words);
});
