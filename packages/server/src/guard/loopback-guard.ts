import type { FastifyRequest } from 'fastify';
import { Refused } from './refused.ts';

const HTTP_PORT = 80;

/**
 * Refuses what was not meant for this program: a name that merely resolves to this computer (a page elsewhere
 * may have pointed its own name here), and everything that another page asks for, be it by script, as a picture or in a
 * frame. A link may lead from elsewhere to a page of the app, seen in a window of its own.
 */
export function guardLoopback(
  { method, headers }: Pick<FastifyRequest, 'method' | 'headers'>,
  port: number,
  isApi: boolean,
): void {
  const host = headers.host ?? '';
  if (!ownHosts(port).includes(host.toLowerCase())) {
    throw new Refused(
      'HOST_REFUSED',
      `This program answers on this computer only, at http://127.0.0.1:${port}; the request was for “${shown(host)}”.`,
    );
  }
  const { origin } = headers;
  if (origin !== undefined && origin.toLowerCase() !== `http://${host.toLowerCase()}`) {
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
