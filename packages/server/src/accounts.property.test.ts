import { type Caller, mayDo, PERMISSIONS, RIGHTS, ROLES } from '@furrow/contract';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type TestCompany, testCompany } from './testing/test-company.ts';

/** Fills an address with identifiers of the other shop, which nobody here belongs to but the administrator. */
let test: TestCompany;
let other: Readonly<Record<string, string>>;
const headersOf = new Map<Caller, Record<string, string>>();
beforeAll(async () => {
  test = await testCompany();
  await test.add('boss', true);
  headersOf.set('administrator', { cookie: await test.signIn('boss') });
  for (const role of ROLES) {
    await test.add(role, false, { main: role });
    headersOf.set(role, { cookie: await test.signIn(role) });
  }
  const made = await test.server.inject({
    method: 'POST',
    url: '/api/machines',
    headers: headersOf.get('administrator')!,
    payload: { shop: 'main', name: 'logger' },
  });
  headersOf.set('machine', { authorization: `Bearer ${made.json<{ token: string }>().token}` });
  const yard = test.company.shop('yard');
  const job = await yard.create({
    text: 'title: secret of the yard',
    title: 'secret of the yard',
    revision: 'r',
  });
  await yard.kit.save({ text: 'title: secret kit', title: 'secret kit', revision: null }, 0);
  await yard.knowledge.save({ text: 'title: secret trials', title: 'secret trials', revision: null }, 0);
  await yard.readings.save(job.id, { text: `file: ${'ab'.repeat(32)}`, title: '', revision: null }, 0);
  await yard.faultCases.put({
    id: '00000000-0000-4000-8000-00000000f001',
    cause: 'loose_joint',
    symptoms: {},
  });
  await yard.loggers.put({ revision: 'c'.repeat(64), name: 'secret logger', text: 'secret' });
  const run = await yard.runs.add(job.id, {
    id: '00000000-0000-4000-8000-00000000a001',
    name: 'secret run',
    revision_number: 1,
    kit_number: null,
    knowledge_number: null,
    logger: null,
    rehearsal: false,
    source: null,
    original: { sha256: 'ab'.repeat(32), bytes: 1 },
  });
  other = {
    id: job.id,
    run: run!.id,
    number: '1',
    file: 'set-up-card.pdf',
    sha256: 'ab'.repeat(32),
    revision: 'c'.repeat(64),
    name: 'defect-pocket',
  };
});
afterAll(async () => {
  expect(test.faults).toEqual([]);
  await test.cleanUp();
});

const ROUTES = Object.entries(PERMISSIONS).map(([route, right]) => {
  const [method = '', path = ''] = route.split(' ');
  return { route, right, method: method as 'GET' | 'POST' | 'PUT' | 'DELETE', path };
});

function addressOf(path: string): string {
  return path.replace(
    /:(\w+)/gu,
    (_, name: string) => (path.startsWith('/api/runs') ? other['run'] : other[name]) ?? name,
  );
}

async function everythingOfTheYard(): Promise<string> {
  const yard = test.company.shop('yard');
  const id = other['id']!;
  return JSON.stringify([
    await yard.list(),
    await yard.listBin(),
    await yard.revisions(id),
    await yard.kit.revisions(),
    await yard.knowledge.revisions(),
    await yard.readings.revisions(id),
    await yard.commissioning.get(id),
    await yard.printed.list(id),
    await yard.runs.list(id),
    await yard.loggers.list(),
    await yard.faultCases.list(),
  ]);
}

describe.each([...ROLES, 'administrator', 'machine', 'nobody'] as const)('%s', (caller) => {
  it('may do exactly what the table says', async () => {
    for (const { route, right, method, path } of ROUTES) {
      // signing out and changing passwords would end the test
      if (right === 'own' || right === 'open') continue;
      const reply = await test.server.inject({
        method,
        url: addressOf(path).replace(other['id']!, 'none').replace(other['run']!, 'none'),
        headers: caller === 'nobody' ? {} : headersOf.get(caller)!,
        ...(method !== 'GET' && method !== 'DELETE' && { payload: { nothing: true } }),
      });
      const refused = caller === 'nobody' ? 401 : 403;
      const may = caller !== 'nobody' && mayDo(right, caller);
      expect([route, reply.statusCode === refused], reply.body).toEqual([route, !may]);
      expect([route, reply.statusCode < 500], reply.body).toEqual([route, true]);
    }
  });

  it('of one shop finds nothing of another and changes nothing there, by whatever address', async () => {
    if (caller === 'administrator') return;
    const before = await everythingOfTheYard();
    for (const { route, method, path, right } of ROUTES) {
      if (right === 'own' || right === 'open') continue;
      for (const shop of [undefined, 'yard']) {
        const reply = await test.server.inject({
          method,
          url: addressOf(path),
          headers: {
            ...(caller === 'nobody' ? {} : headersOf.get(caller)!),
            ...(shop && { 'furrow-shop': shop }),
          },
          ...(method !== 'GET' && method !== 'DELETE' && { payload: { text: 'title: mine', based_on: 1 } }),
        });
        expect([route, /secret/u.test(reply.body)], reply.body).toEqual([route, false]);
        if (shop === 'yard' && caller !== 'machine')
          expect([route, reply.statusCode >= 400]).toEqual([route, true]);
      }
    }
    expect(await everythingOfTheYard()).toBe(before);
  });
});

describe('the table of rights', () => {
  it('gives a right to whoever the documents say, and to nobody else', () => {
    for (const { right } of ROUTES) expect(Object.keys(RIGHTS)).toContain(right);
    expect(RIGHTS.administer.callers).toEqual(['administrator']);
    for (const [right, { callers }] of Object.entries(RIGHTS))
      expect([right, (callers as readonly Caller[]).includes('machine')]).toEqual([
        right,
        right === 'intake' || right === 'open',
      ]);
  });
});
