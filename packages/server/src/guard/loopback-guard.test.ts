import { describe, expect, it } from 'vitest';
import { guardPlace, loopbackPlace } from './loopback-guard.ts';

/** At this computer's own address. */
function guardOn(request: Parameters<typeof guardPlace>[0], port: number, isApi: boolean): void {
  guardPlace(request, loopbackPlace(port), isApi);
}

describe('guardPlace', () => {
  it.each([
    [{ host: '127.0.0.1:4180' }],
    [{ host: 'localhost:4180' }],
    [{ host: 'LOCALHOST:4180' }],
    [{ host: '[::1]:4180' }],
    [{ host: 'localhost:4180', origin: 'http://localhost:4180' }],
    [{ host: '127.0.0.1:4180', 'sec-fetch-site': 'same-origin' }],
    [{ host: '127.0.0.1:4180', 'sec-fetch-site': 'none' }],
  ])('lets %j pass', (headers) => {
    expect(() => guardOn({ method: 'GET', headers }, 4180, true)).not.toThrow();
  });

  it.each([
    [{}],
    [{ host: '' }],
    [{ host: 'yard.example:4180' }],
    [{ host: '127.0.0.1' }],
    [{ host: '127.0.0.1:4181' }],
    [{ host: '127.0.0.1:41800' }],
    [{ host: '127.0.0.1:4180.yard.example' }],
    [{ host: 'localhost.yard.example:4180' }],
    [{ host: 'user@127.0.0.1:4180' }],
    [{ host: '192.168.1.20:4180' }],
  ])('refuses the host of %j', (headers) => {
    expect(() => guardOn({ method: 'GET', headers }, 4180, true)).toThrow(
      expect.objectContaining({ code: 'HOST_REFUSED' }) as Error,
    );
  });

  it.each([
    ['http://yard.example'],
    ['http://127.0.0.1:9999'],
    ['http://localhost:4180'],
    ['https://127.0.0.1:4180'],
    ['null'],
    [''],
  ])('refuses the origin %j at 127.0.0.1:4180', (origin) => {
    expect(() =>
      guardOn({ method: 'GET', headers: { host: '127.0.0.1:4180', origin } }, 4180, false),
    ).toThrow(expect.objectContaining({ code: 'ORIGIN_REFUSED' }) as Error);
  });

  const link = { 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'document' };
  describe.each(['cross-site', 'same-site'])('of a page that is %s', (site) => {
    const headers = { host: '127.0.0.1:4180', 'sec-fetch-site': site };
    const refused = expect.objectContaining({ code: 'ORIGIN_REFUSED' }) as Error;

    it.each([
      ['a script', { 'sec-fetch-mode': 'no-cors', 'sec-fetch-dest': 'empty' }],
      ['a picture', { 'sec-fetch-mode': 'no-cors', 'sec-fetch-dest': 'image' }],
      ['a frame', { 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'iframe' }],
      ['something that does not say what it is for', {}],
    ])('refuses what is asked for as %s', (_, more) => {
      for (const isApi of [true, false]) {
        const request = { method: 'GET', headers: { ...headers, ...more } };
        expect(() => guardOn(request, 4180, isApi)).toThrow(refused);
      }
    });

    it('lets a link lead to a page, not to the API, and sends no form', () => {
      const request = { method: 'GET', headers: { ...headers, ...link } };
      expect(() => guardOn(request, 4180, false)).not.toThrow();
      expect(() => guardOn(request, 4180, true)).toThrow(refused);
      expect(() => guardOn({ ...request, method: 'POST' }, 4180, false)).toThrow(refused);
    });
  });

  it('takes the port for said where it is the usual one', () => {
    expect(() => guardOn({ method: 'GET', headers: { host: 'localhost' } }, 80, true)).not.toThrow();
  });
});
