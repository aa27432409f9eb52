import { z } from 'zod';
import { amount } from '../document/index.ts';
import { price } from './price-field.ts';
import { rate } from './rate-field.ts';

/** Another way to make the groove, with the shop's own rate for it. */
const alternative = () =>
  z.strictObject({
    groove_m_per_h: rate({
      title: 'Groove, m per h',
      help: 'Finished metres of this groove in one working hour; it goes before a rate by volume.',
      least: 0.001,
      most: 1000,
      unit: 'm/h',
      never: 'at 0 m/h the groove is never made; leave the rate out if it is not known.',
    }).optional(),
    removal_cm3_per_min: rate({
      title: 'Removal, cm3 per min',
      help: 'Metal taken off in cm3 per minute of work.',
      least: 0.01,
      most: 1000,
      unit: 'cm3/min',
      never: 'at 0 cm3/min the groove is never made; leave the rate out if it is not known.',
    }).optional(),
    crew_per_hour: price({
      title: 'Crew per hour',
      help: 'Labour and overhead of the crew that does it; left out: that of the rates.',
    }).optional(),
    set_up_time: amount(
      'time',
      { least: 0, most: 7 * 86_400 },
      {
        title: 'Set-up',
        help: 'Time before the work begins; left out: the job’s for manual gouging and machining, none for grinding and chipping.',
      },
    ).optional(),
    consumables_per_m: price({
      title: 'Consumables per m',
      help: 'Electrodes, discs, chisels or cutters for one metre of groove; left out: none are counted.',
    }).optional(),
  });

/** Other ways to make the groove, each with what the shop knows of it. */
export const alternatives = z.strictObject({
  manual_gouging: alternative(),
  grinding: alternative(),
  chipping: alternative(),
  machining: alternative(),
});
