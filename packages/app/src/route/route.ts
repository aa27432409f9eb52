/** The pages of the app. */
export type Route =
  | { readonly page: 'bench'; readonly id?: string; readonly demo?: string }
  | { readonly page: 'jobs' }
  | { readonly page: 'unknown' };

/** Which page an address shows. */
export function routeOf(path: string): Route {
  const plain = path.replace(/\/+$/u, '');
  if (plain === '') return { page: 'bench' };
  if (plain === '/jobs') return { page: 'jobs' };
  const id = /^\/jobs\/([^/]+)$/u.exec(plain)?.[1];
  if (id !== undefined) return { page: 'bench', id: decoded(id) };
  const demo = /^\/demo\/([^/]+)$/u.exec(plain)?.[1];
  return demo === undefined ? { page: 'unknown' } : { page: 'bench', demo: decoded(demo) };
}

/** Address of a saved job. */
export function jobPath(id: string): string {
  return `/jobs/${encodeURIComponent(id)}`;
}

/** Address of a demo job. */
export function demoPath(name: string): string {
  return `/demo/${encodeURIComponent(name)}`;
}

/** A part of an address as it was meant; one that is not well written stays as it is. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
