import { type LimitFunction, limitOf } from '../limit/index.ts';
import { SHADE_SOURCE, SHADE_TABLE_END } from './filter-shade.ts';
import { distanceFromLead, IMPLANT_FIELD } from './magnetic-field.ts';

/**
 * Limits that the hazards put on a setting: the end of the shade table, and the field beside the leads.
 *
 * Advice, but for the shade table where the job itself states it as binding. The field counts only where the job
 * states how near an implant wearer comes; it is from memory and never binding.
 *
 * @returns the limit function [record]
 * @source 29 CFR 1910.133(a)(5) (confirmed); Directive 2013/35/EU (memory)
 * @example
 * hazardLimits()({ current: 900 }, demoJob.job).map(({ id }) => id) // => ["shade_table"]
 */
export function hazardLimits(): LimitFunction {
  return ({ current }, { site }) => [
    limitOf({
      id: 'shade_table',
      title: 'Current inside the table of filter shades',
      demand: current,
      capacity: SHADE_TABLE_END,
      unit: 'A',
      sense: 'most',
      hard: site.eyes.table === 'binding',
      source: SHADE_SOURCE,
      remedy: 'less current, or a competent person chooses the filter: the table has no row above this',
    }),
    ...(site.leads.wearer === undefined
      ? []
      : [
          limitOf({
            id: 'implant_distance',
            title:
              site.torches === 1
                ? 'Distance of an implant wearer from a single lead'
                : `Distance of an implant wearer from the leads of ${site.torches} torches, laid as one`,
            demand: site.leads.wearer,
            capacity: distanceFromLead(current * site.torches, IMPLANT_FIELD),
            unit: 'mm',
            sense: 'least',
            hard: false,
            source: { text: 'Directive 2013/35/EU, 0.5 mT', provenance: 'memory' },
            remedy: 'keep people with an implanted device out, lay the leads together, or use less current',
          }),
        ]),
  ];
}
