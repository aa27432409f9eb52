import {
  type Commissioning,
  commissioningConflictSchema,
  conflictSchema,
  errorSchema,
  gaugeSchemas,
  kitSchemas,
  knowledgeSchemas,
  readingsSchemas,
  type SavedJob,
  type SavedShopFile,
} from '@furrow/contract';
import type { Issue } from '@furrow/engine';

/** Why the server did not do what was asked, in words. */
export interface ApiFailure {
  readonly message: string;
  readonly issues: readonly Issue[];
  /** The job as it is saved now, where a save would have overwritten it. */
  readonly newer?: SavedJob;
  /** The kit as it is saved now, where a save would have overwritten it. */
  readonly newerKit?: SavedShopFile;
  /** The shop's trials as they are saved now, where a save would have overwritten them. */
  readonly newerTrials?: SavedShopFile;
  /** The gauge as it is saved now, where a save would have overwritten it. */
  readonly newerGauge?: SavedShopFile;
  /** What was run and gauged on the job as it is saved now, where a save would have overwritten it. */
  readonly newerReadings?: SavedShopFile;
  /** The rig's readings as they are saved now, where a save would have overwritten them. */
  readonly newerRig?: Commissioning;
}

/** What was asked for, or why it did not come. */
export type Reply<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly failure: ApiFailure };

/** A failure in words, without a server's answer behind it. */
export function failed(message: string): { readonly ok: false; readonly failure: ApiFailure } {
  return { ok: false, failure: { message, issues: [] } };
}

/** Reads the body of an answer that is not a success. */
export function failureOf(
  status: number,
  body: unknown,
): { readonly ok: false; readonly failure: ApiFailure } {
  const conflict = conflictSchema.safeParse(body);
  if (conflict.success) {
    const { message, newer } = conflict.data;
    return { ok: false, failure: { message, issues: [], newer } };
  }
  const kitConflict = kitSchemas.conflict.safeParse(body);
  if (kitConflict.success) {
    const { message, newer } = kitConflict.data;
    return { ok: false, failure: { message, issues: [], newerKit: newer } };
  }
  const trialsConflict = knowledgeSchemas.conflict.safeParse(body);
  if (trialsConflict.success) {
    const { message, newer } = trialsConflict.data;
    return { ok: false, failure: { message, issues: [], newerTrials: newer } };
  }
  const gaugeConflict = gaugeSchemas.conflict.safeParse(body);
  if (gaugeConflict.success) {
    const { message, newer } = gaugeConflict.data;
    return { ok: false, failure: { message, issues: [], newerGauge: newer } };
  }
  const readingsConflict = readingsSchemas.conflict.safeParse(body);
  if (readingsConflict.success) {
    const { message, newer } = readingsConflict.data;
    return { ok: false, failure: { message, issues: [], newerReadings: newer } };
  }
  const rigConflict = commissioningConflictSchema.safeParse(body);
  if (rigConflict.success) {
    const { message, newer } = rigConflict.data;
    return { ok: false, failure: { message, issues: [], newerRig: newer } };
  }
  const error = errorSchema.safeParse(body);
  if (!error.success) return failed(`The server answered ${status} without saying why.`);
  return {
    ok: false,
    failure: { message: error.data.message, issues: (error.data.issues ?? []) as Issue[] },
  };
}
