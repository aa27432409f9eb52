import { errorSchema } from '@furrow/contract';
import type { Issue } from '@furrow/engine';
import { z } from 'zod';

/** Why the server did not do what was asked, in words. */
export interface ApiFailure<Saved = never> {
  readonly message: string;
  readonly issues: readonly Issue[];
  /** What is saved now, where a save would have overwritten it. */
  readonly newer?: Saved;
  /** Whether no answer came at all. */
  readonly unreached?: true;
}

/** What did not come. */
export interface Failed<Saved = never> {
  readonly ok: false;
  readonly failure: ApiFailure<Saved>;
}

/** What was asked for, or why it did not come. */
export type Reply<T> = { readonly ok: true; readonly value: T } | Failed<T>;

/** A failure in words, without a server's answer behind it. */
export function failed(message: string): Failed {
  return { ok: false, failure: { message, issues: [] } };
}

/** Reads the body of an answer that is not a success; a refused save tells what is saved, as the save itself would. */
export function failureOf<T>(status: number, body: unknown, saved: z.ZodType<T>): Failed<T> {
  const error = errorSchema.safeParse(body);
  if (!error.success) return failed(`The server answered ${status} without saying why.`);
  const { message, issues = [] } = error.data;
  const failure = { message, issues: issues as Issue[] };
  const conflict = z.object({ newer: saved }).safeParse(body);
  const newer = conflict.success ? conflict.data.newer : undefined;
  return { ok: false, failure: newer === undefined ? failure : { ...failure, newer } };
}
