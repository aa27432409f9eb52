import { describe, expect, it } from 'vitest';
import { guardLoopback } from './loopback-guard.ts';

describe('guardLoopback', () => {
  it.each([
    [{ host: '127.0.0.1:4180' }],
    [{ host: 'localhost:4180' }],
    [{ host: 'LOCALHOST:4180' }],
    [{ host: '[::1]:4180' }],
    [{ host: 'localhost:4180', origin: 'http://localhost:4180' }],
    [{ host: '127.0.0.1:4180', 'sec-fetch-site': 'same-origin' }],
    [{ host: '127.0.0.1:4180', 'sec-fetch-site': 'none' }],
  ])('lets %j pass', (headers) => {
    expect(() => guardLoopback(headers, 4180, true)).not.toThrow();
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
    expect(() => guardLoopback(headers, 4180, true)).toThrow(
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
    expect(() => guardLoopback({ host: '127.0.0.1:4180', origin }, 4180, false)).toThrow(
      expect.objectContaining({ code: 'ORIGIN_REFUSED' }) as Error,
    );
  });

  it.each(['cross-site', 'same-site'])(
    'refuses a %s request to the API, but not a link to a page',
    (site) => {
      const headers = { host: '127.0.0.1:4180', 'sec-fetch-site': site };
      expect(() => guardLoopback(headers, 4180, true)).toThrow(
        expect.objectContaining({ code: 'ORIGIN_REFUSED' }) as Error,
      );
      expect(() => guardLoopback(headers, 4180, false)).not.toThrow();
    },
  );

  it('takes the port for said where it is the usual one', () => {
    expect(() => guardLoopback({ host: 'localhost' }, 80, true)).not.toThrow();
  });
});
