import type { Originals } from './original/index.ts';
import type { Store } from './store.ts';

/** Erases files of which no run and no readings of any job speak any longer; the others stay. */
export async function eraseUnused(
  { runs, readings }: Pick<Store, 'runs' | 'readings'>,
  originals: Pick<Originals, 'erase'>,
  hashes: readonly string[],
): Promise<void> {
  for (const sha256 of hashes) {
    const isUsed = (await runs.hasFile(sha256)) || (await readings.hasFile(sha256));
    if (!isUsed) await originals.erase(sha256);
  }
}
