/** The pages of the app. */
export type Route =
  | { readonly page: 'bench'; readonly id?: string; readonly demo?: string }
  | { readonly page: 'jobs' }
  | { readonly page: 'kit' }
  | { readonly page: JobRoom; readonly id?: string; readonly demo?: string }
  | { readonly page: 'commission'; readonly id: string }
  | { readonly page: 'unknown' };

/** Pages of a job, saved or demo, whose address ends with their name. */
const JOB_ROOMS = ['supply', 'bay', 'heat', 'cost', 'hazards', 'papers'] as const;
type JobRoom = (typeof JOB_ROOMS)[number];

/** Which page an address shows. */
export function routeOf(path: string): Route {
  const plain = path.replace(/\/+$/u, '');
  if (plain === '') return { page: 'bench' };
  if (plain === '/jobs') return { page: 'jobs' };
  if (plain === '/kit') return { page: 'kit' };
  const [, kind, name = '', end] = /^\/(jobs|demo)\/([^/]+)\/([^/]+)$/u.exec(plain) ?? [];
  const room = JOB_ROOMS.find((one) => one === end);
  if (room !== undefined) {
    return kind === 'jobs' ? { page: room, id: decoded(name) } : { page: room, demo: decoded(name) };
  }
  const rig = /^\/jobs\/([^/]+)\/commission$/u.exec(plain)?.[1];
  if (rig !== undefined) return { page: 'commission', id: decoded(rig) };
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
