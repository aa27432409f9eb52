import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readJob } from '../job/index.ts';
import { readKit } from '../kit/index.ts';
import { sentencesWritten } from '../quantity/index.ts';
import { RESULT_NAMES, RESULT_SCHEMAS, resultJsonSchema, writtenAnswer } from '../result/index.ts';
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

const UNIT_AT_END =
  /_(mm|mm2|mm3_per_mm|mm_per_min|m|m3_per_min|L_per_min|kPa|A|V|mV|W|kW|kVA|mohm|s|min|C|degC|K|deg|HV|kg|kJ|kJ_per_mm|kJ_per_m|dBA|dB|mT|mg_per_m3|percent)(_missing)?$/u;
/** Numbers without a unit whose name says what they are. */
const SPEAKS_FOR_ITSELF = new Set(['seed', 'trials', 'jobs', 'pass', 'stations', 'passes', 'line', 'column']);

it('tells of every number in a result what it is: by a unit in its key or in words', () => {
  const bare = new Set<string>();
  /** `told`: the list or choice that this is a part of says what it holds. */
  const look = (part: object, key: string, told: boolean): void => {
    const {
      type,
      description,
      properties = {},
      $defs = {},
      anyOf = [],
      oneOf = [],
      items,
    } = part as {
      readonly [Key in 'properties' | '$defs']?: Readonly<Record<string, object>>;
    } & { readonly [Key in 'anyOf' | 'oneOf']?: readonly object[] } & {
      readonly type?: string;
      readonly description?: string;
      readonly items?: object;
    };
    const known = told || description !== undefined;
    const isNumber = type === 'number' || type === 'integer';
    if (isNumber && !known && !UNIT_AT_END.test(key) && !SPEAKS_FOR_ITSELF.has(key)) bare.add(key);
    for (const [name, each] of Object.entries({ ...properties, ...$defs })) look(each, name, false);
    for (const each of [...anyOf, ...oneOf, ...(items === undefined ? [] : [items])]) look(each, key, known);
  };
  for (const name of RESULT_NAMES) look(resultJsonSchema(name), name, false);
  expect([...bare]).toEqual([]);
});
