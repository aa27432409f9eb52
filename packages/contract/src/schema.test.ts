import type {
  Answer,
  CostAnswer,
  CostChangeReport,
  FaultCounts,
  FaultEvidence,
  HazardReport,
  HeatReport,
  Issue,
  Written,
} from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import type { answerSchema } from './answer-schema.ts';
import type { costChangeSchema, costSchema } from './cost-schema.ts';
import type { CountedFaults, faultEvidenceSchema } from './fault-count-schema.ts';
import type { hazardSchema } from './hazard-schema.ts';
import type { heatSchema } from './heat-schema.ts';
import type { issueSchema } from './issue-schema.ts';

// The type checker runs these: a field that the engine has and a schema has not (or the other way round)
// makes `true` unassignable. `readonly` does not count, JSON knows nothing of it.
type Writable<T> = T extends object ? { -readonly [Key in keyof T]: Writable<T[Key]> } : T;
type Equal<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false;
type Same<Schema extends z.ZodType, Type> = Equal<Writable<z.output<Schema>>, Writable<Type>>;

describe('schemas of the contract', () => {
  it('describe the very types of the engine', () => {
    const issue: Same<typeof issueSchema, Issue> = true;
    const answer: Same<typeof answerSchema, Answer> = true;
    const heat: Same<typeof heatSchema, Written<HeatReport>> = true;
    const cost: Same<typeof costSchema, CostAnswer> = true;
    const change: Same<typeof costChangeSchema, CostChangeReport> = true;
    const evidence: z.output<typeof faultEvidenceSchema> extends FaultEvidence ? true : false = true;
    const counts: Equal<Omit<CountedFaults, 'cases'>, Writable<FaultCounts>> = true;
    const hazard: Same<typeof hazardSchema, HazardReport> = true;
    expect([hazard, issue, answer, heat, cost, change, evidence, counts]).not.toContain(false);
  });
});
