import type { IncomingHttpHeaders } from 'node:http';
import { Refused } from './refused.ts';

const HTTP_PORT = 80;

/**
 * Refuses what was not meant for this program: a name that merely resolves to this computer (a page elsewhere
 * may have pointed its own name here), and requests that another page's script sends.
 */
export function guardLoopback(headers: IncomingHttpHeaders, port: number, isApi: boolean): void {
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
  if (isApi && site !== undefined && site !== 'same-origin' && site !== 'none') {
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
