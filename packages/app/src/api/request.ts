import { SHOP_HEADER } from '@furrow/contract';
import { z } from 'zod';
import { type Failed, failed, failureOf, type Reply } from './failure.ts';

/** An answer of the server, or why there is none. */
type Sent = { readonly ok: true; readonly value: Response } | Failed;

/** Sends a request to the server this page came from and reads its answer by a schema of the contract. */
export async function request<T>(
  method: string,
  path: string,
  schema: z.ZodType<T>,
  body?: unknown,
): Promise<Reply<T>> {
  return readAnswer(await send(method, path, asJson(body)), schema);
}

/** Sends a file as it is, and reads the answer by a schema of the contract. */
export async function sendFile<T>(path: string, file: Blob, schema: z.ZodType<T>): Promise<Reply<T>> {
  const content = { headers: { 'content-type': 'application/octet-stream' }, body: file };
  return readAnswer(await send('POST', path, content), schema);
}

/** Asks for a file. */
export function fetchFile(path: string): Promise<Reply<Blob>> {
  return fileOf(send('GET', path, {}));
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
    return { ok: true, value: await fetch(path, { method, ...ofShop(content) }) };
  } catch {
    return failed('The Furrow server does not answer: is the program still running?');
  }
}

function ofShop(content: RequestInit): RequestInit {
  if (shopOfPage === undefined) return content;
  return {
    ...content,
    headers: { ...(content.headers as Record<string, string>), [SHOP_HEADER]: shopOfPage },
  };
}
