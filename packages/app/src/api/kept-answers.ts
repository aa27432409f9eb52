import { API_PATHS } from '@furrow/contract';

/** Whose answers are kept: a person's in a shop; nobody's by name on a computer of one's own. */
type Whose = readonly [shop: string, account: string] | undefined;

const PREFIX = 'furrow.answers';
/** Answers that are kept for one person in one shop; those that were kept first go first [-]. */
const ANSWERS_MOST = 500;
/** The largest file that is kept [bytes]. */
const FILE_MOST = 16 * 2 ** 20;

/** Who may sign in is asked each time. */
const NEVER_KEPT: readonly string[] = [
  API_PATHS.session,
  API_PATHS.sessionShop,
  API_PATHS.accounts,
  API_PATHS.shops,
  API_PATHS.machines,
];

let whose: Whose;
/** One after the other, so that what came later stays. */
let writing: Promise<unknown> = Promise.resolve();

/** Answers are kept where the app itself is: a page that cannot be opened without the server has no use for them. */
function keepsAnswers(): boolean {
  return typeof navigator !== 'undefined' && (navigator.serviceWorker?.controller ?? null) !== null;
}

/** From now on answers are kept for this person in this shop alone, and none of another is given. */
export function keepAnswersFor(next: Whose): void {
  whose = next;
}

function name(): string {
  return whose === undefined ? PREFIX : `${PREFIX} ${JSON.stringify(whose)}`;
}

/** Keeps what was answered last at an address. */
export function keepAnswer(path: string, answer: unknown): void {
  keep(path, () => new Response(JSON.stringify(answer), { headers: { 'content-type': 'application/json' } }));
}

/** Keeps a file whose content never changes; a large one is not kept. */
export function keepFile(path: string, file: Blob): void {
  if (file.size <= FILE_MOST) keep(path, () => new Response(file));
}

function keep(path: string, answer: () => Response): void {
  if (!keepsAnswers() || NEVER_KEPT.includes(path)) return;
  const into = name();
  writing = writing
    .then(async () => {
      const cache = await caches.open(into);
      await cache.delete(path);
      await cache.put(path, answer());
      const first = (await cache.keys()).slice(0, -ANSWERS_MOST);
      await Promise.all(first.map((request) => cache.delete(request)));
    })
    // a full or closed memory is no reason to stop working
    .catch(() => undefined);
}

/** What was answered last at an address; undefined where nothing is kept. */
export async function keptAnswer(path: string): Promise<Response | undefined> {
  if (!keepsAnswers() || NEVER_KEPT.includes(path)) return undefined;
  const from = name();
  await writing;
  try {
    return await (await caches.open(from)).match(path);
  } catch {
    return undefined;
  }
}

/** Lets go of every answer, whoever's. */
export async function forgetAnswers(): Promise<void> {
  if (typeof caches === 'undefined') return;
  await writing;
  const names = await caches.keys();
  await Promise.all(names.filter((each) => each.startsWith(PREFIX)).map((each) => caches.delete(each)));
}
