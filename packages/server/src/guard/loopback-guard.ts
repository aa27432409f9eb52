import type { FastifyRequest } from 'fastify';
import { Refused } from './refused.ts';

const HTTP_PORT = 80;

/** Where a server is open to: the names under which it is asked for. */
export interface OwnPlace {
  readonly scheme: 'http' | 'https';
  /** Names with their ports, as a request names them. */
  readonly hosts: readonly string[];
  /** Where to find it, in words. */
  readonly words: string;
}

/** The place of a server that answers on this computer only. */
export function loopbackPlace(port: number): OwnPlace {
  return {
    scheme: 'http',
    hosts: ownHosts(port),
    words: `This program answers on this computer only, at http://127.0.0.1:${port}`,
  };
}

/** The place of a server that others on the network reach by its one public address. */
export function publicPlace(address: URL): OwnPlace {
  const { host } = address;
  return {
    scheme: 'https',
    hosts: address.port === '' ? [host, `${host}:443`] : [host],
    words: `This program answers at ${address.origin} only`,
  };
}

/**
 * Refuses what was not meant for this program: a name that merely resolves to this computer (a page elsewhere
 * may have pointed its own name here), and everything that another page asks for, be it by script, as a picture or in a
 * frame. A link may lead from elsewhere to a page of the app, seen in a window of its own.
 */
export function guardPlace(
  { method, headers }: Pick<FastifyRequest, 'method' | 'headers'>,
  { scheme, hosts, words }: OwnPlace,
  isApi: boolean,
): void {
  const host = headers.host ?? '';
  if (!hosts.includes(host.toLowerCase()))
    throw new Refused('HOST_REFUSED', `${words}; the request was for “${shown(host)}”.`);
  const { origin } = headers;
  // a browser leaves the usual port out of an origin, and a proxy may write it into the host
  const own = [host.toLowerCase(), host.toLowerCase().replace(/:443$/u, '')];
  if (origin !== undefined && !own.some((each) => origin.toLowerCase() === `${scheme}://${each}`)) {
    throw new Refused('ORIGIN_REFUSED', `Pages of “${shown(origin)}” may not use this program.`);
  }
  // Where no Origin is sent, browsers still tell whether another page is behind the request.
  const site = headers['sec-fetch-site'];
  const isElsewhere = site !== undefined && site !== 'same-origin' && site !== 'none';
  const isLink =
    method === 'GET' && headers['sec-fetch-mode'] === 'navigate' && headers['sec-fetch-dest'] === 'document';
  if (isElsewhere && (isApi || !isLink)) {
    throw new Refused('ORIGIN_REFUSED', 'Pages of other sites may not use this program.');
  }
}

function ownHosts(port: number): string[] {
  const names = ['127.0.0.1', 'localhost', '[::1]'];
  const withPort = names.map((name) => `${name}:${port}`);
  return port === HTTP_PORT ? [...names, ...withPort] : withPort;
}

function shown(value: string): string {
  return value.slice(0, 100);
}
