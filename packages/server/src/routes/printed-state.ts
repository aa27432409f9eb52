import type { ListedPaper } from '@furrow/contract';
import {
  jobDifference,
  kitDifference,
  type ReadKit,
  readJob,
  readKit,
  type UnitSystem,
} from '@furrow/engine';
import type { Store, StoredPrinted } from '@furrow/store';
import type { PaperSource } from '../work/paper-file.ts';

type PrintedState = NonNullable<ListedPaper['printed']>;

/** For each file that was handed out, whether the newest of it is superseded and by what changes. */
export async function printedStates(
  store: Store,
  id: string,
  source: PaperSource,
): Promise<ReadonlyMap<string, PrintedState>> {
  const states = new Map<string, PrintedState>();
  // many papers are of one revision: each is told once
  const told = new Map<string, readonly string[]>();
  for (const printed of (await store.printed.list(id)) ?? []) {
    if (states.has(printed.paper)) continue;
    const { inputs } = source.subject.answer;
    const { revision_number, printed_at, released_by, revision, kit_revision, knowledge_id } = printed;
    const superseded =
      revision !== inputs.revision ||
      kit_revision !== (inputs.kit_revision ?? null) ||
      knowledgeChange(knowledge_id, inputs.knowledge) !== undefined;
    const key = `${revision_number} ${kit_revision} ${knowledge_id}`;
    if (superseded && !told.has(key)) told.set(key, await changesSince(store, id, printed, source));
    const changes = superseded ? [...(told.get(key) ?? [])] : [];
    states.set(printed.paper, { revision_number, printed_at, released_by, superseded, changes });
  }
  return states;
}

/** Which account released a paper as it is now; null where none did. */
export async function releaseOf(
  store: Store,
  id: string,
  file: string,
  { subject: { answer } }: PaperSource,
): Promise<{ readonly by: string | null; readonly at: string } | null> {
  const { revision, kit_revision = null, knowledge } = answer.inputs;
  const found = (await store.printed.list(id))?.find(
    (printed) =>
      printed.paper === file &&
      printed.revision === revision &&
      printed.kit_revision === kit_revision &&
      printed.knowledge_id === knowledge.id,
  );
  return found === undefined ? null : { by: found.released_by, at: found.printed_at };
}

/** What has changed since a paper was printed, in words. */
async function changesSince(
  store: Store,
  id: string,
  printed: StoredPrinted,
  { subject, options }: PaperSource,
): Promise<readonly string[]> {
  const stored = await store.revision(id, printed.revision_number);
  const before = stored === undefined ? undefined : readJob(stored.text);
  const job =
    before?.ok === true
      ? jobDifference(before.value, subject.read, options.units).map(({ words }) => words)
      : ['The revision that was printed cannot be read by this version of the program.'];
  const learned = knowledgeChange(printed.knowledge_id, subject.answer.inputs.knowledge);
  return [
    ...job,
    ...(await kitChanges(store, printed.kit_revision, subject.kit, options.units)),
    ...(learned === undefined ? [] : [learned]),
  ];
}

/** What the shop has learned since, in words; undefined where it is what it was. */
function knowledgeChange(
  before: string | null,
  now: PaperSource['subject']['answer']['inputs']['knowledge'],
): string | undefined {
  const own = now.date !== null;
  // papers handed out before their knowledge was kept rested on the published rows
  if (before === now.id || (before === null && !own)) return undefined;
  if (!own) return 'Knowledge: planned as a shop without history, with what the shop knew before.';
  const count = (many: number, what: string): string => `${many} ${what}${many === 1 ? '' : 's'}`;
  return `The shop has learned more since: it knows ${count(now.trials, 'trial')} and ${count(now.jobs, 'job')}, the latest of ${now.date}.`;
}

async function kitChanges(
  store: Store,
  revision: string | null,
  kit: ReadKit | undefined,
  units: UnitSystem,
): Promise<readonly string[]> {
  if (revision === (kit?.revision ?? null)) return [];
  if (revision === null) return [`Kit: planned with “${kit?.kit.title}”, without one before.`];
  if (kit === undefined) return ['Kit: planned without one, with one before.'];
  const summary = (await store.kit.revisions()).find((each) => each.revision === revision);
  const stored = summary && (await store.kit.revision(summary.revision_number));
  const before = stored && readKit(stored.text);
  return before?.ok === true
    ? kitDifference(before.value, kit, units).map(({ words }) => `Kit: ${words}`)
    : ['Kit: another one than before.'];
}
