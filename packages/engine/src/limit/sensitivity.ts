import type { Job } from '../job/index.ts';
import type { Candidate, LimitFunction } from './candidate.ts';
import type { Limit } from './limit.ts';

/** Step in a setting with which its effect is measured [-]. */
const STEP = 0.01;
const SETTINGS = { current: 'current', voltage: 'arc_voltage', travel: 'travel' } as const;

/**
 * Evaluates limits with how each demand answers to current, arc voltage and travel.
 *
 * Each setting is raised by one per cent, the others kept; settings without effect are left out.
 *
 * @param limits - the limit function [record], any
 * @param candidate - the setting [record], any
 * @param job - the job [record], from `readJob`
 * @returns the limits with their sensitivities [list]
 * @source none: one-sided difference quotient
 * @example
 * withSensitivity((c) => [limitOf({ id: 'x', title: 'x', demand: c.current, capacity: 500, unit: 'A', sense: 'most', hard: true, source: { text: 'x', provenance: 'derived' }, remedy: '' })], { current: 400, voltage: 40, travel: 0.01 }, {})[0].sensitivity // => [{"setting":"current","demand_percent":1}]
 */
export function withSensitivity(limits: LimitFunction, candidate: Candidate, job: Job): readonly Limit[] {
  const base = limits(candidate, job);
  const settings = Object.keys(SETTINGS) as (keyof typeof SETTINGS)[];
  const moved = settings.map((setting) => ({
    setting,
    limits: new Map(
      limits({ ...candidate, [setting]: candidate[setting] * (1 + STEP) }, job).map((limit) => [
        limit.id,
        limit,
      ]),
    ),
  }));
  return base.map((limit) => {
    const sensitivity = moved.flatMap(({ setting, limits: after }) => {
      const demand = after.get(limit.id)?.demand ?? limit.demand;
      const change = limit.demand === 0 ? 0 : (demand / limit.demand - 1) / STEP;
      const rounded = Math.round(change * 1000) / 1000;
      return rounded === 0 ? [] : [{ setting: SETTINGS[setting], demand_percent: rounded }];
    });
    // A remedy may take work to find: it is still asked for only when it is read.
    const copy = Object.defineProperties({} as Limit, Object.getOwnPropertyDescriptors(limit));
    return Object.assign(copy, { sensitivity });
  });
}
