import { API_PATHS, type CountedFaults, fillPath } from '@furrow/contract';
import { countFaults, FAULT_MODEL } from '@furrow/engine';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { buildServer } from '../build-server.ts';
import { type TestParts, testParts } from '../testing/test-server.ts';
import type { ZodServer } from './zod-server.ts';

const idOf = (number: number): string => `00000000-0000-4000-8000-00000000f00${number}`;
const loose = {
  id: idOf(1),
  cause: 'loose_joint',
  symptoms: { hot_joint: 'yes', joint_millivolts: 'high', flowing_pressure: 'unknown' },
};
const none: CountedFaults = { cases: 0, found: {}, seen: {} };

let test: TestParts;
let server: ZodServer;
beforeEach(async () => {
  test = await testParts();
  server = await buildServer(test.parts);
});
afterEach(async () => {
  await server.close();
  await test.cleanUp();
  expect(test.faults).toEqual([]);
});

function post(payload: object) {
  return server.inject({ method: 'POST', url: API_PATHS.faultCounts, payload });
}

async function counts(): Promise<CountedFaults> {
  return (await server.inject(API_PATHS.faultCounts)).json<CountedFaults>();
}

describe('the counts of faults found', () => {
  it('are none at first', async () => {
    expect(await counts()).toEqual(none);
  });

  it('add up by cause and by what was seen, in the form that moves the table of faults', async () => {
    await post(loose);
    await post({ ...loose, id: idOf(2), symptoms: { hot_joint: 'no' } });
    const reply = await post({ id: idOf(3), cause: 'wet_air', symptoms: {} });
    expect(reply.statusCode).toBe(200);
    expect(reply.json()).toEqual({
      cases: 3,
      found: { loose_joint: 2, wet_air: 1 },
      seen: {
        loose_joint: { hot_joint: { yes: 1, no: 1 }, joint_millivolts: { high: 1 } },
        wet_air: {},
      },
    });
    expect(await counts()).toEqual(reply.json());
    const moved = countFaults(FAULT_MODEL, await counts());
    if (!moved.ok) throw new Error(moved.issues[0]?.message);
    const share = (model: typeof FAULT_MODEL): number => {
      const all = model.causes.reduce((sum, { weight }) => sum + weight, 0);
      return (model.causes.find(({ id }) => id === 'loose_joint')?.weight ?? 0) / all;
    };
    expect(share(moved.value)).toBeGreaterThan(share(FAULT_MODEL));
  });

  it('hold a case once, as it was sent last', async () => {
    await post(loose);
    await post(loose);
    expect(await counts()).toMatchObject({ cases: 1, found: { loose_joint: 1 } });
    await post({ ...loose, cause: 'wet_air' });
    expect((await counts()).found).toEqual({ wet_air: 1 });
  });

  it('let a case be taken out, once or twice', async () => {
    await post(loose);
    for (const _ of [1, 2]) {
      const reply = await server.inject({
        method: 'DELETE',
        url: fillPath(API_PATHS.faultCase, { id: loose.id }),
      });
      expect([reply.statusCode, reply.json()]).toEqual([200, none]);
    }
  });

  it.each([
    ['an unknown cause', { cause: 'gremlins' }, 'gremlins'],
    ['an unknown symptom', { symptoms: { hot_joynt: 'yes' } }, 'hot_joynt'],
    ['an answer that the symptom does not take', { symptoms: { hot_joint: 'high' } }, 'high'],
    ['a name that every object has', { cause: 'constructor' }, 'constructor'],
  ])('refuse %s', async (_name, part, named) => {
    const reply = await post({ ...loose, ...part });
    expect(reply.statusCode).toBe(422);
    expect(reply.json()).toMatchObject({
      code: 'FAULT_EVIDENCE',
      message: expect.stringContaining(named),
      issues: expect.arrayContaining([expect.objectContaining({ code: 'FAULT_EVIDENCE' })]),
    });
    expect(await counts()).toEqual(none);
  });

  it.each([
    [{ ...loose, id: 'one' }],
    [{ ...loose, cause: '' }],
    [{ ...loose, symptoms: { hot_joint: 7 } }],
    [{}],
  ])('refuse %j as no case', async (payload) => {
    const reply = await post(payload);
    expect([reply.statusCode, reply.json<{ code: string }>().code]).toEqual([400, 'REQUEST_INVALID']);
  });

  it('leave out what another version of the table has counted', async () => {
    await test.store.faultCases.put({ id: idOf(4), cause: 'retired_cause', symptoms: {} });
    await post(loose);
    expect(await counts()).toMatchObject({ cases: 1, found: { loose_joint: 1 } });
  });
});
