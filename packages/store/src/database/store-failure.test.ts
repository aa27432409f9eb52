import { describe, expect, it } from 'vitest';
import { attempt } from './store-failure.ts';

describe('attempt', () => {
  it.each(['SQLITE_FULL', '53100', 'ENOSPC'])('tells a full disk from the code %s', async (code) => {
    const work = attempt('/data', () => Promise.reject(Object.assign(new Error('no'), { code })));
    await expect(work).rejects.toMatchObject({
      code: 'STORE_FULL',
      message: expect.stringMatching(/^The disk that holds \/data is full/),
    });
  });

  it('tells anything else by what the driver says', async () => {
    const work = attempt('/data', () => Promise.reject(new Error('locked')));
    await expect(work).rejects.toMatchObject({
      message: expect.stringMatching(/nothing was changed: locked$/),
    });
  });
});
