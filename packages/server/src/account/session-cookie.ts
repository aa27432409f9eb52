import type { IncomingHttpHeaders } from 'node:http';

/** Cookies do not tell ports apart; the name does where several programs may run on one computer. */
export function sessionCookie(secret: string, where: CookiePlace): string {
  return `${nameOf(where)}=${secret}; Path=/; HttpOnly; SameSite=Strict${where.secure ? '; Secure' : ''}`;
}

/** Where a cookie holds. */
export interface CookiePlace {
  /** Whether traffic is encrypted. */
  readonly secure: boolean;
  readonly port: number;
}

/** Takes the cookie away. */
export function noSessionCookie(where: CookiePlace): string {
  return `${sessionCookie('', where)}; Max-Age=0`;
}

/** The secret that a browser sends; undefined where it sends none, or two, one of which somebody else has put there. */
export function sentSecret(headers: IncomingHttpHeaders, where: CookiePlace): string | undefined {
  return sent(headers, nameOf(where));
}

/** How long somebody may take at a provider [s]. */
const HELD = 600;

/**
 * What a browser holds on its way to a provider and back; empty text takes it away. It comes along where the provider
 * sends the browser back, which `Strict` would not let it.
 */
export function holdCookie(held: string, where: CookiePlace): string {
  const age = held === '' ? 0 : HELD;
  const secure = where.secure ? '; Secure' : '';
  return `${nameOf(where)}-provider=${held}; Path=/; HttpOnly; SameSite=Lax; Max-Age=${age}${secure}`;
}

/** What a browser has held. */
export function heldBy(headers: IncomingHttpHeaders, where: CookiePlace): string | undefined {
  return sent(headers, `${nameOf(where)}-provider`);
}

function sent(headers: IncomingHttpHeaders, name: string): string | undefined {
  const prefix = `${name}=`;
  const found = (headers.cookie ?? '')
    .split(';')
    .map((each) => each.trim())
    .filter((each) => each.startsWith(prefix))
    .map((each) => each.slice(prefix.length));
  return found.length === 1 && found[0] !== '' ? found[0] : undefined;
}

/** With the prefix a browser takes it over an encrypted line of this very host only. */
function nameOf({ secure, port }: CookiePlace): string {
  return secure ? '__Host-furrow' : `furrow_session_${port}`;
}
