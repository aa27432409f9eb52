import { API_PATHS, fillPath, type SavedShopFile, type ShopFileConflict } from '@furrow/contract';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { buildServer } from '../build-server.ts';
import { SMALL_KIT } from '../testing/small-kit.ts';
import { type TestParts, testParts } from '../testing/test-server.ts';
import type { ZodServer } from './zod-server.ts';

const draft = 'furrow_kit: 1\ntitle: Yard # not finished\n';

let test: TestParts;
let server: ZodServer;
beforeEach(async () => {
  test = await testParts();
  server = await buildServer(test.parts);
});
afterEach(async () => {
  await server.close();
  await test.cleanUp();
  expect(test.faults).toEqual([]);
});

function save(text: string, based_on: number) {
  return server.inject({ method: 'PUT', url: API_PATHS.kit, payload: { text, based_on } });
}

async function kit(): Promise<SavedShopFile> {
  return (await server.inject(API_PATHS.kit)).json<SavedShopFile>();
}

describe('the kit', () => {
  it('is none at first', async () => {
    expect(await kit()).toEqual({
      title: '',
      revision: null,
      revision_number: 0,
      saved_at: null,
      saved_by: null,
      text: '',
      valid: false,
      issues: [],
    });
    expect((await server.inject(API_PATHS.kitRevisions)).json()).toEqual([]);
    const none = await server.inject(fillPath(API_PATHS.kitRevision, { number: 1 }));
    expect([none.statusCode, none.json()]).toEqual([
      404,
      { code: 'REVISION_NOT_FOUND', message: 'The kit has no revision 1; no kit was saved yet.' },
    ]);
  });

  it('that can be planned with is known by its content', async () => {
    const saved = (await save(SMALL_KIT, 0)).json<SavedShopFile>();
    expect(saved).toMatchObject({
      text: SMALL_KIT,
      title: 'Two sources and a roll of hose',
      revision: expect.stringMatching(/^[0-9a-f]{64}$/),
      valid: true,
      issues: [],
    });
    const commented = (await save(`# the same kit\n${SMALL_KIT}`, 1)).json<SavedShopFile>();
    expect(commented.revision).toBe(saved.revision);
    const longer = (await save(SMALL_KIT.replace('length: 20 m', 'length: 21 m'), 2)).json<SavedShopFile>();
    expect(longer.revision).not.toBe(saved.revision);
  });

  it('may be a draft, which is kept to the letter, with every revision', async () => {
    const first = await save(draft, 0);
    expect(first.statusCode).toBe(200);
    expect(first.json()).toMatchObject({
      text: draft,
      title: 'Yard',
      revision: null,
      revision_number: 1,
      valid: false,
      issues: expect.arrayContaining([
        expect.objectContaining({ code: 'KIT_FIELD_MISSING', path: 'sources' }),
      ]),
    });
    await save(`${draft}# more\n`, 1);
    expect(await kit()).toMatchObject({ text: `${draft}# more\n`, revision_number: 2 });
    const revisions = (await server.inject(API_PATHS.kitRevisions)).json<SavedShopFile[]>();
    expect(revisions.map((each) => each.revision_number)).toEqual([2, 1]);
    const earlier = await server.inject(fillPath(API_PATHS.kitRevision, { number: 1 }));
    expect(earlier.json()).toMatchObject({ text: draft, revision_number: 1 });
    const later = await server.inject(fillPath(API_PATHS.kitRevision, { number: 3 }));
    expect(later.json<{ message: string }>().message).toContain('its revisions are 1 to 2');
  });

  it.each([0, 2])('is not overwritten by a save based on revision %i when it is at 1', async (base) => {
    const saved = (await save(draft, 0)).json<SavedShopFile>();
    const late = await save('title: late\n', base);
    expect(late.statusCode).toBe(409);
    expect(late.json<ShopFileConflict>()).toMatchObject({ code: 'KIT_CHANGED_MEANWHILE', newer: saved });
    expect(await kit()).toEqual(saved);
  });

  it('is refused, not cut, when it is too long', async () => {
    const reply = await save(`title: long\n#${'x'.repeat(200_000)}`, 0);
    expect([reply.statusCode, reply.json<{ code: string }>().code]).toEqual([413, 'KIT_TOO_LARGE']);
    expect(await kit()).toMatchObject({ revision_number: 0 });
  });

  it.each([
    [{ text: draft }],
    [{ text: draft, based_on: -1 }],
    [{ text: draft, based_on: 0.5 }],
    [{ text: 'a\0b', based_on: 0 }],
    [{ based_on: 0 }],
  ])('is not made from %j', async (payload) => {
    const reply = await server.inject({ method: 'PUT', url: API_PATHS.kit, payload });
    expect([reply.statusCode, reply.json<{ code: string }>().code]).toEqual([400, 'REQUEST_INVALID']);
    expect(await kit()).toMatchObject({ revision_number: 0 });
  });
});
