import { type Account, API_PATHS, type Session } from '@furrow/contract';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Accounts } from './account/accounts.ts';
import { hashOf } from './account/secret.ts';
import {
  cookieOf,
  passwordOf,
  signInRequest,
  type TestCompany,
  testCompany,
} from './testing/test-company.ts';

let test: TestCompany;
beforeEach(async () => {
  test = await testCompany();
  await test.add('boss', true);
});
afterEach(async () => {
  expect(test.faults).toEqual([]);
  await test.cleanUp();
});

const asked = async (cookie: string): Promise<Session['signed_in']> =>
  (await test.server.inject({ url: API_PATHS.session, headers: { cookie } })).json<Session>().signed_in;

describe('signing in', () => {
  it('gives a cookie that no script reads and no other site sends, and says who is in', async () => {
    const reply = await test.server.inject(signInRequest('Boss', passwordOf('boss')));
    expect(reply.statusCode).toBe(200);
    expect(reply.headers['set-cookie']).toMatch(
      /^furrow_session_80=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/,
    );
    expect(await asked(cookieOf(reply))).toMatchObject({
      name: 'boss',
      role: 'administrator',
      shop: { id: 'main' },
    });
    expect(await asked('')).toBeNull();
  });

  it('tells nobody whether a name is known', async () => {
    const known = await test.server.inject(signInRequest('boss', 'wrong'));
    const unknown = await test.server.inject(signInRequest('nobody', 'wrong'));
    expect([known.statusCode, known.body]).toEqual([401, unknown.body]);
    expect(known.json()).toMatchObject({ code: 'SIGN_IN_REFUSED' });
  });

  it('has to wait after failures, the right password too, known name or not', async () => {
    for (const name of ['boss', 'nobody']) {
      for (let tries = 0; tries < 5; tries++)
        expect((await test.server.inject(signInRequest(name, 'wrong'))).statusCode).toBe(401);
      const late = await test.server.inject(signInRequest(name, passwordOf(name)));
      expect([late.statusCode, late.json<{ code: string }>().code]).toEqual([429, 'SIGN_IN_THROTTLED']);
    }
    test.pass(2);
    expect((await test.server.inject(signInRequest('boss', passwordOf('boss')))).statusCode).toBe(200);
  });

  it('is not tried more often by trying all at once', async () => {
    const replies = await Promise.all(
      Array.from({ length: 20 }, () => test.server.inject(signInRequest('boss', 'wrong'))),
    );
    expect(replies.filter(({ statusCode }) => statusCode === 401).length).toBeLessThanOrEqual(6);
  });

  it('is not held up longer by a clock that is set back', async () => {
    for (let tries = 0; tries < 6; tries++) await test.server.inject(signInRequest('boss', 'wrong'));
    test.pass(-86_400);
    const wait = (await test.server.inject(signInRequest('boss', 'wrong'))).json<{ message: string }>()
      .message;
    expect(Number(/(\d+) s/u.exec(wait)?.[1])).toBeLessThanOrEqual(900);
  });

  it('never takes a session that the browser brought along', async () => {
    const planted = 'furrow_session_80=plantedplantedplantedplantedplantedplantedpl';
    const reply = await test.server.inject({
      ...signInRequest('boss', passwordOf('boss')),
      headers: { cookie: planted },
    });
    expect(cookieOf(reply)).not.toContain('planted');
    expect(await asked(planted)).toBeNull();
    expect(await asked(`${cookieOf(reply)}; ${planted}`)).toBeNull();
  });
});

describe('a session', () => {
  it('is over when it is signed out, and a copy of it too', async () => {
    const cookie = await test.signIn('boss');
    const out = await test.server.inject({ method: 'DELETE', url: API_PATHS.session, headers: { cookie } });
    expect([out.statusCode, out.headers['set-cookie']]).toEqual([204, expect.stringContaining('Max-Age=0')]);
    expect(await asked(cookie)).toBeNull();
  });

  it('gets a new secret each hour; the one before holds for a minute; all end after a shift', async () => {
    const first = await test.signIn('boss');
    test.pass(3601);
    const reply = await test.server.inject({ url: API_PATHS.jobs, headers: { cookie: first } });
    const second = cookieOf(reply);
    expect([reply.statusCode, second === first]).toEqual([200, false]);
    expect(
      (await test.server.inject({ url: API_PATHS.jobs, headers: { cookie: first } })).headers['set-cookie'],
    ).toBeUndefined();
    test.pass(61);
    expect(await asked(first)).toBeNull();
    expect(await asked(second)).not.toBeNull();
    test.pass(11 * 3600);
    expect(await asked(second)).toBeNull();
  });

  it('ends everywhere with a new password, and where an administrator says so', async () => {
    const [one, two] = [await test.signIn('boss'), await test.signIn('boss')];
    const change = { password: passwordOf('boss'), next: 'another long password' };
    const reply = await test.server.inject({
      method: 'POST',
      url: API_PATHS.sessionPassword,
      headers: { cookie: one },
      payload: change,
    });
    expect(reply.statusCode).toBe(200);
    expect([await asked(one), await asked(two)]).toEqual([null, null]);
    const id = await test.add('op', false, { main: 'operator' });
    const theirs = await test.signIn('op');
    await test.server.inject({
      method: 'DELETE',
      url: `/api/accounts/${id}/sessions`,
      headers: { cookie: cookieOf(reply) },
    });
    expect(await asked(theirs)).toBeNull();
  });

  it('holds for an answer that goes on for long until it ends, the person is put out of the shop, or the account is shut', async () => {
    const { company, at: now, add } = test;
    const accounts = new Accounts({ company, now, newId: () => 'none' });
    const id = await add('op', false, { main: 'operator' });
    const begin = async () => {
      const cookie = await test.signIn('op');
      const who = await accounts.whoSends({ cookie }, { secure: false, port: 80 });
      if (who === null) throw new Error('not signed in');
      expect(await accounts.mayStill('look', who)).toBe(true);
      return who;
    };
    const out = await begin();
    await company.people.setRights(id, { administrator: false, shut: false, shops: { yard: 'operator' } });
    expect(await accounts.mayStill('look', out)).toBe(false);
    await company.people.setRights(id, { administrator: false, shut: false, shops: { main: 'viewer' } });
    expect(await accounts.mayStill('look', out)).toBe(true);
    expect(await accounts.mayStill('engineer', out)).toBe(false);
    const shut = await begin();
    await company.people.setRights(id, { administrator: false, shut: true, shops: { main: 'operator' } });
    expect(await accounts.mayStill('look', shut)).toBe(false);
    await company.people.setRights(id, { administrator: false, shut: false, shops: { main: 'operator' } });
    const late = await begin();
    test.pass(13 * 3600);
    expect(await accounts.mayStill('look', late)).toBe(false);
  });

  it('looks at one of the own shops, and by the header at the shop a page was opened for', async () => {
    await test.add('op', false, { main: 'operator', yard: 'viewer' });
    await test.add('main only', false, { main: 'operator' });
    const cookie = await test.signIn('op');
    const job = await test.company.shop('yard').create({ text: 'a', title: 'of the yard', revision: null });
    const url = `/api/jobs/${job.id}`;
    expect((await test.server.inject({ url, headers: { cookie } })).statusCode).toBe(404);
    expect((await test.server.inject({ url, headers: { cookie, 'furrow-shop': 'yard' } })).statusCode).toBe(
      200,
    );
    const to = await test.server.inject({
      method: 'PUT',
      url: API_PATHS.sessionShop,
      headers: { cookie },
      payload: { shop: 'yard' },
    });
    expect(to.json<Session>().signed_in).toMatchObject({ role: 'viewer', shop: { id: 'yard' } });
    expect((await test.server.inject({ url, headers: { cookie } })).statusCode).toBe(200);
    const stranger = await test.signIn('main only');
    const refused = {
      method: 'PUT',
      url: API_PATHS.sessionShop,
      headers: { cookie: stranger },
      payload: { shop: 'yard' },
    } as const;
    expect((await test.server.inject(refused)).statusCode).toBe(404);
  });
});

describe('a one-time link', () => {
  it('sets a password once, a long one, and no link but the newest password counts', async () => {
    const cookie = await test.signIn('boss');
    const headers = { cookie };
    const made = await test.server.inject({
      method: 'POST',
      url: API_PATHS.accounts,
      headers,
      payload: { name: 'new', shops: { main: 'viewer' } },
    });
    const account = made.json<Account[]>().find(({ name }) => name === 'new')!;
    expect(account).toMatchObject({ opened: false, shops: { main: 'viewer' } });
    const link = await test.server.inject({
      method: 'POST',
      url: `/api/accounts/${account.id}/link`,
      headers,
    });
    const secret = link.json<{ path: string }>().path.split('link=')[1]!;
    const use = (password: string) =>
      test.server.inject({ method: 'POST', url: API_PATHS.sessionLink, payload: { link: secret, password } });
    expect((await use('short')).statusCode).toBe(400);
    expect((await use('long enough to be one')).statusCode).toBe(200);
    expect((await use('another that is long')).json()).toMatchObject({ code: 'LINK_REFUSED' });
    expect((await test.server.inject(signInRequest('NEW', 'long enough to be one'))).statusCode).toBe(200);
  });

  it('holds for a day', async () => {
    const cookie = await test.signIn('boss');
    const id = await test.add('op', false);
    const link = await test.server.inject({
      method: 'POST',
      url: `/api/accounts/${id}/link`,
      headers: { cookie },
    });
    const secret = link.json<{ path: string }>().path.split('link=')[1]!;
    test.pass(86_401);
    const used = await test.server.inject({
      method: 'POST',
      url: API_PATHS.sessionLink,
      payload: { link: secret, password: 'long enough to be one' },
    });
    expect(used.json()).toMatchObject({ code: 'LINK_REFUSED' });
  });
});

describe('an administrator', () => {
  it('is told in words what cannot be', async () => {
    const headers = { cookie: await test.signIn('boss') };
    const [boss] = (await test.server.inject({ url: API_PATHS.accounts, headers })).json<Account[]>();
    const put = (payload: object) =>
      test.server.inject({ method: 'PUT', url: `/api/accounts/${boss!.id}`, headers, payload });
    expect((await put({ administrator: false, shut: false, shops: {} })).json()).toMatchObject({
      code: 'ACCOUNT_LAST_ADMINISTRATOR',
    });
    expect((await put({ administrator: true, shut: false, shops: { mine: 'viewer' } })).json()).toMatchObject(
      { code: 'ACCOUNT_NOT_FOUND' },
    );
    const again = await test.server.inject({
      method: 'POST',
      url: API_PATHS.accounts,
      headers,
      payload: { name: 'BOSS' },
    });
    expect(again.json()).toMatchObject({ code: 'ACCOUNT_EXISTS' });
    for (const id of ['../etc', 'A', 'x'.repeat(41), "'; drop table shop"]) {
      const shop = await test.server.inject({
        method: 'POST',
        url: API_PATHS.shops,
        headers,
        payload: { id, name: 'x' },
      });
      expect(shop.statusCode).toBe(400);
    }
  });

  it('takes a token from a machine for good', async () => {
    const headers = { cookie: await test.signIn('boss') };
    const made = (
      await test.server.inject({
        method: 'POST',
        url: API_PATHS.machines,
        headers,
        payload: { shop: 'yard', name: 'logger' },
      })
    ).json<{ id: string; token: string }>();
    const send = () =>
      test.server.inject({
        method: 'POST',
        url: API_PATHS.originals,
        headers: { authorization: `Bearer ${made.token}`, 'content-type': 'application/octet-stream' },
        payload: 'a,b\n1,2\n',
      });
    expect((await send()).statusCode).toBe(201);
    await test.server.inject({ method: 'DELETE', url: `/api/machines/${made.id}`, headers });
    expect((await send()).statusCode).toBe(401);
  });
});

describe('a server that is open to the network', () => {
  const address = new URL('https://bench.example');
  const proxied = { host: 'bench.example', 'x-forwarded-proto': 'https' };

  it('behind a proxy speaks to that alone, of its own address and of encrypted lines alone', async () => {
    const open = await testCompany({ address, proxy: '10.0.0.2' });
    const ask = async (remoteAddress: string, headers: Record<string, string>): Promise<string> => {
      const { statusCode, json } = await open.server.inject({
        url: API_PATHS.session,
        remoteAddress,
        headers,
      });
      return statusCode === 200 ? '200' : json<{ code: string }>().code;
    };
    expect(await ask('10.0.0.2', proxied)).toBe('200');
    expect(await ask('10.0.0.3', proxied)).toBe('HOST_REFUSED');
    expect(await ask('10.0.0.2', { ...proxied, 'x-forwarded-proto': 'http' })).toBe('HOST_REFUSED');
    expect(await ask('10.0.0.2', { ...proxied, host: '127.0.0.1:80' })).toBe('HOST_REFUSED');
    expect(await ask('10.0.0.2', { ...proxied, origin: 'https://bench.example' })).toBe('200');
    for (const origin of [
      'http://bench.example',
      'https://yard.example',
      'https://bench.example.yard.example',
      'null',
    ])
      expect([origin, await ask('10.0.0.2', { ...proxied, origin })]).toEqual([origin, 'ORIGIN_REFUSED']);
    expect(await ask('10.0.0.2', { ...proxied, 'sec-fetch-site': 'cross-site' })).toBe('ORIGIN_REFUSED');
    await open.cleanUp();
  });

  it('binds its cookie to encrypted lines of its own host, and counts failures by who is behind the proxy', async () => {
    const open = await testCompany({ address, proxy: '10.0.0.2' });
    const from = (behind: string, name: string, password: string) =>
      open.server.inject({
        ...signInRequest(name, password),
        remoteAddress: '10.0.0.2',
        headers: { ...proxied, 'x-forwarded-for': behind },
      });
    for (let tries = 0; tries < 6; tries++) await from('192.0.2.7', 'boss', 'wrong');
    expect((await from('192.0.2.7', 'boss', 'wrong')).statusCode).toBe(429);
    // what somebody writes in front of the proxy's own word counts for nothing
    expect((await from('198.51.100.1, 192.0.2.7', 'boss', 'wrong')).statusCode).toBe(429);
    const elsewhere = await from('192.0.2.8', 'boss', 'wrong');
    expect([elsewhere.statusCode, elsewhere.headers['strict-transport-security']]).toEqual([
      401,
      'max-age=31536000',
    ]);
    await open.company.people.addAccount({ id: 'a', name: 'boss', administrator: true });
    await open.company.people.addLink(hashOf('link'), 'a', '2030-01-01T00:00:00.000Z');
    const used = await open.server.inject({
      method: 'POST',
      url: API_PATHS.sessionLink,
      remoteAddress: '10.0.0.2',
      headers: proxied,
      payload: { link: 'link', password: 'long enough to be one' },
    });
    expect(used.headers['set-cookie']).toMatch(
      /^__Host-furrow=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict; Secure$/,
    );
    await open.cleanUp();
  });
});
