import { expect, it } from 'vitest';
import { metalOf } from '../material/index.ts';
import { polarityOf } from './polarity.ts';
import type { ReadKit } from './read-kit.ts';

const stated = (polarity: 'electrode_positive' | 'electrode_negative'): ReadKit =>
  ({ kit: { polarity }, defaultsUsed: [], revision: '' }) as unknown as ReadKit;
const left = { ...stated('electrode_positive'), defaultsUsed: [{ path: 'polarity', value: '', why: '' }] };

it.each([
  ['carbon_steel', 'electrode_positive'],
  ['austenitic_stainless', 'electrode_positive'],
  ['copper_alloy', 'electrode_negative'],
  ['nickel_alloy', 'electrode_negative'],
  ['cast_iron', 'electrode_negative'],
] as const)('%s goes on %s where the kit states none', (family, pole) => {
  expect(polarityOf(left, metalOf(family))).toMatchObject({ polarity: pole, issue: undefined });
});

it('follows a kit that agrees with the metal', () => {
  expect(polarityOf(stated('electrode_positive'), metalOf('cast_iron'))).toMatchObject({
    polarity: 'electrode_positive',
    source: { provenance: 'job file' },
    issue: undefined,
  });
});

it('names both sources where they contradict each other', () => {
  const { issue } = polarityOf(stated('electrode_positive'), metalOf('copper_alloy'));
  expect(issue!.message).toContain('The kit states electrode positive');
  expect(issue!.message).toContain('electrode negative');
  expect(issue!.message).toContain('common practice');
  expect(issue).toMatchObject({ path: 'polarity', nearest: 'electrode_negative' });
});
