import type { PaperChoices } from '@furrow/contract';
import type { ReadKit } from '@furrow/engine';
import type { Originals, Store } from '@furrow/store';
import { Refused } from '../guard/refused.ts';
import { readWhole } from '../reading/job-reading.ts';
import { readWholeKit } from '../reading/kit-reading.ts';
import type { Examples } from '../reading/read-examples.ts';
import type { Work } from '../work/open-work.ts';
import type { PaperSource } from '../work/paper-file.ts';
import { type Measured, measuredOf, readRecord } from './measured-files.ts';
import { storedJob } from './saved-job.ts';
import { shopGauge, shopKit, shopTrials } from './shop-files.ts';

/** Where papers come from: what is kept, who plans, and whether somebody still waits. */
export interface PaperPlace {
  readonly store: Store;
  readonly originals: Originals;
  readonly work: Work;
  readonly signal: AbortSignal;
}

/** What the papers of a saved job are made of, with what was read before the first arc and what was run and gauged. */
export async function savedPaperSource(
  from: PaperPlace,
  id: string,
  choices: PaperChoices,
  address: string,
): Promise<PaperSource> {
  const { store } = from;
  const job = await storedJob(store, id);
  const checked = (await store.commissioning.get(id))?.readings ?? {};
  const measured = await measuredOf(from, id);
  const { subject, options, trials } = await sourceOf(from, job.text, choices);
  const source = {
    trials,
    subject: { ...subject, ...(Object.keys(checked).length > 0 && { checked }) },
    options: { ...options, address, revision_number: job.revision_number },
  };
  return measured === undefined ? source : withMeasured(source, measured, await shopGauge(store));
}

/** What the papers of a demo job are made of; without a kit and trials of the shop's own, with the demo's. */
export function examplePaperSource(
  from: PaperPlace,
  examples: Examples,
  name: string,
  choices: PaperChoices,
): Promise<PaperSource> {
  const example = examples.jobs.find((each) => each.name === name);
  if (example === undefined)
    throw new Refused('PATH_NOT_FOUND', `There is no demo job “${name.slice(0, 60)}”.`);
  const demoKit = examples.kits[0];
  return sourceOf(from, example.text, choices, {
    kit: demoKit && readWholeKit(demoKit.text, 'The demo kit'),
    trials: examples.trials[0]?.text,
  });
}

/** The same with what was run and gauged, for papers that are filled in from it. */
export function filledSource(source: PaperSource, text: string, gauge: string | undefined): PaperSource {
  return withMeasured(source, readRecord(text), gauge);
}

function withMeasured(
  source: PaperSource,
  { readings, files }: Measured,
  gauge: string | undefined,
): PaperSource {
  return { ...source, subject: { ...source.subject, readings, measured: files }, gauge };
}

async function sourceOf(
  { store, work, signal }: PaperPlace,
  text: string,
  choices: PaperChoices,
  spare: { readonly kit?: ReadKit | undefined; readonly trials?: string | undefined } = {},
): Promise<PaperSource> {
  const { units, paper } = choices;
  const read = readWhole(text);
  const kit = choices.kit === 'shop' ? ((await shopKit(store)) ?? spare.kit) : undefined;
  const trials = choices.history === 'shop' ? ((await shopTrials(store)) ?? spare.trials) : undefined;
  const answer = await work.answer({ read, kit, knowledge: trials }, signal);
  return { subject: { read, answer, kit }, options: { units, paper }, trials };
}
