import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { API_PATHS, fillPath, type SavedJob, type SavedShopFile } from '@furrow/contract';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildServer } from '../build-server.ts';
import { SMALL_KIT } from '../testing/small-kit.ts';
import { EXAMPLES, type TestParts, testParts } from '../testing/test-server.ts';
import type { ZodServer } from './zod-server.ts';

const text = readFileSync(join(EXAMPLES, 'defect-pocket.yaml'), 'utf8');
let test: TestParts;
let server: ZodServer;
let id: string;
beforeAll(async () => {
  test = await testParts();
  server = await buildServer(test.parts);
  const reply = await server.inject({ method: 'POST', url: API_PATHS.jobs, payload: { text } });
  ({ id } = reply.json<SavedJob>());
});
afterAll(async () => {
  await server.close();
  await test.cleanUp();
  expect(test.faults).toEqual([]);
});

describe('the set-up card', () => {
  it('is a PDF, the same for a saved job and for its text', async () => {
    const saved = await server.inject(`${fillPath(API_PATHS.jobCardPdf, { id })}?units=inch&paper=letter`);
    const payload = { text, units: 'inch', paper: 'letter' };
    const sent = await server.inject({ method: 'POST', url: API_PATHS.card, payload });
    for (const reply of [saved, sent]) {
      expect(reply.statusCode).toBe(200);
      expect(reply.headers['content-type']).toBe('application/pdf');
      expect(reply.headers['content-disposition']).toContain('set-up-card.pdf');
      expect(reply.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
    }
    expect(saved.rawPayload.equals(sent.rawPayload)).toBe(true);
  });

  it('differs by units and paper', async () => {
    const path = fillPath(API_PATHS.jobCardPdf, { id });
    const cards = await Promise.all(
      ['', '?units=inch', '?paper=letter'].map(async (query) => {
        const reply = await server.inject(`${path}${query}`);
        return reply.rawPayload.toString('base64');
      }),
    );
    expect(new Set(cards).size).toBe(3);
  });

  it('is a page that the policy lets through: no script, no style inside, its stylesheet served', async () => {
    const page = await server.inject(fillPath(API_PATHS.jobCardPage, { id }));
    expect(page.statusCode).toBe(200);
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(page.body).toContain('Penstock section 4, clea');
    expect(page.body).not.toMatch(/<script|<style|\sstyle=|\son\w+=/i);
    expect(page.body).toContain(`href="${API_PATHS.paperStylesheet}"`);
    expect(page.headers['content-security-policy']).toContain("frame-ancestors 'self'");
    const stylesheet = await server.inject(API_PATHS.paperStylesheet);
    expect([stylesheet.statusCode, stylesheet.headers['content-type']]).toEqual([
      200,
      'text/css; charset=utf-8',
    ]);
    expect(stylesheet.body.length).toBeGreaterThan(0);
  });

  it.each(['?units=furlong', '?paper=a0', '?units=inch&units=metric'])(
    'is refused with %s',
    async (query) => {
      const reply = await server.inject(`${fillPath(API_PATHS.jobCardPdf, { id })}${query}`);
      expect([reply.statusCode, reply.json<{ code: string }>().code]).toEqual([400, 'REQUEST_INVALID']);
    },
  );

  it('of a saved job is refused while the saved kit is a draft, unless it is asked for without it', async () => {
    const path = fillPath(API_PATHS.jobCardPdf, { id });
    const before = await server.inject(path);
    const payload = { text: 'furrow_kit: 1\ntitle: Yard\n', based_on: 0 };
    expect((await server.inject({ method: 'PUT', url: API_PATHS.kit, payload })).statusCode).toBe(200);
    const refused = await server.inject(path);
    expect([refused.statusCode, refused.json<{ code: string }>().code]).toEqual([422, 'KIT_NOT_READABLE']);
    const without = await server.inject(`${path}?kit=none`);
    expect(without.rawPayload.equals(before.rawPayload)).toBe(true);
    expect((await server.inject(`${path}?kit=other`)).statusCode).toBe(400);
  });

  it('of a saved job is that of a plan with the saved kit', async () => {
    const { revision_number: based_on } = (await server.inject(API_PATHS.kit)).json<SavedShopFile>();
    await server.inject({ method: 'PUT', url: API_PATHS.kit, payload: { text: SMALL_KIT, based_on } });
    const path = fillPath(API_PATHS.jobCardPdf, { id });
    const saved = await server.inject(path);
    const payload = { text, kit: SMALL_KIT };
    const sent = await server.inject({ method: 'POST', url: API_PATHS.card, payload });
    expect([saved.statusCode, sent.statusCode]).toEqual([200, 200]);
    expect(saved.rawPayload.equals(sent.rawPayload)).toBe(true);
    expect(saved.rawPayload.equals((await server.inject(`${path}?kit=none`)).rawPayload)).toBe(false);
  });

  it('of a draft is refused, in a page where a page was asked for', async () => {
    const made = await server.inject({
      method: 'POST',
      url: API_PATHS.jobs,
      payload: { text: 'title: <b>' },
    });
    const draft = { id: made.json<SavedJob>().id };
    const pdf = await server.inject(fillPath(API_PATHS.jobCardPdf, draft));
    expect([pdf.statusCode, pdf.json<{ code: string }>().code]).toEqual([422, 'JOB_NOT_READABLE']);
    const page = await server.inject({
      url: fillPath(API_PATHS.jobCardPage, draft),
      headers: { accept: 'text/html' },
    });
    expect([page.statusCode, page.headers['content-type']]).toEqual([422, 'text/html; charset=utf-8']);
    expect(page.body).toContain('cannot be planned yet');
  });
});
