import { jobFields } from '@furrow/engine';
import { expect, it } from 'vitest';
import { bindingAmounts, constraintTitle, REMEDY_AMOUNTS, REMEDY_COUNTS } from './remedy-words.ts';

it('calls what stands in the way as the form does', () => {
  const titles = new Set(jobFields().map((field) => field.title));
  for (const constraint of [...Object.keys(REMEDY_AMOUNTS), ...Object.keys(REMEDY_COUNTS)])
    expect(titles, constraint).toContain(constraintTitle(constraint));
  expect(constraintTitle('depth_minus')).toBe('Shallower by at most');
  expect(constraintTitle('locks.current')).toMatch(/^Locked: /u);
  expect(constraintTitle('not_too_deep')).toBe('Chance that no point is too deep');
  expect(constraintTitle('some_new.limit')).toBe('Some new limit');
});

it.each([
  ['depth_minus', 3.25, 'inch', '9/64 in', '0 in'],
  ['depth_minus', 3.25, 'metric', '3.25 mm', '0.00 mm'],
  ['width_least', 8, 'inch', '5/16 in', '0 in'],
  ['width_most', 60, 'inch', '2 3/8 in', '0 in'],
] as const)('%s of %d mm reads in %s units %s', (constraint, demand, units, asked, there) => {
  const binding = { constraint, demand, limit: 0, unit: 'mm', remedy: '', frees: true } as const;
  expect(bindingAmounts(binding, units)).toEqual({ asked, there });
});

it('tells of what does not free a job by itself what was asked, unrounded', () => {
  const binding = {
    constraint: 'source_current_most',
    demand: 350,
    limit: 300,
    unit: 'A',
    remedy: '',
    frees: false,
  } as const;
  expect(bindingAmounts(binding, 'inch')).toEqual({ asked: '350 A', there: '300 A' });
});
