import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type Company, openCompany } from './index.ts';
import { testedKinds } from './testing/place.ts';
import { countingSources } from './testing/sources.ts';

const LATER = '2027-01-01T00:00:00.000Z';
const BEFORE = '2026-01-01T00:00:00.000Z';

describe.each(testedKinds())('people in $name', ({ missing, start, stop, newPlace }) => {
  if (missing !== undefined) {
    it.skip(missing, () => undefined);
    return;
  }
  let company: Company;
  beforeAll(start);
  afterAll(stop);
  beforeEach(async () => {
    company = await openCompany(newPlace(), countingSources());
    return () => company.close();
  });
  const add = (id: string, administrator = false): Promise<boolean> =>
    company.people.addAccount({ id, name: `Name ${id}`, administrator });
  const rights = { administrator: false, shut: false, shops: {} };

  it('begin with the one shop there was, and nobody', async () => {
    expect(await company.people.shops()).toEqual([{ id: 'main', name: 'The shop' }]);
    expect(await company.people.accounts()).toEqual([]);
    expect(await company.people.hasAdministrator()).toBe(false);
  });

  it('have names of their own, whatever their case', async () => {
    expect(await company.people.addAccount({ id: 'a', name: 'Bo Ström', administrator: true })).toBe(true);
    expect(await company.people.addAccount({ id: 'b', name: 'BO STRÖM', administrator: false })).toBe(false);
    expect((await company.people.accountNamed('bo ström'))?.account).toMatchObject({
      id: 'a',
      opened: false,
    });
    expect(await company.people.accounts()).toHaveLength(1);
  });

  it('are bound to what a provider knows them by once, and for ever', async () => {
    await add('a');
    await add('b');
    expect(await company.people.identified('https://id.example', 's')).toBeUndefined();
    expect(await company.people.bindIdentity('https://id.example', 's', 'a')).toBe(true);
    expect(await company.people.bindIdentity('https://id.example', 's', 'a')).toBe(true);
    expect(await company.people.bindIdentity('https://id.example', 's', 'b')).toBe(false);
    expect(await company.people.bindIdentity('https://id.example', 'other', 'a')).toBe(false);
    expect(await company.people.bindIdentity('https://else.example', 's', 'b')).toBe(true);
    expect((await company.people.identified('https://id.example', 's'))?.id).toBe('a');
    expect((await company.audit()).problems).toEqual([]);
  });

  it('always keep one administrator', async () => {
    await add('a', true);
    await add('b', true);
    const both = await Promise.all(['a', 'b'].map((id) => company.people.setRights(id, rights)));
    expect(both.sort()).toEqual(['last administrator', 'set']);
    expect(await company.people.hasAdministrator()).toBe(true);
    const left = (await company.people.accounts()).find(({ administrator }) => administrator)!;
    expect(await company.people.setRights(left.id, { ...rights, administrator: true, shut: true })).toBe(
      'last administrator',
    );
  });

  it('belong to shops that there are', async () => {
    await add('a');
    await add('b', true);
    expect(await company.people.setRights('a', { ...rights, shops: { yard: 'viewer' } })).toBe(
      'unknown shop',
    );
    await company.people.putShop({ id: 'yard', name: 'Yard' });
    expect(
      await company.people.setRights('a', { ...rights, shops: { yard: 'viewer', main: 'engineer' } }),
    ).toBe('set');
    expect((await company.people.accountNamed('name a'))?.account.shops).toEqual({
      yard: 'viewer',
      main: 'engineer',
    });
    expect(await company.people.setRights('nobody', rights)).toBe('not found');
  });

  it('set a password by a link once, in time, and are let in by nothing older', async () => {
    await add('a', true);
    await company.people.addLink('late', 'a', BEFORE);
    await company.people.addLink('link', 'a', LATER);
    await company.people.addSession('old', 'a', 'main', LATER);
    expect(await company.people.useLink('late', 'x')).toBeUndefined();
    const [first, second] = await Promise.all(
      ['one', 'two'].map((word) => company.people.useLink('link', word)),
    );
    expect([first, second].filter((used) => used !== undefined)).toHaveLength(1);
    expect(await company.people.session('old')).toBeUndefined();
    const kept = (await company.people.accountNamed('name a'))?.password;
    expect(kept).toBe(first === undefined ? 'two' : 'one');
  });

  it('are signed in until the session ends, is ended or the account is shut', async () => {
    await add('a');
    await add('b', true);
    await company.people.addSession('gone', 'a', 'main', BEFORE);
    await company.people.addSession('one', 'a', 'main', LATER);
    await company.people.addSession('two', 'a', null, LATER);
    expect(await company.people.session('gone')).toBeUndefined();
    expect(await company.people.session('one')).toMatchObject({ account: { id: 'a' }, shop: 'main' });
    await company.people.endSession('one');
    expect(await company.people.session('one')).toBeUndefined();
    await company.people.setRights('a', { ...rights, shut: true });
    await company.people.setRights('a', rights);
    expect(await company.people.session('two')).toBeUndefined();
  });

  it('get a new secret for a session once, and the one before holds a while', async () => {
    await add('a');
    await company.people.addSession('one', 'a', 'main', LATER);
    const both = await Promise.all(
      ['x', 'y'].map((next) => company.people.exchangeSession('one', next, LATER)),
    );
    expect(both.sort()).toEqual([false, true]);
    expect(await company.people.session('one')).toMatchObject({ ends_at: LATER });
    expect(await company.people.exchangeSession('none', 'z', LATER)).toBe(false);
  });

  it('know machines by their hash, until they are erased', async () => {
    await company.people.addMachine({ id: 'm', shop: 'main', name: 'Logger' }, 'hash');
    expect(await company.people.machine('hash')).toMatchObject({ id: 'm', shop: 'main' });
    expect(await company.people.machine('other')).toBeUndefined();
    expect(await company.people.eraseMachine('m')).toBe(true);
    expect(await company.people.machine('hash')).toBeUndefined();
  });

  it('count failures each of which counts, also those at once', async () => {
    await Promise.all(Array.from({ length: 8 }, () => company.people.countFailures(['b', 'a'], BEFORE)));
    expect((await company.people.failures(['a', 'b', 'c'])).get('a')?.count).toBe(8);
    expect(await company.people.countFailures(['a'], LATER)).toEqual([1]);
    await company.people.forgetFailures(['a', 'b']);
    expect(await company.people.failures(['a', 'b'])).toEqual(new Map());
  });

  it('of one shop see nothing of another', async () => {
    const job = await company.shop('main').create({ text: 'a', title: 'a', revision: null });
    expect(await company.shop('yard').get(job.id)).toBeUndefined();
    expect(await company.shop('yard').list()).toEqual([]);
  });
});
