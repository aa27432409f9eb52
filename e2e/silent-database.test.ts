import {
  type FaultyWire,
  faultyWire,
  findPostgres,
  type PostgresServer,
  startPostgres,
} from '@furrow/store/testing';
import { afterAll, describe, expect, it } from 'vitest';
import { serveFurrow } from './run-furrow.ts';

const found = findPostgres();
/** Far less than a request may wait for a database, far more than it takes to end [ms]. */
const ENDS_WITHIN = 30_000;

describe.skipIf('missing' in found)('the program with a database that says nothing more', () => {
  let postgres: PostgresServer | undefined;
  let wire: FaultyWire | undefined;
  afterAll(async () => {
    await wire?.close();
    postgres?.stop();
  });

  it('ends when it is told to, requests under way or not', async () => {
    if ('missing' in found) return;
    postgres = startPostgres(found.binaries);
    wire = await faultyWire(postgres.newDatabase());
    const program = serveFurrow(['--port', '0'], { FURROW_DATABASE: wire.url });
    const entry = await program.url;
    const entered = await fetch(entry, { redirect: 'manual' });
    const cookie = entered.headers.get('set-cookie')?.split(';')[0] ?? '';
    const jobs = (): Promise<number> =>
      fetch(new URL('/api/jobs', entry), { headers: { cookie } }).then(({ status }) => status);
    expect(await jobs()).toBe(200);
    wire.silence(true);
    const asked = Promise.allSettled([jobs(), jobs()]);
    // answered by the same program after the two above, so those are under way
    expect((await fetch(new URL('/api/about', entry), { headers: { cookie } })).status).toBe(200);
    const ended = await Promise.race([
      program.stop(),
      new Promise<undefined>((resolve) => setTimeout(resolve, ENDS_WITHIN, undefined).unref()),
    ]);
    expect(ended?.code).toBe(0);
    for (const outcome of await asked) {
      expect(outcome.status === 'rejected' || outcome.value === 503).toBe(true);
    }
  });
});
