import {
  API_PATHS,
  accountLinkSchema,
  accountRightsSchema,
  accountSchema,
  errorSchema,
  identifierSchema,
  linkUseSchema,
  machineSchema,
  madeMachineSchema,
  newAccountSchema,
  newMachineSchema,
  passwordChangeSchema,
  type Session,
  sessionSchema,
  shopChoiceSchema,
  shopNameSchema,
  shopSchema,
  signInSchema,
} from '@furrow/contract';
import type { AccountRights } from '@furrow/store';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { type Accounts, actorOf, type Who } from '../account/accounts.ts';
import { hashOf, newSecret } from '../account/secret.ts';
import { type CookiePlace, noSessionCookie, sessionCookie } from '../account/session-cookie.ts';
import { Refused } from '../guard/refused.ts';
import type { ZodServer } from './zod-server.ts';

const DONE = z.undefined().describe('Done.');
const refusals = { 400: errorSchema, 401: errorSchema, 403: errorSchema };

/** Who is signed in where nobody needs to: one person at one computer. */
export function openSessionRoutes(server: ZodServer): void {
  server.get(
    API_PATHS.session,
    { schema: { summary: 'Who is signed in', response: { 200: sessionSchema } } },
    () => ({ accounts: false, provider: null, signed_in: null }),
  );
}

/** Signing in and out, and the people, shops and machines of the company. */
export function accountRoutes(server: ZodServer, accounts: Accounts, place: () => CookiePlace): void {
  sessionRoutes(server, accounts, place);
  peopleRoutes(server, accounts);
  shopRoutes(server, accounts);
  machineRoutes(server, accounts);
}

function sessionRoutes(server: ZodServer, accounts: Accounts, place: () => CookiePlace): void {
  const { people } = accounts.company;
  const provider = accounts.provider?.name ?? null;
  const sessionOf = async (who: Who | null): Promise<Session> => {
    if (who?.account === undefined) return { accounts: true, provider, signed_in: null };
    const shops = await accounts.shopsOf(who.account);
    const shop = shops.find(({ id }) => id === who.shop) ?? null;
    const { name, caller: role } = who;
    return { accounts: true, provider, signed_in: { name, role, shop, shops: [...shops] } };
  };
  const signedIn = async (reply: FastifyReply, secret: string): Promise<Session> => {
    const cookie = sessionCookie(secret, place());
    reply.header('set-cookie', cookie);
    return sessionOf(await accounts.whoSends({ cookie: cookie.split(';')[0]! }, place()));
  };
  server.get(
    API_PATHS.session,
    { schema: { summary: 'Who is signed in, in which shop', response: { 200: sessionSchema } } },
    (request) => sessionOf(request.who),
  );
  server.post(
    API_PATHS.session,
    {
      schema: {
        summary: 'Sign in',
        description: 'Answers with a cookie. The more often it fails, the longer the next try has to wait.',
        body: signInSchema,
        response: { 200: sessionSchema, ...refusals, 429: errorSchema },
      },
    },
    async (request, reply) => {
      const { name, password } = request.body;
      const secret = await accounts.signIn(name, password, request.ip);
      // who signs in anew is signed out before
      if (request.who?.session !== undefined) await people.endSession(request.who.session);
      return signedIn(reply, secret);
    },
  );
  server.delete(
    API_PATHS.session,
    { schema: { summary: 'Sign out', response: { 204: DONE, ...refusals } } },
    async (request, reply) => {
      await people.endSession(personOf(request).session);
      return reply.header('set-cookie', noSessionCookie(place())).status(204).send();
    },
  );
  server.put(
    API_PATHS.sessionShop,
    {
      schema: {
        summary: 'Look at another shop',
        body: shopChoiceSchema,
        response: { 200: sessionSchema, ...refusals, 404: errorSchema },
      },
    },
    async (request) => {
      const { session, account, who } = personOf(request);
      const { shop } = request.body;
      if (!(await accounts.shopsOf(account)).some(({ id }) => id === shop)) notFound('shop', shop);
      await people.setSessionShop(session, shop);
      const caller = account.administrator ? 'administrator' : account.shops[shop]!;
      return sessionOf({ ...who, shop, caller });
    },
  );
  server.post(
    API_PATHS.sessionLink,
    {
      schema: {
        summary: 'Set a password by a one-time link, and sign in',
        body: linkUseSchema,
        response: { 200: sessionSchema, ...refusals },
      },
    },
    async (request, reply) =>
      signedIn(reply, await accounts.useLink(request.body.link, request.body.password)),
  );
  server.post(
    API_PATHS.sessionPassword,
    {
      schema: {
        summary: 'Set a new password; every other sign-in of the account ends',
        body: passwordChangeSchema,
        response: { 200: sessionSchema, ...refusals, 429: errorSchema },
      },
    },
    async (request, reply) => {
      const { account, who } = personOf(request);
      const { password, next } = request.body;
      await accounts.signIn(account.name, password, request.ip);
      await accounts.peopleBy(who).setPassword(account.id, await accounts.passwords.hash(next));
      return signedIn(reply, await accounts.signIn(account.name, next, request.ip));
    },
  );
}

function peopleRoutes(server: ZodServer, accounts: Accounts): void {
  const { people } = accounts.company;
  const all = z.array(accountSchema);
  const list = async () =>
    [...(await people.accounts())].map((account) => ({ ...account, shops: { ...account.shops } }));
  const known = async (id: string): Promise<void> => {
    if (!(await people.accounts()).some((account) => account.id === id)) notFound('account', id);
  };
  const setRights = async (who: Who, id: string, rights: AccountRights): Promise<void> => {
    switch (await accounts.peopleBy(who).setRights(id, rights)) {
      case 'set':
        return;
      case 'not found':
        return notFound('account', id);
      case 'unknown shop':
        return notFound('shop', Object.keys(rights.shops).join(', '));
      case 'last administrator':
        throw new Refused(
          'ACCOUNT_LAST_ADMINISTRATOR',
          'This is the last administrator. Make another one first.',
        );
    }
  };
  server.get(
    API_PATHS.accounts,
    { schema: { summary: 'Everybody who may sign in', response: { 200: all, ...refusals } } },
    list,
  );
  server.post(
    API_PATHS.accounts,
    {
      schema: {
        summary: 'Let a person in',
        description: 'The person sets a password by a one-time link, which is asked for next.',
        body: newAccountSchema,
        response: { 201: all, ...refusals, 404: errorSchema, 409: errorSchema },
      },
    },
    async (request, reply) => {
      const { name, administrator, shops } = request.body;
      const known = (await people.shops()).map((shop) => shop.id);
      const missing = Object.keys(shops).find((shop) => !known.includes(shop));
      if (missing !== undefined) notFound('shop', missing);
      const id = accounts.newId();
      const { who } = personOf(request);
      if (!(await accounts.peopleBy(who).addAccount({ id, name, administrator })))
        throw new Refused('ACCOUNT_EXISTS', `There is an account “${name}” already.`);
      await setRights(who, id, { administrator, shut: false, shops });
      return reply.status(201).send(await list());
    },
  );
  server.put(
    API_PATHS.account,
    {
      schema: {
        summary: 'Set what a person may do, where; or shut the account',
        params: identifierSchema,
        body: accountRightsSchema,
        response: { 200: all, ...refusals, 404: errorSchema, 409: errorSchema },
      },
    },
    async (request) => {
      await setRights(personOf(request).who, request.params.id, request.body);
      return list();
    },
  );
  server.post(
    API_PATHS.accountLink,
    {
      schema: {
        summary: 'Make a one-time link by which a person sets a password',
        params: identifierSchema,
        response: { 201: accountLinkSchema, ...refusals, 404: errorSchema },
      },
    },
    async (request, reply) => {
      await known(request.params.id);
      return reply
        .status(201)
        .send(await accounts.makeLink(request.params.id, actorOf(personOf(request).who)));
    },
  );
  server.delete(
    API_PATHS.accountSessions,
    {
      schema: {
        summary: 'Sign a person out everywhere',
        params: identifierSchema,
        response: { 204: DONE, ...refusals, 404: errorSchema },
      },
    },
    async (request, reply) => {
      await known(request.params.id);
      await accounts.peopleBy(personOf(request).who).endSessionsOf(request.params.id);
      return reply.status(204).send();
    },
  );
}

function shopRoutes(server: ZodServer, accounts: Accounts): void {
  const { people } = accounts.company;
  const all = z.array(shopSchema);
  server.get(
    API_PATHS.shops,
    { schema: { summary: 'Every shop', response: { 200: all, ...refusals } } },
    async () => [...(await people.shops())],
  );
  server.post(
    API_PATHS.shops,
    {
      schema: {
        summary: 'Open a shop',
        description: 'One that is there already gets this name.',
        body: shopSchema,
        response: { 201: all, ...refusals },
      },
    },
    async (request, reply) => {
      await accounts.peopleBy(personOf(request).who).putShop(request.body);
      return reply.status(201).send([...(await people.shops())]);
    },
  );
  server.put(
    API_PATHS.shop,
    {
      schema: {
        summary: 'Name a shop anew',
        params: identifierSchema,
        body: shopNameSchema,
        response: { 200: all, ...refusals, 404: errorSchema },
      },
    },
    async (request) => {
      const { id } = request.params;
      if (!(await people.shops()).some((shop) => shop.id === id)) notFound('shop', id);
      await accounts.peopleBy(personOf(request).who).putShop({ id, name: request.body.name });
      return [...(await people.shops())];
    },
  );
}

function machineRoutes(server: ZodServer, accounts: Accounts): void {
  const { people } = accounts.company;
  const all = z.array(machineSchema);
  server.get(
    API_PATHS.machines,
    { schema: { summary: 'Loggers and gateways that bring readings', response: { 200: all, ...refusals } } },
    async () => [...(await people.machines())],
  );
  server.post(
    API_PATHS.machines,
    {
      schema: {
        summary: 'Let a logger or a gateway in',
        description:
          'Its token is shown this once. It brings readings and files into one shop and does nothing else.',
        body: newMachineSchema,
        response: { 201: madeMachineSchema, ...refusals, 404: errorSchema },
      },
    },
    async (request, reply) => {
      const { shop, name } = request.body;
      if (!(await people.shops()).some(({ id }) => id === shop)) notFound('shop', shop);
      const token = newSecret();
      const id = accounts.newId();
      await accounts.peopleBy(personOf(request).who).addMachine({ id, shop, name }, hashOf(token));
      const made = (await people.machines()).find((machine) => machine.id === id) ?? notFound('machine', id);
      return reply.status(201).send({ ...made, token });
    },
  );
  server.delete(
    API_PATHS.machine,
    {
      schema: {
        summary: 'Let a machine in no longer',
        params: identifierSchema,
        response: { 204: DONE, ...refusals, 404: errorSchema },
      },
    },
    async (request, reply) => {
      if (!(await accounts.peopleBy(personOf(request).who).eraseMachine(request.params.id)))
        notFound('machine', request.params.id);
      return reply.status(204).send();
    },
  );
}

/** The person who asks: the table lets nobody else come this far. */
function personOf({ who }: FastifyRequest) {
  if (who?.account === undefined || who.session === undefined)
    throw new Refused('SIGN_IN_NEEDED', 'Nobody has signed in here. Sign in.');
  return { who, account: who.account, session: who.session };
}

function notFound(what: string, id: string): never {
  throw new Refused('ACCOUNT_NOT_FOUND', `There is no ${what} “${id.slice(0, 60)}”.`);
}
