import { describe, expect, it } from 'vitest';
import { openText } from './keep-text.ts';

const SAVED = { revision_number: 3, text: 'a' };

describe('openText', () => {
  it('opens what is saved, without a draft or with one that says the same', () => {
    const opened = { text: 'a', kept: { saved: SAVED, base: 'a', revision: 3, restored: false } };
    expect(openText('a', SAVED, undefined)).toMatchObject(opened);
    expect(openText('a', SAVED, { text: 'a', based_on: 2 })).toMatchObject(opened);
  });

  it.each([
    ['stays based on the older revision it was made from', 2, 2],
    ['is based on nothing newer than what is saved', 9, 3],
  ])('puts a draft back, which %s', (_, based_on, revision) => {
    expect(openText('a', SAVED, { text: 'ab', based_on })).toMatchObject({
      text: 'ab',
      kept: { base: 'a', revision, restored: true },
    });
  });

  it('opens a text that is not saved anywhere', () => {
    expect(openText('a', undefined, undefined).kept).toMatchObject({ saved: undefined, revision: 0 });
  });
});
