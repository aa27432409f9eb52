/**
 * A program to be killed: saves jobs without end into the folder given and prints a line for each save once
 * it has been acknowledged: `id number sha256-of-text`.
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

function acknowledge(job: { id: string; revision_number: number; revision: string | null }): void {
  writeSync(1, `${job.id} ${job.revision_number} ${job.revision}\n`);
}

let job = await store.create(contentOf(0));
acknowledge(job);
for (let turn = 1; ; turn++) {
  if (turn % 7 === 0) {
    job = await store.create(contentOf(turn));
  } else {
    const outcome = await store.save(job.id, contentOf(turn), job.revision_number);
    if (!outcome.ok) throw new Error(`the save of turn ${turn} was refused: ${outcome.code}`);
    job = outcome.job;
  }
  acknowledge(job);
}
