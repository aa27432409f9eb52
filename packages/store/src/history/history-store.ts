import { entryOf } from './append.ts';
import type { Entry } from './change.ts';
import type { Work } from './work.ts';

/** Which entries of a history are looked for. */
export interface HistoryQuestion {
  /** Only those before this number; the newest if left out [-]. */
  readonly before?: number | undefined;
  /** Only those of this kind of thing. */
  readonly kind?: string | undefined;
  /** Only those of this thing. */
  readonly thing?: string | undefined;
  /** How many at most [-]. */
  readonly limit: number;
}

/** An entry with its hash. */
export type KeptEntry = Entry & { readonly hash: string };

/** The history of a shop, or of the company. Nothing is ever changed in it. */
export interface HistoryStore {
  /** Newest first. */
  list(question: HistoryQuestion): Promise<readonly KeptEntry[]>;
  /** Hash of the newest entry: another one where anything was changed since; undefined before the first. */
  end(): Promise<string | undefined>;
}

/** The history of the shop that work is done in. */
export function sqlHistoryStore({ kysely, run, desk }: Pick<Work, 'kysely' | 'run' | 'desk'>): HistoryStore {
  return {
    list: ({ before, kind, thing, limit }) =>
      run(async () => {
        let rows = kysely.selectFrom('history').selectAll().where('shop', '=', desk.shop);
        if (before !== undefined) rows = rows.where('number', '<', before);
        if (kind !== undefined) rows = rows.where('kind', '=', kind);
        if (thing !== undefined) rows = rows.where('thing', '=', thing);
        return (await rows.orderBy('number', 'desc').limit(limit).execute()).map(entryOf);
      }),
    end: () =>
      run(async () => {
        const head = await kysely
          .selectFrom('history_head')
          .select('hash')
          .where('shop', '=', desk.shop)
          .executeTakeFirst();
        return head?.hash;
      }),
  };
}
