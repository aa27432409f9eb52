import { generateKeyPairSync, type JsonWebKey } from 'node:crypto';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import Provider, { type Configuration } from 'oidc-provider';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type TestCompany, testCompany } from './testing/test-company.ts';

const CLIENT = { client_id: 'furrow', client_secret: 'a secret of the two' };
/** People as the provider knows them. */
const PEOPLE: Readonly<Record<string, { email: string; email_verified: boolean }>> = {
  's-ada': { email: 'ada@shop.example', email_verified: true },
  's-bo': { email: 'bo@shop.example', email_verified: false },
  's-cy': { email: 'cy@shop.example', email_verified: true },
  's-other': { email: 'ada@shop.example', email_verified: true },
};

let http: Server;
let issuer: string;
/** Answers for the provider; another one takes its place when its keys change. */
let answers: ReturnType<Provider['callback']>;

function newKeys(kid: string): { keys: JsonWebKey[] } {
  const { privateKey } = generateKeyPairSync('rsa', { modulusLength: 2048 });
  return { keys: [{ ...privateKey.export({ format: 'jwk' }), kid, alg: 'RS256', use: 'sig' } as JsonWebKey] };
}

function startProvider(kid: string, more: Partial<Configuration> = {}): void {
  const provider = new Provider(issuer, {
    clients: [
      {
        ...CLIENT,
        redirect_uris: ['http://127.0.0.1/sign-in/return'],
        response_types: ['code'],
        grant_types: ['authorization_code'],
      },
    ],
    jwks: newKeys(kid) as never,
    cookies: { keys: ['for a test'] },
    pkce: { methods: ['S256'], required: () => true },
    claims: { openid: ['sub'], email: ['email', 'email_verified'] },
    conformIdTokenClaims: false,
    findAccount: (_context, id) => ({ accountId: id, claims: () => ({ sub: id, ...PEOPLE[id] }) }),
    ...more,
  });
  answers = provider.callback();
}

beforeAll(async () => {
  http = createServer((request, response) => answers(request, response));
  await new Promise<void>((resolve) => http.listen(0, '127.0.0.1', resolve));
  issuer = `http://127.0.0.1:${(http.address() as AddressInfo).port}`;
});
afterAll(() => {
  http.closeAllConnections();
  http.close();
});

let test: TestCompany;
beforeEach(async () => {
  startProvider('first');
  test = await testCompany(undefined, {
    issuer: new URL(issuer),
    clientId: CLIENT.client_id,
    secret: CLIENT.client_secret,
    claim: 'email',
    name: 'the provider',
  });
  await test.add('boss', true);
  await test.add('Ada@Shop.example', false, { yard: 'operator' });
  await test.add('bo@shop.example', false, { yard: 'operator' });
  return () => test.cleanUp();
});

const HERE = { host: '127.0.0.1:80' };

/** The address that our server sends a browser to, and the cookie that it is to hold. */
async function begun(): Promise<{ url: URL; cookie: string }> {
  const reply = await test.server.inject({ url: '/sign-in/provider', headers: HERE });
  expect(reply.statusCode, reply.body).toBe(303);
  const set = String(reply.headers['set-cookie']);
  expect(set).toMatch(/^furrow_session_80-provider=[\w-]+; Path=\/; HttpOnly; SameSite=Lax; Max-Age=600$/u);
  return { url: new URL(String(reply.headers.location)), cookie: set.split(';')[0]! };
}

/** Goes through the provider's own pages as a person does; the address that it sends the browser back to. */
async function atProvider(start: URL, person: string): Promise<URL> {
  const jar = new Map<string, string>();
  let url = start;
  let body: URLSearchParams | undefined;
  for (let steps = 0; steps < 12; steps++) {
    const cookie = [...jar].map(([name, value]) => `${name}=${value}`).join('; ');
    const reply = await fetch(url, {
      redirect: 'manual',
      headers: { cookie },
      ...(body !== undefined && { method: 'POST', body }),
    });
    body = undefined;
    for (const set of reply.headers.getSetCookie()) {
      const [, name = '', value = ''] = /^([^=]+)=([^;]*)/u.exec(set) ?? [];
      jar.set(name, value);
    }
    const location = reply.headers.get('location');
    if (location !== null) {
      url = new URL(location, url);
      if (url.port !== start.port) return url;
      continue;
    }
    const page = await reply.text();
    const prompt = /name="prompt" value="(\w+)"/u.exec(page)?.[1];
    const action = /action="([^"]+)"/u.exec(page)?.[1];
    if (prompt === undefined || action === undefined) throw new Error(page);
    url = new URL(action, url);
    body = new URLSearchParams({ prompt, login: person, password: 'any' });
  }
  throw new Error('the provider leads nowhere');
}

const back = (returned: URL, cookie: string) =>
  test.server.inject({ url: `/sign-in/return${returned.search}`, headers: { ...HERE, cookie } });

/** Who is signed in by what our server answers to the return. */
async function signedIn(reply: Awaited<ReturnType<typeof back>>): Promise<unknown> {
  const cookie = [reply.headers['set-cookie']].flat().map(String);
  const session = cookie.find((each) => /^furrow_session_80=/u.test(each))?.split(';')[0];
  if (session === undefined) return reply.json<{ code: string }>().code;
  const asked = await test.server.inject({ url: '/api/session', headers: { cookie: session } });
  return asked.json<{ signed_in: { name: string } }>().signed_in.name;
}

async function whole(person: string): Promise<unknown> {
  const { url, cookie } = await begun();
  return signedIn(await back(await atProvider(url, person), cookie));
}

describe('signing in by a provider', () => {
  it('asks with state, nonce and a proof key, and lets in whom the provider vouches for', async () => {
    const { url } = await begun();
    expect(Object.fromEntries(url.searchParams)).toMatchObject({
      response_type: 'code',
      client_id: 'furrow',
      redirect_uri: 'http://127.0.0.1/sign-in/return',
      code_challenge_method: 'S256',
      code_challenge: expect.stringMatching(/^[\w-]{43}$/u),
      state: expect.stringMatching(/^[\w-]{43}$/u),
      nonce: expect.stringMatching(/^[\w-]{43}$/u),
    });
    expect(await whole('s-ada')).toBe('Ada@Shop.example');
    expect((await test.company.audit()).problems).toEqual([]);
  });

  it('knows a person again by what the provider knows it by, not by a name that another has now', async () => {
    expect(await whole('s-ada')).toBe('Ada@Shop.example');
    expect(await whole('s-other')).toBe('SIGN_IN_REFUSED');
    expect(await whole('s-ada')).toBe('Ada@Shop.example');
  });

  it('refuses a name that the provider does not vouch for, nobody’s name, and a shut account', async () => {
    expect(await whole('s-bo')).toBe('SIGN_IN_REFUSED');
    expect(await whole('s-cy')).toBe('SIGN_IN_REFUSED');
    expect(await whole('s-ada')).toBe('Ada@Shop.example');
    const ada = (await test.company.people.accounts()).find(({ name }) => name.startsWith('Ada'))!;
    await test.company.people.setRights(ada.id, { administrator: false, shut: true, shops: {} });
    expect(await whole('s-ada')).toBe('SIGN_IN_REFUSED');
  });

  it('goes on when the provider changes its keys', async () => {
    expect(await whole('s-ada')).toBe('Ada@Shop.example');
    startProvider('second');
    expect(await whole('s-ada')).toBe('Ada@Shop.example');
  });

  it('refuses a return that was not begun here, was begun elsewhere, was changed, or comes twice', async () => {
    const { url, cookie } = await begun();
    const returned = await atProvider(url, 's-ada');
    expect(await signedIn(await back(returned, ''))).toBe('SIGN_IN_REFUSED');
    const other = await begun();
    expect(await signedIn(await back(returned, other.cookie))).toBe('SIGN_IN_REFUSED');
    const forged = new URL(returned);
    forged.searchParams.set('state', 'x'.repeat(43));
    expect(await signedIn(await back(forged, cookie))).toBe('SIGN_IN_REFUSED');
    const elsewhere = new URL(returned);
    elsewhere.searchParams.set('iss', 'http://127.0.0.1:1');
    expect(await signedIn(await back(elsewhere, cookie))).toBe('SIGN_IN_REFUSED');
    expect(await signedIn(await back(returned, cookie))).toBe('Ada@Shop.example');
    expect(await signedIn(await back(returned, cookie))).toBe('SIGN_IN_REFUSED');
    expect(test.faults.length).toBeGreaterThan(2);
    expect(test.faults.join('')).not.toContain(CLIENT.client_secret);
  });

  it('refuses an identity that is signed by a key that the provider does not publish', async () => {
    const { url, cookie } = await begun();
    const returned = await atProvider(url, 's-ada');
    const honest = answers;
    const published = newKeys('first');
    answers = (request, response) => {
      if (request.url !== '/jwks') return honest(request, response);
      const keys = published.keys.map(({ kty, n, e }) => ({ kty, n, e, kid: 'first', alg: 'RS256' }));
      response.setHeader('content-type', 'application/json');
      response.end(JSON.stringify({ keys }));
      return Promise.resolve();
    };
    expect(await signedIn(await back(returned, cookie))).toBe('SIGN_IN_REFUSED');
    expect(test.faults.join('')).toMatch(/signature/iu);
  });

  it('says so where the provider is not there, and passwords go on', async () => {
    answers = (_request, response) => {
      response.statusCode = 502;
      response.end();
      return Promise.resolve();
    };
    const reply = await test.server.inject({ url: '/sign-in/provider', headers: HERE });
    expect([reply.statusCode, reply.json<{ code: string }>().code]).toEqual([401, 'SIGN_IN_REFUSED']);
    expect(await test.signIn('boss')).toMatch(/^furrow_session/u);
  });
});
