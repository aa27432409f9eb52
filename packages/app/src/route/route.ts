/** The pages of the app. */
export type Route =
  | { readonly page: 'bench'; readonly id?: string }
  | { readonly page: 'jobs' }
  | { readonly page: 'unknown' };

/** Which page an address shows. */
export function routeOf(path: string): Route {
  const plain = path.replace(/\/+$/u, '');
  if (plain === '') return { page: 'bench' };
  if (plain === '/jobs') return { page: 'jobs' };
  const id = /^\/jobs\/([^/]+)$/u.exec(plain)?.[1];
  return id === undefined ? { page: 'unknown' } : { page: 'bench', id: decodeURIComponent(id) };
}

/** Address of a saved job. */
export function jobPath(id: string): string {
  return `/jobs/${encodeURIComponent(id)}`;
}
