/**
 * Keeps the built app in the browser, so that it opens and works where the server is not reached. Only the app's own files:
 * what the server answers about a job belongs to a person and is kept by the page (`api/kept-answers.ts`).
 *
 * While the server is reached, a page that is opened comes from it, so that no code outlives an update; names of scripts carry
 * the hash of their content, so one that is kept cannot be another than the one that was asked for.
 */

/** Files of this build and what it is known by; the build puts them here (`vite.config.ts`). */
declare const FURROW_BUILD: { readonly id: string; readonly files: readonly string[] };

/** What a service worker's events are, as far as they are used here. */
interface WaitedFor extends Event {
  readonly waitUntil: (work: Promise<unknown>) => void;
}
interface Asked extends WaitedFor {
  readonly request: Request;
  readonly respondWith: (answer: Promise<Response>) => void;
}
interface Scope {
  readonly addEventListener: ((is: 'install' | 'activate', listener: (event: WaitedFor) => void) => void) &
    ((is: 'fetch', listener: (event: Asked) => void) => void);
  readonly skipWaiting: () => Promise<void>;
  readonly clients: { readonly claim: () => Promise<void> };
}
const scope = self as unknown as Scope;

const { id, files } = FURROW_BUILD;
const PREFIX = 'furrow.app.';
const KEPT = PREFIX + id;
/** Where files lie whose names carry the hash of their content. */
const HASHED = '/assets/';
const FIRST_PAGE = '/index.html';
const known = new Set(files);
/** How long an opened page waits for a server on a network that swallows what is sent [ms]. */
const PATIENCE = 4000;

/** Pages that the server makes; the app cannot show them in its place. */
const MADE_BY_SERVER = /^\/api\/|\/card$|\/papers\/.|\./u;

scope.addEventListener('install', (event) => {
  const fetched = files.map(
    (file) => new Request(file, { cache: file.startsWith(HASHED) ? 'default' : 'no-cache' }),
  );
  event.waitUntil(
    caches
      .open(KEPT)
      .then((kept) => kept.addAll(fetched))
      .then(() => scope.skipWaiting()),
  );
});

scope.addEventListener('activate', (event) => {
  event.waitUntil(forgetOlder().then(() => scope.clients.claim()));
});

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== location.origin) return;
  if (request.mode === 'navigate') {
    if (request.destination === 'document' && !MADE_BY_SERVER.test(pathname))
      event.respondWith(openPage(request));
  } else if (known.has(pathname) || pathname.startsWith(HASHED)) event.respondWith(keptFile(request));
});

/** The page as the server has it, else as it is kept: of this build, never of an older one. */
async function openPage(request: Request): Promise<Response> {
  const kept = await caches.open(KEPT).then((cache) => cache.match(FIRST_PAGE));
  if (kept === undefined) return fetch(request);
  const late = new Promise<Response>((resolve) => setTimeout(() => resolve(kept), PATIENCE));
  const answered = fetch(request).then(
    (answer) => (answer.status < 500 ? answer : kept),
    () => kept,
  );
  return Promise.race([answered, late]);
}

/** A file of this build; one whose name carries its hash may be of the build before, for a page that still stands. */
async function keptFile(request: Request): Promise<Response> {
  const own = await caches.open(KEPT).then((cache) => cache.match(request));
  if (own !== undefined) return own;
  const hashed = new URL(request.url).pathname.startsWith(HASHED);
  return (hashed ? await caches.match(request) : undefined) ?? fetch(request);
}

/** A page that still stands loads parts of the build it came from: that one is kept as well, and none before it. */
async function forgetOlder(): Promise<void> {
  const builds = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== KEPT);
  await Promise.all(builds.slice(0, -1).map((name) => caches.delete(name)));
}
