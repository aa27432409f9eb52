import { createPrivateKey, X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { isIP } from 'node:net';
import type { OpenPlace } from '@furrow/server';

/** Options of a program that others on the network reach. */
export interface OpenOptions {
  /** Address of this computer to listen on. */
  readonly listen?: string;
  /** Address that people open. */
  readonly address?: string;
  /** Files of the certificate and of its key. */
  readonly cert?: string;
  readonly key?: string;
  /** Address of a reverse proxy that holds the certificate. */
  readonly proxy?: string;
}

/** How the program is to be reached over the network: undefined for this computer only, or what stands in the way. */
export function openPlaceOf(
  options: OpenOptions,
): { readonly place: OpenPlace | undefined } | { readonly problem: readonly string[] } {
  const { listen, address, cert, key, proxy } = options;
  if (listen === undefined) {
    const alone = (['address', 'cert', 'key', 'proxy'] as const).find((each) => options[each] !== undefined);
    return alone === undefined
      ? { place: undefined }
      : { problem: [`--${alone} goes with --listen: without it Furrow answers on this computer only.`] };
  }
  const refused = (...why: readonly string[]) => ({
    problem: ['Nothing was opened to the network.', ...why],
  });
  if (isIP(listen) === 0)
    return refused(
      `--listen takes an IP address of this computer, such as 0.0.0.0 for all of them; it is “${listen}”.`,
    );
  const url = address !== undefined && URL.canParse(address) ? new URL(address) : undefined;
  if (
    url?.protocol !== 'https:' ||
    url.pathname !== '/' ||
    url.search !== '' ||
    url.hash !== '' ||
    url.username !== ''
  )
    return refused(
      '--address is needed: the address that people open, such as https://bench.example, with nothing behind it.',
    );
  if (proxy !== undefined) {
    if (cert !== undefined || key !== undefined)
      return refused('Either --cert and --key or --proxy: who holds the certificate?');
    if (isIP(proxy) === 0)
      return refused(`--proxy takes the IP address that the proxy connects from; it is “${proxy}”.`);
    return { place: { address: url, proxy } };
  }
  if (cert === undefined || key === undefined)
    return refused(
      'Passwords must not travel readable: state --cert and --key, or --proxy for a reverse proxy that holds them.',
    );
  const read = tlsOf(cert, key, url.hostname);
  return 'problem' in read ? refused(read.problem) : { place: { address: url, tls: read } };
}

function tlsOf(
  certFile: string,
  keyFile: string,
  host: string,
): { readonly cert: string; readonly key: string } | { readonly problem: string } {
  try {
    const [cert, key] = [readFileSync(certFile, 'utf8'), readFileSync(keyFile, 'utf8')];
    const certificate = new X509Certificate(cert);
    if (!certificate.checkPrivateKey(createPrivateKey(key)))
      return { problem: `The key in ${keyFile} is not that of the certificate in ${certFile}.` };
    const names = isIP(host) === 0 ? certificate.checkHost(host) : certificate.checkIP(host);
    if (names === undefined) return { problem: `The certificate in ${certFile} is not for ${host}.` };
    return { cert, key };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { problem: `Certificate and key cannot be used: ${why}` };
  }
}
