import { type PaperChoices, PROGRAM_VERSION } from '@furrow/contract';
import { answerJob, type ReadKit, readReadings } from '@furrow/engine';
import type { PaperOptions, PaperSubject } from '@furrow/papers';
import type { Store } from '@furrow/store';
import { readWhole } from './job-reading.ts';
import { readWholeKit } from './kit-reading.ts';
import type { Examples } from './read-examples.ts';
import { Refused } from './refused.ts';
import { storedJob } from './saved-job.ts';
import { toMend } from './to-mend.ts';

/** What the papers of a job are made of, and how. */
export interface PaperSource {
  readonly subject: PaperSubject;
  readonly options: PaperOptions;
}

/** What the papers of a saved job are made of, its readings before the first arc with it. */
export async function savedPaperSource(
  store: Store,
  id: string,
  choices: PaperChoices,
  address: string,
): Promise<PaperSource> {
  const job = await storedJob(store, id);
  const checked = (await store.commissioning.get(id))?.readings ?? {};
  const { subject, options } = await sourceOf(store, job.text, choices);
  return {
    subject: { ...subject, ...(Object.keys(checked).length > 0 && { checked }) },
    options: { ...options, address, revision_number: job.revision_number },
  };
}

/** What the papers of a demo job are made of. */
export function examplePaperSource(
  store: Store,
  examples: Examples,
  name: string,
  choices: PaperChoices,
): Promise<PaperSource> {
  const example = examples.jobs.find((each) => each.name === name);
  if (example === undefined)
    throw new Refused('PATH_NOT_FOUND', `There is no demo job “${name.slice(0, 60)}”.`);
  return sourceOf(store, example.text, choices);
}

/** The same with what was run and gauged, for papers that are filled in from it. */
export function filledSource(source: PaperSource, text: string): PaperSource {
  const outcome = readReadings(text);
  if (!outcome.ok) {
    const { issues } = outcome;
    throw new Refused('READINGS_NOT_READABLE', `The readings cannot be used yet: ${toMend(issues)}.`, {
      issues,
    });
  }
  return { ...source, subject: { ...source.subject, readings: outcome.value } };
}

async function sourceOf(store: Store, text: string, choices: PaperChoices): Promise<PaperSource> {
  const { units, paper } = choices;
  const read = readWhole(text);
  const kit = choices.kit === 'shop' ? await shopKit(store) : undefined;
  const answer = answerJob(read, PROGRAM_VERSION, kit, units);
  return { subject: { read, answer, kit }, options: { units, paper } };
}

async function shopKit(store: Store): Promise<ReadKit | undefined> {
  const saved = await store.kit.get();
  return saved && readWholeKit(saved.text, 'The kit saved here');
}
