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
  const prefix = `${nameOf(where)}=`;
  const sent = (headers.cookie ?? '')
    .split(';')
    .map((each) => each.trim())
    .filter((each) => each.startsWith(prefix))
    .map((each) => each.slice(prefix.length));
  return sent.length === 1 && sent[0] !== '' ? sent[0] : undefined;
}

/** With the prefix a browser takes it over an encrypted line of this very host only. */
function nameOf({ secure, port }: CookiePlace): string {
  return secure ? '__Host-furrow' : `furrow_session_${port}`;
}
