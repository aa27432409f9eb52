import { randomUUID } from 'node:crypto';
import { eraseUnused, type Originals, openStore, type Store, StoreFailure, THE_SHOP } from '@furrow/store';
import { badInput, type Run, type Told } from '../frame/command.ts';
import { folderOf, originalsIn, type StoreOptions, storePlace } from '../frame/store-place.ts';

interface EraseOptions extends StoreOptions {
  /** Whether only the revisions before the newest go. */
  readonly earlier: boolean;
  /** Whether only what was read goes: at the rig, of the run and of the groove, with the files that were measured. */
  readonly readings: boolean;
  /** Whether it is done; else only told. */
  readonly forGood: boolean;
}

/** Erases a saved job for good, or part of what is kept of it; without the word to do so it tells what would go. */
export const run: Run<EraseOptions> = async ([id = ''], options) => {
  if (options.earlier && options.readings)
    return badInput(['Either --earlier or --readings: one of them at a time.']);
  try {
    const store = await openStore(storePlace(options), { now: () => new Date(), newId: randomUUID });
    try {
      const originals = originalsIn(folderOf(options))(THE_SHOP);
      return await erased({ store, originals }, id, options);
    } finally {
      await store.close();
    }
  } catch (error) {
    if (!(error instanceof StoreFailure)) throw error;
    return badInput([error.message]);
  }
};

async function erased(
  { store, originals }: { readonly store: Store; readonly originals: Originals },
  id: string,
  { earlier, readings, forGood }: EraseOptions,
): Promise<Told> {
  const binned = (await store.listBin()).find((job) => job.id === id);
  const job = binned ?? (await store.get(id));
  if (job === undefined) return badInput(await unknownJob(store, id));
  const named = `“${job.title}” (${id})`;
  if (earlier) {
    const revisions = await store.revisions(id);
    if (revisions === undefined)
      return badInput([`${named} is in the bin: erase it whole, or restore it first.`]);
    if (revisions.length < 2)
      return told(`${named} has one revision only: there is nothing earlier to erase.`);
    if (!forGood) return wouldGo(`the revisions before ${job.revision_number} of ${named}`);
    const gone = (await store.eraseEarlier(id)) ?? 0;
    return told(`${gone === 1 ? 'One earlier revision' : `${gone} earlier revisions`} of ${named} erased.`);
  }
  const measured = await store.readings.hashesOf(id);
  if (readings) {
    if (!forGood)
      return wouldGo(
        `all that was ticked, read and found at the rig for ${named}, and what was run and gauged on it, ` +
          `with every revision${measured.length === 0 ? '' : ` and ${filesWords(measured.length)}`}`,
      );
    const gone = [await store.commissioning.erase(id), await store.readings.erase(id)];
    await eraseUnused(store, originals, measured);
    return told(gone.includes(true) ? `The readings of ${named} are erased.` : `${named} has no readings.`);
  }
  if (!forGood) return wouldGo(`${named} with all its revisions, its readings and the record of its papers`);
  const files = [...measured, ...(await store.runs.hashesOf(id))];
  if (binned === undefined) await store.bin(id);
  await store.erase(id);
  await eraseUnused(store, originals, files);
  return told(`${named} is erased.`);
}

function filesWords(count: number): string {
  return count === 1 ? 'the file that was measured' : `the ${count} files that were measured`;
}

function told(print: string): Told {
  return { exit: 0, print };
}

function wouldGo(what: string): Told {
  return told(`This would go: ${what}.\nNothing was erased. To erase it, say so: --for-good`);
}

/** What is kept, where the job that was named is not. */
async function unknownJob(store: Store, id: string): Promise<readonly string[]> {
  const all = [...(await store.list()), ...(await store.listBin())];
  return [
    `There is no saved job “${id.slice(0, 60)}” here.`,
    ...(all.length === 0
      ? ['No job is saved.']
      : ['Saved are:', ...all.map((job) => `  ${job.id}  ${job.title}`)]),
  ];
}
