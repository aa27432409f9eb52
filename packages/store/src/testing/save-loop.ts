/**
 * A program to be killed: saves jobs, the kit, readings and faults found without end into the folder given and
 * prints a line for each save once it has been acknowledged: `kind id number mark`, the mark being what tells
 * this save from the others.
 */
import { createHash, randomUUID } from 'node:crypto';
import { writeSync } from 'node:fs';
import { openStore } from '../index.ts';

const [folder = '', label = ''] = process.argv.slice(2);
const store = await openStore({ folder }, { now: () => new Date(), newId: randomUUID });

function contentOf(turn: number): { text: string; title: string; revision: string } {
  const text = `title: ${label} ${turn}\n${`# line of save ${turn}\n`.repeat((turn * 37) % 800)}`;
  return { text, title: `${label} ${turn}`, revision: createHash('sha256').update(text).digest('hex') };
}

function acknowledge(kind: string, id: string, number: number, mark: string | null): void {
  writeSync(1, `${kind} ${id} ${number} ${mark}\n`);
}

function kept<Outcome extends { readonly ok: boolean }>(outcome: Outcome): Outcome & { readonly ok: true } {
  if (!outcome.ok) throw new Error(`a save was refused: ${JSON.stringify(outcome)}`);
  return outcome as Outcome & { readonly ok: true };
}

async function saveKit(turn: number): Promise<void> {
  const before = await store.kit.get();
  const { saved } = kept(await store.kit.save(contentOf(turn), before?.revision_number ?? 0));
  acknowledge('kit', 'kit', saved.revision_number, saved.revision);
}

async function saveReadings(jobId: string, turn: number): Promise<void> {
  const before = await store.commissioning.get(jobId);
  const { revision: mark } = contentOf(turn);
  const readings = { check: { text: mark, value: turn, note: 'x'.repeat((turn * 37) % 2000) } };
  const entry = { readings, ticks: [`row-${turn}`], findings: [] };
  const outcome = await store.commissioning.save(jobId, entry, before?.revision_number ?? 0);
  acknowledge('readings', jobId, kept(outcome).commissioning.revision_number, mark);
}

async function saveFault(turn: number): Promise<void> {
  const id = randomUUID();
  await store.faultCases.put({ id, cause: `cause-${turn}`, symptoms: { seen: 'yes' } });
  acknowledge('fault', id, 1, `cause-${turn}`);
}

let job = await store.create(contentOf(0));
acknowledge('job', job.id, 1, job.revision);
for (let turn = 1; ; turn++) {
  if (turn % 3 === 0) await saveKit(turn);
  if (turn % 3 === 1) await saveReadings(job.id, turn);
  if (turn % 3 === 2) await saveFault(turn);
  job =
    turn % 7 === 0
      ? await store.create(contentOf(turn))
      : kept(await store.save(job.id, contentOf(turn), job.revision_number)).job;
  acknowledge('job', job.id, job.revision_number, job.revision);
}
