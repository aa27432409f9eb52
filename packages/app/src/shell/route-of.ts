import { PAGES, type PageEntry } from './page-table.ts';

/** A job by its address: a saved one by its id, else a demo job by its name, else the demo job that is shown first. */
export interface JobAddress {
  readonly id?: string;
  readonly demo?: string;
}

/** The page of an address, and the job it is shown for. */
export interface Route {
  readonly page: PageEntry;
  /** Undefined for a page of the shop. */
  readonly job?: JobAddress;
}

/** Which page an address shows; undefined where there is none. */
export function routeOf(path: string): Route | undefined {
  const parts = path.replace(/^\/|\/+$/gu, '').split('/');
  const [kind = '', name, end = ''] = parts;
  if (parts.length === 1) {
    if (kind === '') return pageOfJob('', {});
    const page = PAGES.find((entry) => entry.of === 'shop' && entry.end === kind);
    return page === undefined ? undefined : { page };
  }
  if (parts.length > 3 || name === undefined || name === '' || (parts.length === 3 && end === ''))
    return undefined;
  if (kind === 'jobs') return pageOfJob(end, { id: decoded(name) });
  return kind === 'demo' ? pageOfJob(end, { demo: decoded(name) }) : undefined;
}

function pageOfJob(end: string, job: JobAddress): Route | undefined {
  const page = PAGES.find((entry) => entry.of !== 'shop' && entry.end === end);
  return page === undefined ? undefined : { page, job };
}

/** A part of an address as it was meant; one that is not well written stays as it is. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
