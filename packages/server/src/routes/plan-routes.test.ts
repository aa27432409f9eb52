import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { API_PATHS, PROGRAM_VERSION } from '@furrow/contract';
import { answerJob, answerSchema, readJob, readKit, writtenAnswer } from '@furrow/engine';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildServer } from '../build-server.ts';
import { SMALL_KIT } from '../testing/small-kit.ts';
import { EXAMPLES, type TestParts, testParts } from '../testing/test-server.ts';
import type { ZodServer } from './zod-server.ts';

let test: TestParts;
let server: ZodServer;
beforeAll(async () => {
  test = await testParts();
  server = await buildServer(test.parts);
});
afterAll(async () => {
  await server.close();
  await test.cleanUp();
});

const files = readdirSync(EXAMPLES)
  .filter((name) => name.endsWith('.yaml'))
  .filter((name) => !/^furrow_kit:/m.test(readFileSync(join(EXAMPLES, name), 'utf8')));

describe('POST /api/plan', () => {
  it.each(files)(
    'answers %s with the engine’s own result, nothing lost on the way',
    { timeout: 60_000 },
    async (file) => {
      const text = readFileSync(join(EXAMPLES, file), 'utf8');
      const read = readJob(text);
      if (!read.ok) throw new Error(`${file} is no job`);
      const answer = writtenAnswer(answerJob({ job: read.value, version: PROGRAM_VERSION }), 'metric');
      expect(answerSchema.parse(answer)).toEqual(answer);
      const reply = await server.inject({ method: 'POST', url: API_PATHS.plan, payload: { text } });
      expect(reply.statusCode).toBe(200);
      expect(reply.json()).toEqual(JSON.parse(JSON.stringify(answer)));
      expect(test.faults).toEqual([]);
    },
  );

  it('keeps to the kit that is sent along, as the engine does', { timeout: 60_000 }, async () => {
    const text = readFileSync(join(EXAMPLES, 'defect-pocket.yaml'), 'utf8');
    const [read, kit] = [readJob(text), readKit(SMALL_KIT)];
    if (!read.ok || !kit.ok) throw new Error('no job or no kit');
    const answer = writtenAnswer(
      answerJob({ job: read.value, version: PROGRAM_VERSION, kit: kit.value }),
      'metric',
    );
    expect(answer.supply).toBeDefined();
    const payload = { text, kit: SMALL_KIT };
    const reply = await server.inject({ method: 'POST', url: API_PATHS.plan, payload });
    expect([reply.statusCode, reply.json()]).toEqual([200, JSON.parse(JSON.stringify(answer))]);
  });

  it.each([
    ['', 'one thing'],
    ['furrow_kit: 1\ntitle: x\nsuorces: []\n', 'suorces'],
  ])('answers a kit that is none with its issues: %j', async (kit, named) => {
    const text = readFileSync(join(EXAMPLES, 'defect-pocket.yaml'), 'utf8');
    const reply = await server.inject({ method: 'POST', url: API_PATHS.plan, payload: { text, kit } });
    expect(reply.statusCode).toBe(422);
    expect(reply.json()).toMatchObject({
      code: 'KIT_NOT_READABLE',
      issues: expect.arrayContaining([expect.objectContaining({ code: expect.stringMatching(/^KIT_/) })]),
    });
    expect(reply.body).toContain(named);
  });

  it('answers a text that is no job with its issues', async () => {
    const payload = { text: 'furrow: 1\ntitle: x\nplate: { thicknes: 9 mm }\n' };
    const reply = await server.inject({ method: 'POST', url: API_PATHS.plan, payload });
    expect(reply.statusCode).toBe(422);
    expect(reply.json()).toMatchObject({
      code: 'JOB_NOT_READABLE',
      issues: expect.arrayContaining([
        expect.objectContaining({ code: 'JOB_FIELD_UNKNOWN', nearest: 'thickness' }),
      ]),
    });
  });
});
