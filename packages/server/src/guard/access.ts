import { createHash, timingSafeEqual } from 'node:crypto';
import type { IncomingHttpHeaders } from 'node:http';
import { Refused } from './refused.ts';

/** Name in an address under which the token comes. */
const PARAMETER = 'token';
const YEAR_SECONDS = 31_536_000;

/** Address by which the bench is opened for the first time in a browser. */
export function entryAddress(url: string, token: string | undefined): string {
  return token === undefined ? url : `${url}/?${PARAMETER}=${token}`;
}

/** Where a request with the right token in its address is sent on to, and the cookie that it gets; undefined for others. */
export function admitted(
  address: string,
  port: number,
  token: string | undefined,
): { readonly to: string; readonly cookie: string } | undefined {
  const { pathname, searchParams } = new URL(address, 'http://localhost');
  const given = searchParams.get(PARAMETER);
  if (token === undefined || given === null) return undefined;
  if (!isSame(given, token)) throw refusal();
  searchParams.delete(PARAMETER);
  const rest = searchParams.size === 0 ? '' : `?${searchParams}`;
  return {
    // Only ever a path of this server: two slashes at its beginning would name another.
    to: pathname.replace(/^[/\\]+/, '/') + rest,
    cookie: `${cookieName(port)}=${token}; Path=/; HttpOnly; SameSite=Strict; Max-Age=${YEAR_SECONDS}`,
  };
}

/**
 * Refuses whoever does not hold the token: another user of this computer can reach the port too. A browser keeps it in
 * a cookie, another program sends it as a bearer token.
 */
export function guardAccess(headers: IncomingHttpHeaders, port: number, token: string | undefined): void {
  if (token === undefined) return;
  const bearer = /^Bearer (\S+)$/i.exec(headers.authorization ?? '')?.[1];
  const cookies = (headers.cookie ?? '').split(';').map((each) => each.trim());
  const prefix = `${cookieName(port)}=`;
  const given = [
    bearer,
    ...cookies.filter((each) => each.startsWith(prefix)).map((each) => each.slice(prefix.length)),
  ];
  if (!given.some((each) => each !== undefined && isSame(each, token))) throw refusal();
}

/** Cookies do not tell ports apart; the name does, for two benches on one computer. */
function cookieName(port: number): string {
  return `furrow_${port}`;
}

function isSame(given: string, token: string): boolean {
  const hash = (text: string): Buffer => createHash('sha256').update(text).digest();
  return timingSafeEqual(hash(given), hash(token));
}

function refusal(): Refused {
  return new Refused(
    'TOKEN_REFUSED',
    'This browser has not been let in. Open Furrow by the whole address that it printed when it was started, with its token.',
  );
}
