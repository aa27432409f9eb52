import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Company, openCompany, openOriginals, type ShopRole } from '@furrow/store';
import type { InjectOptions } from 'fastify';
import { hashOf } from '../account/secret.ts';
import { type AccountsOpen, buildServer } from '../build-server.ts';
import type { ZodServer } from '../routes/zod-server.ts';
import { openWork } from '../work/open-work.ts';
import { EXAMPLES } from './test-server.ts';

const WORK = openWork();
/** Hashes that cost nothing worth waiting for. */
const CHEAP = { power: 4 };

/** A server for the people of a company, with a clock that a test sets. */
export interface TestCompany {
  readonly server: ZodServer;
  readonly company: Company;
  readonly faults: string[];
  /** Moves the clock [s]. */
  readonly pass: (seconds: number) => void;
  readonly at: () => Date;
  /** Lets a person in, with a password that is the name. */
  readonly add: (name: string, administrator: boolean, shops?: Record<string, ShopRole>) => Promise<string>;
  /** Signs a person in; the cookie. */
  readonly signIn: (name: string) => Promise<string>;
  readonly cleanUp: () => Promise<void>;
}

/** Opens a company with the shops `main` and `yard`. */
export async function testCompany(
  open?: AccountsOpen['open'],
  provider?: AccountsOpen['provider'],
): Promise<TestCompany> {
  const folder = mkdtempSync(join(tmpdir(), 'furrow-company-'));
  let time = Date.UTC(2026, 0, 5, 6);
  let ids = 0;
  const now = (): Date => new Date(time);
  const newId = (): string => `00000000-0000-4000-8000-${String(++ids).padStart(12, '0')}`;
  const company = await openCompany({ folder }, { now, newId });
  await company.people.putShop({ id: 'yard', name: 'Yard' });
  const faults: string[] = [];
  const originalsOf = (shop: string) => openOriginals(join(folder, 'shops', shop), now);
  const server = await buildServer({
    store: company.shop('main'),
    originals: originalsOf('main'),
    work: WORK,
    background: WORK,
    accounts: {
      ...{ company, now, newId, cost: CHEAP, originalsOf },
      ...(open !== undefined && { open }),
      ...(provider !== undefined && { provider }),
    },
    appFolder: undefined,
    exampleFolder: EXAMPLES,
    log: (message) => void faults.push(message),
  });
  const add: TestCompany['add'] = async (name, administrator, shops = {}) => {
    const id = newId();
    await company.people.addAccount({ id, name, administrator });
    await company.people.setRights(id, { administrator, shut: false, shops });
    const secret = `link of ${name}`.padEnd(30, '.');
    await company.people.addLink(hashOf(secret), id, '2030-01-01T00:00:00.000Z');
    const used = await server.inject({
      method: 'POST',
      url: '/api/session/link',
      payload: { link: secret, password: passwordOf(name) },
    });
    if (used.statusCode !== 200) throw new Error(used.body);
    return id;
  };
  return {
    server,
    company,
    faults,
    pass: (seconds) => {
      time += seconds * 1000;
    },
    at: now,
    add,
    signIn: async (name) => cookieOf(await server.inject(signInRequest(name, passwordOf(name)))),
    cleanUp: async () => {
      await server.close();
      await company.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A password that a test can tell. */
export function passwordOf(name: string): string {
  return `the password of ${name}`;
}

/** The request by which a person signs in. */
export function signInRequest(name: string, password: string): InjectOptions {
  return { method: 'POST', url: '/api/session', payload: { name, password } };
}

/** The cookie that an answer sets, as it is sent back. */
export function cookieOf(reply: { readonly headers: Readonly<Record<string, unknown>> }): string {
  return String(reply.headers['set-cookie']).split(';')[0] ?? '';
}
