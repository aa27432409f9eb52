import { z } from 'zod';
import { amount, described, type FieldFacts } from '../document/index.ts';
import { alternatives } from './alternative-fields.ts';
import { price } from './price-field.ts';
import { rate } from './rate-field.ts';
import { refill } from './refill-fields.ts';
import { spread } from './spread-fields.ts';

const WEEK = 7 * 86_400;

const minutesPerMetre = (facts: FieldFacts) => described(z.number().min(0).max(1000), facts);

const air = z.strictObject({
  price_per_m3: price({
    title: 'Air per m3',
    help: 'Price of one cubic metre of free air.',
    fallback: { text: 0, why: 'no price was stated, so air costs nothing in this result' },
  }),
  flow: amount(
    'air_flow',
    { least: 0, most: 5 },
    {
      title: 'Flow of the torch',
      help: 'Free air that the torch takes; left out: that of the kit, where one is used.',
    },
  ).optional(),
});

const hire = z.strictObject({
  source_per_day: price({
    title: 'Power source per day',
    help: 'Price of a hired second power source for one day.',
  }).optional(),
  compressor_per_day: price({
    title: 'Compressor per day',
    help: 'Price of a hired compressor for one day.',
  }).optional(),
  shift: amount(
    'time',
    { least: 3600, most: 86_400 },
    {
      title: 'Shift',
      help: 'Working time of one day, by which hired plant is counted.',
      fallback: { text: '8 h', why: 'a usual shift' },
    },
  ),
});

/** What comes before and after the arc: set-up, cleaning, grinding, inspection, refill; and what it costs. */
export const after = z.strictObject({
  set_up_time: amount(
    'time',
    { least: 0, most: WEEK },
    {
      title: 'Set-up',
      help: 'Time to place and connect everything before the first arc.',
      fallback: { text: '45 min', why: 'judgement, no source' },
    },
  ),
  commissioning_time: amount(
    'time',
    { least: 0, most: WEEK },
    {
      title: 'Commissioning',
      help: 'Time for the checks before the first arc.',
      fallback: { text: '20 min', why: 'judgement, no source' },
    },
  ),
  cooling_wait: amount(
    'time',
    { least: 0, most: WEEK },
    {
      title: 'Cooling waits',
      help: 'Waits for the interpass temperature, all together; left out: those of the heat report, where one was made.',
    },
  ).optional(),
  cleaning_min_per_m: minutesPerMetre({
    title: 'Cleaning, min per m',
    help: 'Minutes to brush and chip one metre of groove clean of slag and carbon.',
    fallback: { text: 3, why: 'judgement, no source' },
  }),
  skin_grinding_cm3_per_min: rate({
    title: 'Grinding, cm3 per min',
    help: 'Metal ground off in cm3 per minute of work, as the carburised skin is taken off.',
    fallback: { text: 3, why: 'a hand grinder (judgement, no source)' },
    least: 0.01,
    most: 1000,
    unit: 'cm3/min',
    never: 'at 0 cm3/min the skin is never off; set the grinding allowance to 0 mm if none is to be ground.',
  }),
  discs_per_hour: price({
    title: 'Discs per hour',
    help: 'Price of the discs that one hour of grinding takes.',
    fallback: { text: 0, why: 'no price was stated, so discs cost nothing in this result' },
  }),
  cap: described(z.enum(['as_welded', 'flush']), {
    title: 'Cap of the weld',
    help: 'Whether the cap stays as welded or is ground flush with the plate.',
    fallback: { text: 'as_welded', why: 'nothing was said of grinding it flush' },
  }),
  flush_grinding_min_per_m: minutesPerMetre({
    title: 'Grinding flush, min per m',
    help: 'Minutes to grind one metre of cap flush.',
    fallback: {
      text: 66,
      why: 'weld reinforcement ground by hand at 3 ft/h (US Office of Naval Research, hull seams)',
    },
  }),
  inspection_min_per_m: minutesPerMetre({
    title: 'Inspection, min per m',
    help: 'Minutes to inspect one metre, of the groove before welding and of the weld together.',
    fallback: { text: 8, why: 'judgement, no source' },
  }),
  rework_min_per_m: minutesPerMetre({
    title: 'Rework, min per m',
    help: 'Minutes per metre to mend a groove that did not reach its depth; left out: one more pass and its cleaning.',
  }).optional(),
  overhead_per_hour: price({
    title: 'Overhead per hour',
    help: 'What an hour costs beyond the labour rate: bay, plant, supervision.',
    fallback: { text: 0, why: 'the labour rate is meant to hold the overhead' },
  }),
  grinder_per_hour: price({
    title: 'Grinder per hour',
    help: 'Labour while grinding; left out: that of the crew.',
  }).optional(),
  inspector_per_hour: price({
    title: 'Inspector per hour',
    help: 'Labour while inspecting; left out: that of the crew.',
  }).optional(),
  air,
  refill,
  hire,
  spread,
  alternatives,
});
