import { expect, it } from 'vitest';
import type { Job } from '../job/index.ts';
import type { Candidate } from './candidate.ts';
import type { Limit } from './limit.ts';
import { limitOf } from './limit-of.ts';
import { withSensitivity } from './sensitivity.ts';

const CANDIDATE = { current: 800, voltage: 42, travel: 0.015 } as Candidate;
const JOB = {} as Job;

const stating = (id: string, demand: number): Limit =>
  limitOf({
    id,
    title: id,
    demand,
    capacity: 1e9,
    unit: 'A',
    sense: 'most',
    hard: true,
    source: { text: 'test', provenance: 'derived' },
    remedy: '',
  });

it('tells by how many per cent a demand answers to one per cent of each setting', () => {
  const [power, rate, fixed, none] = withSensitivity(
    ({ current, voltage, travel }) => [
      stating('power', current * voltage),
      stating('rate', 5 / travel),
      stating('fixed', 3),
      stating('none', 0),
    ],
    CANDIDATE,
    JOB,
  );
  expect(power!.sensitivity).toEqual([
    { setting: 'current', demand_percent: 1 },
    { setting: 'arc_voltage', demand_percent: 1 },
  ]);
  expect(rate!.sensitivity).toEqual([{ setting: 'travel', demand_percent: -0.99 }]);
  expect(fixed!.sensitivity).toEqual([]);
  expect(none!.sensitivity).toEqual([]);
});

it('leaves demand, capacity and verdict as they were, and stands a limit that comes and goes', () => {
  const limits = withSensitivity(
    ({ current }) => (current > 800 ? [] : [stating('there', 7)]),
    CANDIDATE,
    JOB,
  );
  expect(limits).toEqual([stating('there', 7)]);
});
