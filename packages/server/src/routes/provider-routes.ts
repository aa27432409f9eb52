import { API_PATHS } from '@furrow/contract';
import type { Accounts } from '../account/accounts.ts';
import { fromProvider, type Identity, type ProviderPlace, toProvider } from '../account/provider.ts';
import { type CookiePlace, heldBy, holdCookie, sessionCookie } from '../account/session-cookie.ts';
import { Refused } from '../guard/refused.ts';
import type { ZodServer } from './zod-server.ts';

/** Where the server is found, and who is told of trouble. */
interface ProviderParts {
  readonly cookie: () => CookiePlace;
  readonly origin: () => string;
  readonly log: (message: string) => void;
}

/** The way to a provider and back, for a browser. */
export function providerRoutes(
  server: ZodServer,
  accounts: Accounts,
  provider: ProviderPlace,
  { cookie, origin, log }: ProviderParts,
): void {
  // a usual port is left out of an address, and provider and library hold the one to the other
  const returnTo = (): string => new URL(API_PATHS.signInReturn, origin()).href;
  /** What goes wrong with a provider is its administrator's to read, not the browser's. */
  const asked = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await work();
    } catch (error) {
      if (error instanceof Refused) throw error;
      const why = error instanceof Error ? `${error.message} ${causeOf(error)}`.trim() : String(error);
      log(`Signing in by ${provider.name} failed: ${why}`);
      throw new Refused('SIGN_IN_REFUSED', `Signing in by ${provider.name} did not come off. Begin again.`);
    }
  };
  server.get(API_PATHS.signInProvider, { schema: { hide: true } }, async (_request, reply) => {
    const { url, held } = await asked(() => toProvider(provider, returnTo()));
    return reply.header('set-cookie', holdCookie(held, cookie())).redirect(url.href, 303);
  });
  server.get(API_PATHS.signInReturn, { schema: { hide: true } }, async (request, reply) => {
    const held = heldBy(request.headers, cookie());
    if (held === undefined)
      throw new Refused('SIGN_IN_REFUSED', 'Signing in was not begun in this browser. Begin again.');
    const returned = new URL(returnTo());
    returned.search = new URL(request.url, returned).search;
    const identity: Identity = await asked(() => fromProvider(provider, returned, held));
    const secret = await accounts.signInBy(identity);
    return reply
      .header('set-cookie', [sessionCookie(secret, cookie()), holdCookie('', cookie())])
      .redirect('/', 303);
  });
}

/** What the provider said, or what broke; never what was sent. */
function causeOf({ cause }: Error): string {
  if (cause instanceof Error) return cause.message;
  const { error, error_description: why } = (cause ?? {}) as Record<string, unknown>;
  return [error, why].filter((each) => typeof each === 'string').join(': ');
}
