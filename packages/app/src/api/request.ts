import { SHOP_HEADER } from '@furrow/contract';
import { z } from 'zod';
import { type Failed, failed, failureOf, type Reply } from './failure.ts';
import { keepAnswer, keepFile, keptAnswer } from './kept-answers.ts';
import { isReached, noteReach } from './reach.ts';

/** An answer of the server, or why there is none. */
type Sent = { readonly ok: true; readonly value: Response } | Failed;

/** How long is waited for an answer that is kept here as well: while the server was there last, and after that [ms]. */
const PATIENCE = { reached: 10_000, unreached: 2000 };

/**
 * Sends a request to the server this page came from and reads its answer by a schema of the contract. What is asked for is
 * given as it was answered last where the server is not reached; what a save answers is what its address holds from then on.
 */
export async function request<T>(
  method: string,
  path: string,
  schema: z.ZodType<T>,
  body?: unknown,
): Promise<Reply<T>> {
  if (method !== 'GET') {
    const reply = await readAnswer(await send(method, path, asJson(body)), schema);
    if (reply.ok && method === 'PUT') keepAnswer(path, reply.value);
    return reply;
  }
  const sent = await sendPatiently(path);
  if (!sent.ok && sent.failure.unreached === true) {
    const parsed = schema.safeParse(await keptJson(path));
    return parsed.success ? { ok: true, value: parsed.data } : sent;
  }
  const reply = await readAnswer(sent, schema);
  if (reply.ok) keepAnswer(path, reply.value);
  return reply;
}

/** Asks, and no longer waits for the server once it takes long over what is kept here. */
async function sendPatiently(path: string): Promise<Sent> {
  const call = new AbortController();
  const wait = isReached() ? PATIENCE.reached : PATIENCE.unreached;
  const timer = setTimeout(async () => {
    if ((await keptAnswer(path)) !== undefined) call.abort();
  }, wait);
  const sent = await send('GET', path, { signal: call.signal });
  clearTimeout(timer);
  return sent;
}

async function keptJson(path: string): Promise<unknown> {
  try {
    return await (await keptAnswer(path))?.json();
  } catch {
    return undefined;
  }
}

/** Sends a file as it is, and reads the answer by a schema of the contract. */
export async function sendFile<T>(path: string, file: Blob, schema: z.ZodType<T>): Promise<Reply<T>> {
  const content = { headers: { 'content-type': 'application/octet-stream' }, body: file };
  return readAnswer(await send('POST', path, content), schema);
}

/** Asks for a file whose content never changes. */
export async function fetchFile(path: string): Promise<Reply<Blob>> {
  const reply = await fileOf(send('GET', path, {}));
  if (reply.ok) keepFile(path, reply.value);
  if (reply.ok || reply.failure.unreached !== true) return reply;
  const kept = await keptAnswer(path);
  return kept === undefined ? reply : { ok: true, value: await kept.blob() };
}

/** Sends a request whose answer is a file. */
export function requestFile(path: string, body: unknown): Promise<Reply<Blob>> {
  return fileOf(send('POST', path, asJson(body)));
}

async function readAnswer<T>(answer: Sent, schema: z.ZodType<T>): Promise<Reply<T>> {
  if (!answer.ok) return answer;
  let content: unknown;
  try {
    content = answer.value.status === 204 ? undefined : await answer.value.json();
  } catch {
    return failed(`The server’s answer (${answer.value.status}) cannot be read.`);
  }
  if (!answer.value.ok) return failureOf(answer.value.status, content, schema);
  const parsed = schema.safeParse(content);
  if (parsed.success) return { ok: true, value: parsed.data };
  return failed(
    'The server’s answer is not what this page knows: reload the page, or start the same version of both.',
  );
}

async function fileOf(sent: Promise<Sent>): Promise<Reply<Blob>> {
  const answer = await sent;
  if (!answer.ok) return answer;
  if (answer.value.ok) {
    try {
      return { ok: true, value: await answer.value.blob() };
    } catch {
      return failed('The file broke off on its way: try again.');
    }
  }
  const content: unknown = await answer.value.json().catch(() => undefined);
  return failureOf(answer.value.status, content, z.never());
}

function asJson(body: unknown): RequestInit {
  if (body === undefined) return {};
  return { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
}

/** The shop that this page was opened for; another window may look at another one meanwhile. */
let shopOfPage: string | undefined;

/** Says for which shop everything is asked from now on. */
export function pageOfShop(shop: string | undefined): void {
  shopOfPage = shop;
}

async function send(method: string, path: string, content: RequestInit): Promise<Sent> {
  try {
    const value = await fetch(path, { method, ...ofShop(content) });
    if (!ANSWERED_BY_PROXY.includes(value.status)) {
      noteReach(true);
      return { ok: true, value };
    }
  } catch {
    // no answer
  }
  noteReach(false);
  return UNREACHED;
}

/** What a proxy answers in the place of a server that it does not reach. */
const ANSWERED_BY_PROXY: readonly number[] = [502, 504];

const UNREACHED: Failed = {
  ok: false,
  failure: {
    message: 'The Furrow server does not answer: is the program still running?',
    issues: [],
    unreached: true,
  },
};

function ofShop(content: RequestInit): RequestInit {
  if (shopOfPage === undefined) return content;
  return {
    ...content,
    headers: { ...(content.headers as Record<string, string>), [SHOP_HEADER]: shopOfPage },
  };
}
