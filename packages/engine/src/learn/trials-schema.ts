import { z } from 'zod';
import { amount, described, text } from '../document/index.ts';
import { METAL_FAMILIES } from '../material/index.ts';
import { MM, MM_PER_MIN } from '../quantity/index.ts';

const DEGREE = Math.PI / 180;

const day = (title: string, help: string) =>
  described(
    z.string().regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/u, {
      error: `${title}: write the day as year-month-day, such as 2026-03-04.`,
    }),
    { title, help },
  );

const change = z.strictObject({
  date: day('Day', 'Day of the change.'),
  reason: text(300, { title: 'Reason', help: 'Why, in words.' }),
});

const spread = (title: string, help: string) =>
  amount('length', { least: 0.001 * MM, most: 10 * MM }, { title, help }).optional();

const station = z.strictObject({
  at: amount(
    'length',
    { least: 0, most: 500 },
    { title: 'Place', help: 'Distance from the start of the pass.' },
  ),
  depth: amount(
    'length',
    { least: 0, most: 0.2 },
    {
      title: 'Depth',
      help: 'Depth that this pass took off, below the floor it was run on; with those under it whose floor nobody read.',
    },
  ),
  depth_sd: spread(
    'Spread of the depth',
    'Standard deviation of this depth, where it is not that of the gauge.',
  ),
  width: amount(
    'length',
    { least: 0, most: 0.5 },
    { title: 'Width', help: 'Width at the surface; for a pass on a flat plate.' },
  ).optional(),
  width_sd: spread(
    'Spread of the width',
    'Standard deviation of this width, where it is not that of the gauge.',
  ),
});

const run = {
  current: amount('current', { least: 20, most: 5000 }, { title: 'Current', help: 'As read while it ran.' }),
  voltage: amount(
    'voltage',
    { least: 20, most: 80 },
    {
      title: 'Arc voltage',
      help: 'As read while it ran.',
      fallback: { text: '42 V', why: 'the middle of the usual window (common practice, no source)' },
    },
  ),
  travel: amount(
    'speed',
    { least: 10 * MM_PER_MIN, most: 10_000 * MM_PER_MIN },
    { title: 'Travel', help: 'As timed, or as set.' },
  ),
  push_angle: amount(
    'angle',
    { least: 20 * DEGREE, most: 90 * DEGREE },
    {
      title: 'Push angle',
      help: 'Angle between electrode and surface.',
      fallback: { text: '45 deg', why: 'the angle of the published rows' },
    },
  ),
};

const pass = z.strictObject({
  ...run,
  below: described(z.array(z.strictObject(run)).min(1).max(20), {
    title: 'Passes below',
    help: 'Passes of the same track under it whose floor nobody read: the depths here are of all of them together.',
  }).optional(),
  length: amount(
    'length',
    { least: 10 * MM, most: 500 },
    { title: 'Length', help: 'Length cut; asked for where the electrode burnt is stated.' },
  ).optional(),
  electrode_burnt: amount(
    'length',
    { least: 0.1 * MM, most: 100 },
    { title: 'Electrode burnt', help: 'Length of electrode burnt off over the pass.' },
  ).optional(),
  stations: z.array(station).min(1).max(2000),
});

const entry = z.strictObject({
  id: text(40, { title: 'Name', help: 'Name of the entry, used once in the file.' }),
  kind: described(z.enum(['trial', 'job']), {
    title: 'Kind',
    help: 'A trial cut, or a job that was gauged.',
    fallback: { text: 'trial', why: 'most entries are' },
  }),
  date: day('Day', 'Day of the work.'),
  material: described(z.enum(METAL_FAMILIES), { title: 'Material', help: 'Metal of the work.' }),
  position: described(z.enum(['flat', 'horizontal', 'vertical_down', 'overhead']), {
    title: 'Position',
    help: 'Position of the work.',
    fallback: { text: 'flat', why: 'most trials are' },
  }),
  torch: text(40, {
    title: 'Torch',
    help: 'Name of the torch, where the shop keeps its torches apart.',
  }).optional(),
  electrode: z.strictObject({
    diameter: amount(
      'length',
      { least: 3 * MM, most: 30 * MM },
      { title: 'Diameter', help: 'Electrode diameter.' },
    ),
    kind: described(z.enum(['plain', 'jointed']), {
      title: 'Kind',
      help: 'Plain, or jointed so that one feeds into the next.',
      fallback: { text: 'jointed', why: 'usual on a carriage' },
    }),
  }),
  gauge_sd: amount(
    'length',
    { least: 0.01 * MM, most: 10 * MM },
    {
      title: 'Spread of the gauge',
      help: 'Standard deviation of one depth reading, seating of the gauge included.',
      fallback: { text: '0.4 mm', why: 'a bridge gauge on a cleaned shoulder (judgement, no source)' },
    },
  ),
  passes: z.array(pass).min(1).max(200),
  note: text(500, { title: 'Note', help: 'Anything that belongs to it.' }).optional(),
  corrected: z.array(change).max(50).optional(),
  taken_out: change.optional(),
});

/** What a shop has tried and gauged: the one source of its types, its validation and its JSON Schema. */
export const trialsSchema = z.strictObject({
  furrow_trials: described(z.literal(1), { title: 'Version', help: 'Version of the trials document.' }),
  shop: text(40, {
    title: 'Shop',
    help: 'Name of the shop; summaries that shops exchange are known by it.',
  }),
  invented: described(z.enum(['yes']), {
    title: 'Invented',
    help: 'Says that nothing of it was ever cut: made up to try the program with. Every result tells so.',
  }).optional(),
  note: text(2000, { title: 'Note', help: 'Anything that belongs to the record.' }).optional(),
  entries: z.array(entry).max(1000),
});

/** What a shop has tried and gauged, every amount in SI. */
export type Trials = z.output<typeof trialsSchema>;
