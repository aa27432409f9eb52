import type { DocumentStore } from '../document/document-store.ts';
import type { DocumentRevision, RevisionSummary } from '../document/document-table.ts';
import type { KitStore, StoredKit, StoredKitSummary } from './kit-store.ts';

/** A shop has one kit. */
const THE_KIT = 'kit';

/** The kit among the documents. */
export function sqlKitStore(kits: DocumentStore): KitStore {
  return {
    get: async () => kitOf(await kits.get(THE_KIT)),
    save: async ({ text, title, revision }, basedOn) => {
      const save = await kits.save(THE_KIT, { content: text, title, revision }, basedOn);
      return save.ok
        ? { ok: true, kit: { ...summaryOf(save.document), text: save.document.content } }
        : { ok: false, code: 'KIT_CHANGED_MEANWHILE', newer: kitOf(save.newer) };
    },
    revisions: async () => (await kits.revisions(THE_KIT)).map(summaryOf),
    revision: async (number) => kitOf(await kits.revision(THE_KIT, number)),
    eraseEarlier: async () => (await kits.eraseEarlier(THE_KIT)) ?? 0,
  };
}

function summaryOf({ number, title, revision, saved_at }: RevisionSummary): StoredKitSummary {
  return { title, revision, revision_number: number, saved_at };
}

function kitOf(revision: DocumentRevision | undefined): StoredKit | undefined {
  return revision && { ...summaryOf(revision), text: revision.content };
}
