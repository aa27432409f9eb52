import { expect, it } from 'vitest';
import type { IssueCode } from '../issue/index.ts';
import type { Composition } from './composition.ts';
import type { MetalFamily } from './metals/index.ts';
import { steelFamilyOf } from './steel-family.ts';

// nominal compositions of well-known grades
it.each<[string, Composition, MetalFamily]>([
  ['structural steel', { C: 0.16, Si: 0.35, Mn: 1.4 }, 'carbon_steel'],
  ['medium carbon steel', { C: 0.45, Mn: 0.75, Si: 0.25 }, 'carbon_steel'],
  ['2 1/4 Cr - 1 Mo', { C: 0.12, Cr: 2.25, Mo: 1, Mn: 0.5 }, 'low_alloy_steel'],
  ['9 Cr - 1 Mo', { C: 0.1, Cr: 9, Mo: 1, Mn: 0.5, V: 0.2 }, 'low_alloy_steel'],
  ['high-strength, just over in manganese', { C: 0.18, Mn: 1.65 }, 'low_alloy_steel'],
  ['type 304', { C: 0.05, Cr: 18.5, Ni: 8.5, Mn: 1.5, Si: 0.5 }, 'austenitic_stainless'],
  ['type 316L', { C: 0.02, Cr: 17, Ni: 11, Mo: 2.2, Mn: 1.5, Si: 0.5 }, 'austenitic_stainless'],
  ['type 201', { C: 0.08, Cr: 17, Ni: 4.5, Mn: 6.5, Si: 0.5 }, 'austenitic_stainless'],
  ['type 310', { C: 0.08, Cr: 25, Ni: 20, Mn: 1.5 }, 'austenitic_stainless'],
  ['grey iron', { C: 3.3, Si: 2, Mn: 0.6 }, 'cast_iron'],
  ['wear plate of manganese steel', { C: 1.2, Mn: 12.5, Si: 0.5 }, 'manganese_steel'],
])('%s is of the family it is known as', (_, composition, family) => {
  expect(steelFamilyOf(composition)).toEqual({ ok: true, value: family });
});

it.each<[string, Composition, IssueCode, string]>([
  ['duplex 2205', { C: 0.02, Cr: 22, Ni: 5.5, Mo: 3.1, Mn: 1.5 }, 'JOB_COMBINATION', 'duplex'],
  ['ferritic 430', { C: 0.05, Cr: 17, Mn: 0.5 }, 'JOB_COMBINATION', 'ferritic'],
  ['maraging steel', { C: 0.02, Ni: 18, Mo: 5 }, 'JOB_COMBINATION', 'outside the families'],
  ['nickel alloy', { C: 0.05, Ni: 75, Cr: 15.5 }, 'JOB_COMBINATION', 'less iron'],
  ['bronze', { C: 0, Cu: 90 }, 'JOB_COMBINATION', 'less iron'],
  ['ferrochrome', { C: 1, Cr: 60 }, 'JOB_COMBINATION', 'less iron'],
  ['carbon left out', { Mn: 1.4 }, 'JOB_FIELD_MISSING', 'carbon content is missing'],
  ['a content below 0', { C: -0.1 }, 'JOB_FIELD_VALUE', '-0.1 % C'],
  ['no number', { C: Number.NaN }, 'JOB_FIELD_VALUE', 'NaN % C'],
  ['a sum over 100 %', { C: 0.2, Cr: 60, Ni: 60 }, 'JOB_COMBINATION', '120.2 %'],
])('%s is refused, with the reason', (_, composition, code, reason) => {
  const outcome = steelFamilyOf(composition);
  expect(outcome).toMatchObject({ ok: false, issues: [{ code }] });
  expect(outcome.ok ? '' : outcome.issues[0]?.message).toContain(reason);
});

it('points at the family to name where iron is not the most', () => {
  expect(steelFamilyOf({ C: 0.05, Ni: 75 })).toMatchObject({ issues: [{ nearest: 'nickel_alloy' }] });
  expect(steelFamilyOf({ C: 0, Cu: 90 })).toMatchObject({ issues: [{ nearest: 'copper_alloy' }] });
});
