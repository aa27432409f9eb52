import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readJob } from '../../job/index.ts';
import type { Answer } from '../../result/index.ts';
import { answerJob } from './answer-job.ts';

const PENSTOCK = readFileSync(new URL('../../../../../examples/penstock-seam.yaml', import.meta.url), 'utf8')
  .replace(/^heat:\n(?: .*\n)+/m, '')
  .replace(/^heat: \{.*\}\n/m, '')
  .replace('plus: 6 mm', 'plus: 10 mm')
  .replace('thickness: 32 mm', 'thickness: 40 mm');

function answerWith(most: number | null): Answer {
  const heat = most === null ? '' : `heat: { back_face: paint, back_face_most: ${most} degC }\n\n`;
  const read = readJob(PENSTOCK.replace('\nplate:', `\n${heat}plate:`));
  if (!read.ok) throw new Error(read.issues[0]!.message);
  return answerJob({ job: read.value, version: 'test' });
}

const limitOf = (answer: Answer) => answer.plan?.limits.find(({ id }) => id === 'back_face');

it('works out no back face that the job says nothing of', () => {
  expect(limitOf(answerWith(null))).toBeUndefined();
});

it('gives the same plan where the back face stands more, and tells the room', () => {
  const free = answerWith(null);
  const wide = answerWith(800);
  expect(wide.plan!.passes).toEqual(free.plan!.passes);
  expect(limitOf(wide)).toMatchObject({ hard: true, verdict: 'holds', source: { provenance: 'job file' } });
});

it('plans otherwise, and cooler behind, where the back face stands less', () => {
  const wide = answerWith(800);
  const { demand } = limitOf(wide)!;
  const most = Math.floor(demand - 6);
  const strict = answerWith(most);
  expect(limitOf(strict)).toMatchObject({ capacity: most });
  expect(limitOf(strict)!.verdict).not.toBe('fails');
  expect(limitOf(strict)!.demand).toBeLessThan(demand - 5);
});

it('refuses by the name of the back face where no plan keeps it cool enough', () => {
  const { refusal } = answerWith(90);
  expect(refusal!.binding.map(({ constraint }) => constraint)).toContain('back_face');
});
