import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import {
  type DocumentDifference,
  jobDifference,
  kitDifference,
  type ReadJob,
  type ReadKit,
  readJob,
  readKit,
  type UnitSystem,
} from '@furrow/engine';

/** Copies of the files that papers were made from, kept beside them under names that a user’s own files do not have. */
const KEPT = { job: 'papers-made-from.job.yaml', kit: 'papers-made-from.kit.yaml' } as const;

/** The copies to keep beside new papers. */
export function keptFiles(texts: { readonly job: string; readonly kit: string | undefined }): readonly {
  readonly file: string;
  readonly bytes: Uint8Array;
}[] {
  const job = { file: KEPT.job, bytes: new TextEncoder().encode(texts.job) };
  if (texts.kit === undefined) return [job];
  return [job, { file: KEPT.kit, bytes: new TextEncoder().encode(texts.kit) }];
}

/** What papers that already lie in a folder were made from, and what has changed since. */
export interface Superseded {
  readonly revision: string;
  readonly kit_revision: string | null;
  readonly differences: readonly DocumentDifference[];
}

/** The papers in a folder that the new ones supersede; undefined where there are none, or of the same revisions. */
export async function supersededIn(
  folder: string,
  job: ReadJob,
  kit: ReadKit | undefined,
  units: UnitSystem,
): Promise<Superseded | undefined> {
  const before = await read(join(folder, KEPT.job), readJob);
  if (before === undefined) return undefined;
  const kitBefore = await read(join(folder, KEPT.kit), readKit);
  if (before.revision === job.revision && kitBefore?.revision === kit?.revision) return undefined;
  return {
    revision: before.revision,
    kit_revision: kitBefore?.revision ?? null,
    differences: [...jobDifference(before, job, units), ...kitDifferences(kitBefore, kit, units)],
  };
}

/** In what the kits differ; a kit that came or went is one difference. */
function kitDifferences(
  before: ReadKit | undefined,
  after: ReadKit | undefined,
  units: UnitSystem,
): readonly DocumentDifference[] {
  if (before !== undefined && after !== undefined) return kitDifference(before, after, units);
  const title = 'Kit';
  const path = 'kit';
  if (after !== undefined) {
    const name = after.kit.title;
    return [
      { path, title, before: null, after: name, words: `Kit: planned with “${name}”, without one before.` },
    ];
  }
  if (before === undefined) return [];
  const name = before.kit.title;
  return [
    { path, title, before: name, after: null, words: `Kit: planned without one, with “${name}” before.` },
  ];
}

/** What lies in a file; undefined where there is none, or this version cannot read it. */
async function read<Read>(
  file: string,
  reader: (text: string) => { readonly ok: true; readonly value: Read } | { readonly ok: false },
): Promise<Read | undefined> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (error) {
    // what cannot be read stands in the way, and is told when the papers are put there
    if (['ENOENT', 'EISDIR', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? ''))
      return undefined;
    throw error;
  }
  const outcome = reader(text);
  return outcome.ok ? outcome.value : undefined;
}
