import type { IncomingHttpHeaders } from 'node:http';
import { type Caller, mayDo, RIGHTS, type Right, SHOP_HEADER } from '@furrow/contract';
import type { Actor, Company, PeopleStore, StoredAccount, StoredShop } from '@furrow/store';
import { Refused } from '../guard/refused.ts';
import { openPasswords, type PasswordCost, type Passwords } from './password.ts';
import type { Identity, ProviderPlace } from './provider.ts';
import { hashOf, newSecret } from './secret.ts';
import { type CookiePlace, sentSecret, sessionCookie } from './session-cookie.ts';
import { openSignIn, type SignIn } from './sign-in.ts';

/** Who asks, in which shop, as what. */
export interface Who {
  readonly caller: Caller;
  /** The shop that is looked at; null for a person who belongs to none. */
  readonly shop: string | null;
  /** The person; undefined for a machine. */
  readonly account: StoredAccount | undefined;
  /** What the history calls whoever it is. */
  readonly name: string;
  /** Identifier of the account or the machine. */
  readonly id: string;
  /** Hash of the session's secret. */
  readonly session: string | undefined;
  /** A cookie that takes the place of the one that was sent. */
  readonly cookie: string | undefined;
}

declare module 'fastify' {
  interface FastifyRequest {
    /** Who asks; null where nobody has signed in. */
    who: Who | null;
    /** Whether whoever asked still may, for an answer that goes on for long. */
    mayStill: () => Promise<boolean>;
  }
}

/** A session ends after a shift, and its secret is exchanged each hour [ms]. */
const SESSION = 12 * 3_600_000;
const EXCHANGE = 3_600_000;
/** For how long the secret before holds for what is under way [ms]. */
const GRACE = 60_000;
/** How long a one-time link holds [ms]. */
const LINK = 24 * 3_600_000;

export interface AccountsParts {
  readonly company: Company;
  readonly now: () => Date;
  readonly newId: () => string;
  /** What hashing a password costs; the usual if left out. */
  readonly cost?: PasswordCost;
  /** The provider that people may sign in by; none if left out. */
  readonly provider?: ProviderPlace;
}

/** Who may come in, and by what. */
export class Accounts {
  readonly company: Company;
  readonly passwords: Passwords;
  readonly newId: () => string;
  readonly provider: ProviderPlace | undefined;
  readonly #signIn: SignIn;
  readonly #now: () => Date;

  constructor({ company, now, newId, cost, provider }: AccountsParts) {
    this.provider = provider;
    this.company = company;
    this.passwords = openPasswords(cost);
    this.newId = newId;
    this.#signIn = openSignIn(company.people, this.passwords, now);
    this.#now = now;
  }

  /** Who sends a request; null for nobody. */
  async whoSends(headers: IncomingHttpHeaders, where: CookiePlace): Promise<Who | null> {
    const bearer = /^Bearer (\S{20,200})$/iu.exec(headers.authorization ?? '')?.[1];
    if (bearer !== undefined) return this.#machine(bearer);
    const secret = sentSecret(headers, where);
    if (secret === undefined) return null;
    const hash = hashOf(secret);
    const session = await this.company.people.session(hash);
    if (session === undefined) return null;
    const { account, made_at } = session;
    const asked = headers[SHOP_HEADER];
    const shop = typeof asked === 'string' ? asked : session.shop;
    const shops = await this.shopsOf(account);
    const known = shops.some(({ id }) => id === shop) ? shop : null;
    if (typeof asked === 'string' && known === null) throw noShop();
    const due = this.#now().getTime() - Date.parse(made_at) > EXCHANGE;
    const next = due ? await this.#exchange(hash) : undefined;
    return {
      caller: callerIn(account, known),
      shop: known,
      account,
      id: account.id,
      name: account.name,
      session: next === undefined ? hash : hashOf(next),
      cookie: next === undefined ? undefined : sessionCookie(next, where),
    };
  }

  /** Whether who was let in still may do what they were let in for: signed out, shut or put out of the shop, they may not. */
  async mayStill(right: Right, { session, shop }: Who): Promise<boolean> {
    if (session === undefined) return true;
    const held = await this.company.people.session(session);
    if (held === undefined) return false;
    const shops = await this.shopsOf(held.account);
    if (shop !== null && !shops.some(({ id }) => id === shop)) return false;
    return mayDo(right, callerIn(held.account, shop));
  }

  /** The shops and people, worked on by somebody, whom the history names. */
  peopleBy(who: Who): PeopleStore {
    return this.company.peopleBy(actorOf(who));
  }

  /** Signs in by name and password; the secret of the new session, never one that was sent. */
  async signIn(name: string, password: string, place: string): Promise<string> {
    return this.#begin(await this.#signIn.signIn(name, password, place));
  }

  /**
   * Signs in whoever a provider says it is. The first time the account is found by its name, and bound to what the
   * provider knows its person by; whoever has the name later is somebody else.
   */
  async signInBy({ issuer, subject, name }: Identity): Promise<string> {
    const { people } = this.company;
    const known = await people.identified(issuer, subject);
    const account = known ?? (name === undefined ? undefined : (await people.accountNamed(name))?.account);
    if (account === undefined || account.shut) throw noAccountFor(name);
    if (known === undefined) {
      const bound = await this.company.peopleBy(actorOf(account)).bindIdentity(issuer, subject, account.id);
      if (!bound) throw noAccountFor(name);
    }
    return this.#begin(account);
  }

  /** Sets a password by a link, and signs in. */
  async useLink(link: string, password: string): Promise<string> {
    const refused = (): Refused =>
      new Refused(
        'LINK_REFUSED',
        'This link was used already, or is too old. Ask an administrator for a new one.',
      );
    // no password is hashed for a link that does not hold
    const linked = await this.company.people.linked(hashOf(link));
    if (linked === undefined) throw refused();
    const people = this.company.peopleBy(actorOf(linked));
    const account = await people.useLink(hashOf(link), await this.passwords.hash(password));
    if (account === undefined) throw refused();
    return this.#begin(account);
  }

  /** Makes a link by which the person of an account sets a password. */
  async makeLink(accountId: string, by: Actor): Promise<{ readonly path: string; readonly ends_at: string }> {
    const secret = newSecret();
    const ends_at = new Date(this.#now().getTime() + LINK).toISOString();
    await this.company.peopleBy(by).addLink(hashOf(secret), accountId, ends_at);
    // behind the sign of a fragment it is sent to no server and stands in no log
    return { path: `/sign-in#link=${secret}`, ends_at };
  }

  /** The shops that a person may look at. */
  async shopsOf(account: StoredAccount): Promise<readonly StoredShop[]> {
    const all = await this.company.people.shops();
    return account.administrator ? all : all.filter(({ id }) => account.shops[id] !== undefined);
  }

  async #begin(account: StoredAccount): Promise<string> {
    const secret = newSecret();
    const [first] = await this.shopsOf(account);
    const ends = new Date(this.#now().getTime() + SESSION).toISOString();
    await this.company.people.addSession(hashOf(secret), account.id, first?.id ?? null, ends);
    return secret;
  }

  async #exchange(hash: string): Promise<string | undefined> {
    const next = newSecret();
    const holdsUntil = new Date(this.#now().getTime() + GRACE).toISOString();
    return (await this.company.people.exchangeSession(hash, hashOf(next), holdsUntil)) ? next : undefined;
  }

  async #machine(token: string): Promise<Who | null> {
    const machine = await this.company.people.machine(hashOf(token));
    if (machine === undefined) return null;
    const { shop, name, id } = machine;
    return { caller: 'machine', shop, name, id, account: undefined, session: undefined, cookie: undefined };
  }
}

/** Whoever asks, as the history names them. */
export function actorOf({ id, name }: Pick<Who, 'id' | 'name'>): Actor {
  return { id, name };
}

/** Refuses whoever may not do what a request asks for. */
export function checkRight(right: Right, who: Who | null): void {
  if (right === 'open') return;
  if (who === null)
    throw new Refused('SIGN_IN_NEEDED', 'Nobody has signed in here, or the sign-in has ended. Sign in.');
  if (mayDo(right, who.caller)) return;
  const may = RIGHTS[right].callers.filter((caller) => caller !== 'machine').join(', ');
  throw new Refused(
    'NOT_PERMITTED',
    `This is not for ${article(who.caller)}: to ${RIGHTS[right].meaning} is for: ${may}.`,
  );
}

/** The shop that is looked at, or the refusal where there is none. */
export function shopOf(who: Who): string {
  return who.shop ?? noShopYet();
}

function callerIn(account: StoredAccount, shop: string | null): Caller {
  if (account.administrator) return 'administrator';
  return (shop === null ? undefined : account.shops[shop]) ?? 'viewer';
}

function article(caller: Caller): string {
  return /^[aeio]/u.test(caller) ? `an ${caller}` : `a ${caller}`;
}

function noAccountFor(name: string | undefined): Refused {
  return new Refused(
    'SIGN_IN_REFUSED',
    `The provider knows you${name === undefined ? '' : ` as “${name.slice(0, 80)}”`}, but there is no open account of that name here, or it is somebody else’s. Ask an administrator.`,
  );
}

function noShop(): Refused {
  return new Refused('ACCOUNT_NOT_FOUND', 'You belong to no shop of this name.');
}

function noShopYet(): never {
  throw new Refused('NOT_PERMITTED', 'You belong to no shop yet. Ask an administrator to let you into one.');
}
