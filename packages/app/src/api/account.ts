import {
  type Account,
  API_PATHS,
  accountLinkSchema,
  accountSchema,
  fillPath,
  type Machine,
  machineSchema,
  madeMachineSchema,
  type Session,
  sessionSchema,
  shopSchema,
} from '@furrow/contract';
import { z } from 'zod';
import type { Reply } from './failure.ts';
import { request } from './request.ts';

const accounts = z.array(accountSchema);
const shops = z.array(shopSchema);

/** What an administrator sets of an account. */
type AccountRights = Pick<Account, 'administrator' | 'shut' | 'shops'>;
type Shop = z.output<typeof shopSchema>;

/** Who is signed in; also whether anybody needs to be. */
export const fetchSession = (): Promise<Reply<Session>> => request('GET', API_PATHS.session, sessionSchema);
export const signIn = (name: string, password: string): Promise<Reply<Session>> =>
  request('POST', API_PATHS.session, sessionSchema, { name, password });
export const signOut = (): Promise<Reply<undefined>> => request('DELETE', API_PATHS.session, z.undefined());
export const lookAtShop = (shop: string): Promise<Reply<Session>> =>
  request('PUT', API_PATHS.sessionShop, sessionSchema, { shop });
/** Sets a password by a one-time link, and signs in. */
export const usePasswordLink = (link: string, password: string): Promise<Reply<Session>> =>
  request('POST', API_PATHS.sessionLink, sessionSchema, { link, password });
/** Sets a new password; every other sign-in of the account ends. */
export const changePassword = (password: string, next: string): Promise<Reply<Session>> =>
  request('POST', API_PATHS.sessionPassword, sessionSchema, { password, next });

/** Everybody who may sign in. */
export const fetchAccounts = (): Promise<Reply<Account[]>> => request('GET', API_PATHS.accounts, accounts);
export const addAccount = (account: {
  readonly name: string;
  readonly administrator: boolean;
  readonly shops: AccountRights['shops'];
}): Promise<Reply<Account[]>> => request('POST', API_PATHS.accounts, accounts, account);
export const setAccountRights = (id: string, rights: AccountRights): Promise<Reply<Account[]>> =>
  request('PUT', fillPath(API_PATHS.account, { id }), accounts, rights);
/** A link by which a person sets a password. */
export const makePasswordLink = (id: string): Promise<Reply<z.output<typeof accountLinkSchema>>> =>
  request('POST', fillPath(API_PATHS.accountLink, { id }), accountLinkSchema);

/** Every shop of the company. */
export const fetchShops = (): Promise<Reply<Shop[]>> => request('GET', API_PATHS.shops, shops);
export const openShop = (shop: Shop): Promise<Reply<Shop[]>> => request('POST', API_PATHS.shops, shops, shop);

/** Loggers and gateways that bring readings. */
export const fetchMachines = (): Promise<Reply<Machine[]>> =>
  request('GET', API_PATHS.machines, z.array(machineSchema));
export const addMachine = (machine: {
  readonly shop: string;
  readonly name: string;
}): Promise<Reply<z.output<typeof madeMachineSchema>>> =>
  request('POST', API_PATHS.machines, madeMachineSchema, machine);
export const eraseMachine = (id: string): Promise<Reply<undefined>> =>
  request('DELETE', fillPath(API_PATHS.machine, { id }), z.undefined());
