import type { z } from 'zod';
import { failed, failureOf, type Reply } from './failure.ts';

/** Sends a request to the server this page came from and reads its answer by a schema of the contract. */
export async function request<T>(
  method: string,
  path: string,
  schema: z.ZodType<T>,
  body?: unknown,
): Promise<Reply<T>> {
  const answer = await send(method, path, body);
  if (!answer.ok) return answer;
  let content: unknown;
  try {
    content = answer.value.status === 204 ? undefined : await answer.value.json();
  } catch {
    return failed(`The server’s answer (${answer.value.status}) cannot be read.`);
  }
  if (!answer.value.ok) return failureOf(answer.value.status, content);
  const parsed = schema.safeParse(content);
  if (parsed.success) return { ok: true, value: parsed.data };
  return failed(
    'The server’s answer is not what this page knows: reload the page, or start the same version of both.',
  );
}

/** Sends a request whose answer is a file. */
export async function requestFile(path: string, body: unknown): Promise<Reply<Blob>> {
  const answer = await send('POST', path, body);
  if (!answer.ok) return answer;
  if (answer.value.ok) return { ok: true, value: await answer.value.blob() };
  const content: unknown = await answer.value.json().catch(() => undefined);
  return failureOf(answer.value.status, content);
}

async function send(method: string, path: string, body: unknown): Promise<Reply<Response>> {
  const sent =
    body === undefined
      ? { method }
      : { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
  try {
    return { ok: true, value: await fetch(path, sent) };
  } catch {
    return failed('The Furrow server does not answer: is the program still running?');
  }
}
