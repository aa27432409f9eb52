import type { FaultCounts, FaultEvidence } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import type { CountedFaults, faultEvidenceSchema } from './fault-count-schema.ts';

// The type checker runs these: a field that the engine has and a schema has not (or the other way round)
// makes `true` unassignable. `readonly` does not count, JSON knows nothing of it.
type Writable<T> = T extends object ? { -readonly [Key in keyof T]: Writable<T[Key]> } : T;
type Equal<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false;

describe('schemas of the contract', () => {
  it('describe the very types of the engine', () => {
    const evidence: z.output<typeof faultEvidenceSchema> extends FaultEvidence ? true : false = true;
    const counts: Equal<Omit<CountedFaults, 'cases'>, Writable<FaultCounts>> = true;
    expect([evidence, counts]).not.toContain(false);
  });
});
