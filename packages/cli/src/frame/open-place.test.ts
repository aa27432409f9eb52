import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPlaceOf } from './open-place.ts';

const folder = mkdtempSync(join(tmpdir(), 'furrow-cert-'));
const cert = join(folder, 'cert.pem');
const key = join(folder, 'key.pem');
const otherKey = join(folder, 'other.pem');
beforeAll(() => {
  const request = [
    'req',
    '-x509',
    '-newkey',
    'ec',
    '-pkeyopt',
    'ec_paramgen_curve:prime256v1',
    '-nodes',
    '-days',
    '2',
  ];
  const names = ['-subj', '/CN=bench.example', '-addext', 'subjectAltName=DNS:bench.example,IP:192.0.2.1'];
  execFileSync('openssl', [...request, '-keyout', key, '-out', cert, ...names], { stdio: 'ignore' });
  execFileSync('openssl', ['genpkey', '-algorithm', 'ed25519', '-out', otherKey], { stdio: 'ignore' });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const listen = '0.0.0.0';
const address = 'https://bench.example';

describe('a program that others on the network reach', () => {
  it('is not one as long as nobody says so', () => {
    expect(openPlaceOf({})).toEqual({ place: undefined });
  });

  it('has a certificate of its own for its address, or a proxy that has', () => {
    expect(openPlaceOf({ listen, address, cert, key })).toMatchObject({
      place: { address: new URL(address) },
    });
    expect(openPlaceOf({ listen, address: 'https://192.0.2.1:8443', cert, key })).toHaveProperty('place.tls');
    expect(openPlaceOf({ listen, address, proxy: '127.0.0.1' })).toMatchObject({
      place: { proxy: '127.0.0.1' },
    });
  });

  it.each([
    ['an address without listening', { address }],
    ['a name to listen on', { listen: 'bench.example', address, cert, key }],
    ['no address', { listen, cert, key }],
    ['an address that is not encrypted', { listen, address: 'http://bench.example', cert, key }],
    ['an address with a path', { listen, address: 'https://bench.example/furrow', cert, key }],
    ['an address with a name and password', { listen, address: 'https://a:b@bench.example', cert, key }],
    ['neither certificate nor proxy', { listen, address }],
    ['a certificate without its key', { listen, address, cert }],
    ['certificate and proxy', { listen, address, cert, key, proxy: '127.0.0.1' }],
    ['a proxy by name', { listen, address, proxy: 'proxy.example' }],
    ['the certificate of another', { listen, address: 'https://yard.example', cert, key }],
    ['the key of another', { listen, address, cert, key: otherKey }],
    ['a file that is none', { listen, address, cert: join(folder, 'none'), key }],
  ])('is refused with %s', (_what, options) => {
    expect(openPlaceOf(options)).toMatchObject({ problem: expect.any(Array) as unknown });
  });
});
