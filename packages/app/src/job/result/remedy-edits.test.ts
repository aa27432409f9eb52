import { readFileSync } from 'node:fs';
import { answerJob } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { editFile, jobFile } from '../../sheet/document/index.ts';
import { readGood } from '../../testing/index.ts';
import { remedyEdits } from './remedy-edits.ts';

const POCKET = readFileSync(new URL('../../../../../examples/defect-pocket.yaml', import.meta.url), 'utf8');

function answerOf(text: string) {
  return answerJob({ job: readGood(text), version: '0' });
}

/** Pockets that are refused, each for one thing. */
const REFUSED: Readonly<Record<string, string>> = {
  'too little room': POCKET.replace('most: 20 mm', 'most: 10.5 mm'),
};

describe('trying a remedy', () => {
  it.each(Object.entries(REFUSED))('frees the job as it was told to: %s', (_name, text) => {
    const { refusal } = answerOf(text);
    expect(refusal, 'the job is refused').toBeDefined();
    const { job } = readGood(text);
    let tried = 0;
    for (const units of ['metric', 'inch'] as const) {
      for (const remedy of refusal!.binding.filter(({ frees }) => frees).slice(0, 1)) {
        const edits = remedyEdits(remedy, job, units);
        if (edits.length === 0) continue;
        tried += 1;
        const edited = editFile(jobFile(text), edits);
        expect(edited.ok).toBe(true);
        if (edited.ok) expect(answerOf(edited.file.text).plan, remedy.constraint).toBeDefined();
      }
    }
    expect(tried).toBeGreaterThan(0);
  });

  it('lets go of locks, one or all', () => {
    const { job } = readGood(`${POCKET}\nlocks: { layers: 1, tracks: 1 }\n`);
    const remedy = (constraint: string) => ({
      constraint,
      demand: 0,
      limit: 2,
      unit: 'locks' as const,
      remedy: '',
      frees: true,
    });
    expect(remedyEdits(remedy('locks.layers'), job, 'metric')).toEqual([
      { do: 'remove', path: ['locks', 'layers'] },
    ]);
    expect(remedyEdits(remedy('locks'), job, 'metric')).toHaveLength(2);
    expect(remedyEdits(remedy('something_else'), job, 'metric')).toEqual([]);
  });
});
