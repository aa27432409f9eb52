import { z } from 'zod';
import { amount, described, text } from '../../document/index.ts';
import { MM } from '../../quantity/index.ts';

const name = (title: string, help: string) => text(40, { title, help });

const reading = z.strictObject({
  reading: amount('length', { least: 0, most: 1 }, { title: 'Reading', help: 'What the gauge showed.' }),
});
const readings = (least: number) => z.array(reading).min(least).max(50);

const crossed = z.strictObject({
  part: name('Part', 'Which groove, or which place of it.'),
  appraiser: name('Appraiser', 'Who read it.'),
  readings: readings(2),
});

const nested = z.strictObject({
  standard: name('Standard', 'Which block or groove, kept to be read again.'),
  run: name('Run', 'Which run of the study, days or weeks apart.'),
  day: name('Day', 'Which day of the run.'),
  readings: readings(2),
});

const method = described(z.enum(['anova', 'anova_pooled', 'average_range']), {
  title: 'Method',
  help: 'How a crossed study is worked out; the methods can give opposite verdicts.',
  fallback: {
    text: 'anova_pooled',
    why: 'analysis of variance, with what appraisers and parts do together taken into the error where it does not show (common practice)',
  },
});

const check = z.strictObject({
  when: name('When', 'Day or moment, as the crew writes it.'),
  by: name('By', 'Who.').optional(),
  block: amount(
    'length',
    { least: 0.1 * MM, most: 1 },
    { title: 'Block', help: 'Size of the block that the gauge was held against.' },
  ),
  block_spread: amount(
    'length',
    { least: 0, most: MM },
    {
      title: 'Spread of the block',
      help: 'Standard uncertainty of its size.',
      fallback: { text: '0 mm', why: 'a block is far finer than a groove gauge (judgement, no source)' },
    },
  ),
  allowed: amount(
    'length',
    { least: 0.001 * MM, most: 10 * MM },
    { title: 'Allowed', help: 'Greatest deviation that is allowed.' },
  ),
  readings: readings(2),
});

/** A gauge, its study and its checks: the one source of its types, its validation and its JSON Schema. */
export const gaugeSchema = z.strictObject({
  furrow_gauge: described(z.literal(1), { title: 'Version', help: 'Version of the gauge document.' }),
  gauge: text(120, { title: 'Gauge', help: 'What the depths are read with.' }),
  method,
  crossed: z.array(crossed).min(4).max(1000).optional(),
  nested: z.array(nested).min(4).max(1000).optional(),
  averaged: described(z.int().min(1).max(50), {
    title: 'Averaged',
    help: 'Readings that are averaged for one depth.',
    fallback: { text: 1, why: 'one reading at each place' },
  }),
  resolution: amount(
    'length',
    { least: 0, most: MM },
    { title: 'Resolution', help: 'Smallest step that the gauge shows.' },
  ).optional(),
  seating: amount(
    'length',
    { least: 0, most: 10 * MM },
    {
      title: 'Seating',
      help: 'How far plate and bridge may put a reading off, to either side, where the study does not show it.',
    },
  ).optional(),
  calibration: amount(
    'length',
    { least: 0, most: MM },
    { title: 'Calibration', help: 'Standard uncertainty that its certificate states.' },
  ).optional(),
  checks: z.array(check).max(500).optional(),
  note: text(2000, { title: 'Note', help: 'Anything that belongs to the record.' }).optional(),
});

/** A gauge as it is written, every amount in SI. */
export type Gauge = z.output<typeof gaugeSchema>;
