import { API_PATHS, type Example, fillPath, type SavedJob, type SavedShopFile } from '@furrow/contract';
import type { Answer } from '@furrow/engine';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { buildServer } from '../build-server.ts';
import { type TestParts, testParts } from '../testing/test-server.ts';
import type { ZodServer } from './zod-server.ts';

let test: TestParts;
let server: ZodServer;
let demo: Example;
let pocket: string;
beforeEach(async () => {
  test = await testParts();
  server = await buildServer(test.parts);
  [demo] = (await server.inject(API_PATHS.knowledgeExamples)).json<[Example]>();
  const jobs = (await server.inject(API_PATHS.examples)).json<Example[]>();
  pocket = jobs.find(({ name }) => name === 'defect-pocket')!.text;
});
afterEach(async () => {
  await server.close();
  await test.cleanUp();
  expect(test.faults).toEqual([]);
});

const save = (text: string, based_on: number) =>
  server.inject({ method: 'PUT', url: API_PATHS.knowledge, payload: { text, based_on } });
const planned = async (more: object) =>
  (
    await server.inject({ method: 'POST', url: API_PATHS.plan, payload: { text: pocket, ...more } })
  ).json<Answer>();
const code = (reply: { json: <T>() => T }) => reply.json<{ code: string }>().code;

describe('what the shop knows', () => {
  it('is nothing at first, and then what was saved, with every revision', async () => {
    expect((await server.inject(API_PATHS.knowledge)).json()).toMatchObject({ revision_number: 0, text: '' });
    const first = (await save(demo.text, 0)).json<SavedShopFile>();
    expect(first).toMatchObject({ title: 'demo-yard', revision_number: 1, valid: true, issues: [] });
    await save(`${demo.text}# ours\n`, 1);
    const before = fillPath(API_PATHS.knowledgeRevision, { number: 1 });
    expect((await server.inject(before)).json()).toMatchObject({ text: demo.text });
    const late = await save(demo.text, 1);
    expect([late.statusCode, code(late)]).toEqual([409, 'KNOWLEDGE_CHANGED_MEANWHILE']);
    expect(late.json<{ message: string }>().message).toContain('it is at revision 2, yours was made from 1');
  });

  it('makes plans that name it, the same for the same trials', async () => {
    const without = await planned({});
    const learned = await planned({ knowledge: demo.text });
    expect(without.inputs.knowledge).toMatchObject({ trials: 0, jobs: 0, date: null });
    expect(learned.inputs.knowledge).toEqual({
      id: expect.stringMatching(/^demo-yard-[0-9a-f]{12}$/) as string,
      trials: 4,
      jobs: 6,
      date: '2026-04-29',
      invented: true,
    });
    expect(learned.plan).not.toEqual(without.plan);
    expect(await planned({ knowledge: demo.text })).toEqual(learned);
  });

  it('that cannot be read is kept as a draft, and no plan is made with it', async () => {
    const draft = 'furrow_trials: 1\nshop: yard\nentries: [{ id: a }]\n';
    expect((await save(draft, 0)).json()).toMatchObject({ text: draft, valid: false, revision: null });
    const reply = await server.inject({
      method: 'POST',
      url: API_PATHS.plan,
      payload: { text: pocket, knowledge: draft },
    });
    expect([reply.statusCode, code(reply)]).toEqual([422, 'KNOWLEDGE_NOT_READABLE']);
  });

  it('makes the papers of saved jobs; those of the demo rest on the invented history where the shop has none', async () => {
    const url = fillPath(API_PATHS.examplePapers, { name: 'defect-pocket' });
    const knowledgeOf = async (address: string) =>
      (await server.inject(address)).json<{ knowledge_id: string }>().knowledge_id;
    expect(await knowledgeOf(url)).toMatch(/^demo-yard-/);
    expect(await knowledgeOf(`${url}?history=none`)).toBe('published-2');
    const payload = { text: pocket };
    const { id } = (await server.inject({ method: 'POST', url: API_PATHS.jobs, payload })).json<SavedJob>();
    const own = fillPath(API_PATHS.jobPapers, { id });
    expect(await knowledgeOf(own)).toBe('published-2');
    await save(demo.text.replace('shop: demo-yard', 'shop: ours'), 0);
    expect(await knowledgeOf(own)).toMatch(/^ours-/);
    expect(await knowledgeOf(url)).toMatch(/^ours-/);
  });
});
