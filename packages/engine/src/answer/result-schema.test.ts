import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readJob } from '../job/index.ts';
import { readKit } from '../kit/index.ts';
import { sentencesWritten } from '../quantity/index.ts';
import { RESULT_SCHEMAS, writtenAnswer } from '../result/index.ts';
import { answerCost, answerHazard, answerHeat, answerJob, coolingForCost, tryCostChanges } from './index.ts';

const textOf = (name: string): string =>
  readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8');

/** The value of a reading that is known to be good. */
function good<Value>(read: { readonly ok: true; readonly value: Value } | { readonly ok: false }): Value {
  if (!read.ok) throw new Error('an example cannot be read');
  return read.value;
}

it('keeps each result of a demo job to its schema, with no key that the schema does not know', () => {
  const job = good(readJob(textOf('defect-pocket')));
  const kit = good(readKit(textOf('yard-kit')));
  const answer = answerJob({ job, version: '0', kit });
  const { inputs } = answer;
  const heating = answerHeat(job, answer, { quality: 'quick' });
  let step = heating.next();
  while (step.done !== true) step = heating.next();
  const waits = coolingForCost(job, answer);
  const cost = answerCost(job, answer, waits);
  if (cost.kind === 'no_plan') throw new Error('the demo job has a plan');
  const first = tryCostChanges(job, answer, cost, kit, waits).next();
  const results = {
    plan: writtenAnswer(answer, 'metric'),
    supply: answer.supply,
    heat: { inputs, heat: step.value?.report },
    cost: { inputs, cost, changes: first.done === true ? [] : [first.value] },
    hazards: { inputs, hazard: answerHazard(job, answer, kit) },
  };
  for (const [name, result] of Object.entries(results)) {
    const written: unknown = JSON.parse(JSON.stringify(sentencesWritten(result, 'metric')));
    const { data, error } = RESULT_SCHEMAS[name as keyof typeof results].safeParse(written);
    expect(error, name).toBeUndefined();
    expect(data, name).toEqual(written);
  }
});
