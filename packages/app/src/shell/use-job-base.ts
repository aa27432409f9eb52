import { useOpenedJob } from '../job/page/index.ts';
import type { BenchState } from '../job/state/index.ts';
import { demoPath, jobPath } from '../ui/route/index.ts';
import { createStore, useSelected } from '../ui/store/index.ts';
import type { PageEntry } from './page-table.ts';

/** Where the pages of the open job lie. */
export interface JobBase {
  /** Id of the open job; undefined as long as none is saved. */
  readonly id: string | undefined;
  readonly addressOf: (page: PageEntry) => string;
}

/** Stands in as long as no job is open. */
const NO_JOB = createStore<Pick<BenchState, 'saved'>>({ saved: undefined });

/** Where the pages of the open job lie; those of a demo job by its name as long as none is saved. */
export function useJobBase(demo: string): JobBase {
  const opened = useOpenedJob();
  const store = opened !== undefined && 'bench' in opened ? opened.bench.store : NO_JOB;
  const id = useSelected<Pick<BenchState, 'saved'>, string | undefined>(store, (state) => state.saved?.id);
  const start = id === undefined ? demoPath(demo) : jobPath(id);
  return {
    id,
    addressOf: ({ of, end }) => (of === 'shop' ? `/${end}` : end === '' ? start : `${start}/${end}`),
  };
}
