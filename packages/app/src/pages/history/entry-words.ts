import type { HistoryEntry } from '@furrow/contract';

const KINDS: Readonly<Record<string, string>> = {
  job: 'a job',
  kit: 'the kit',
  rig: 'what was read at the rig',
  knowledge: 'the trials',
  gauge: 'the gauge',
  readings: 'the record of a job',
  logger: 'how a logger is read',
  fault: 'a fault found',
  run: 'a run',
  paper: 'a paper',
  account: 'an account',
  identity: 'who an account is to the provider',
  shop: 'a shop',
  machine: 'a logger',
};

const ACTS: Readonly<Record<string, string>> = {
  'kept before': 'kept before there was a history:',
  add: 'added',
  save: 'saved',
  bin: 'put into the bin:',
  restore: 'took out of the bin:',
  erase: 'erased for good:',
  'erase earlier': 'erased earlier revisions of',
  end: 'ended',
  release: 'handed out',
  set: 'changed',
  'set password': 'set the password of',
  link: 'made a one-time link for',
  'sign out': 'signed out',
};

/** What was done, as a person says it. */
export function entryWords({ act, kind, before, after }: HistoryEntry): string {
  const what = `${ACTS[act] ?? act} ${KINDS[kind] ?? kind}`;
  if (act === 'save') return before === null ? `${what}, the first revision` : `${what}, revision ${after}`;
  if (act === 'release') return `${what}: ${after?.split(' ').at(-1) ?? ''}`;
  if (kind === 'account' && (act === 'set' || act === 'add') && after !== null)
    return `${what}: ${rightsWords(after)}`;
  if (kind === 'shop' && after !== null) return `${what}: ${after}`;
  return what;
}

/** Rights as a person says them; what cannot be read is shown as it stands. */
function rightsWords(text: string): string {
  try {
    const { administrator, shut, shops } = JSON.parse(text) as {
      administrator: boolean;
      shut: boolean;
      shops: Record<string, string>;
    };
    const roles = Object.entries(shops).map(([shop, role]) => `${role} in ${shop}`);
    const words = [...(administrator ? ['administrator'] : []), ...roles, ...(shut ? ['shut'] : [])];
    return words.length === 0 ? 'no rights' : words.join(', ');
  } catch {
    return text;
  }
}
