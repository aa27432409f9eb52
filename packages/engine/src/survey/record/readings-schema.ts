import { z } from 'zod';
import { amount, count, described, text } from '../../document/index.ts';
import { MM, MM_PER_MIN, ZERO_CELSIUS } from '../../quantity/index.ts';

const place = (title: string, help: string) => amount('length', { least: 0, most: 500 }, { title, help });

const moment = (title: string) =>
  text(40, { title, help: 'As the crew writes it: a time, or date and time.' }).optional();

const who = (title: string) => text(80, { title, help: 'Who.' }).optional();
const person = z.strictObject({
  name: text(80, { title: 'Name', help: 'Who.' }),
  role: text(80, { title: 'Role', help: 'What this person did, such as operator or fire watch.' }).optional(),
});

const runPass = z.strictObject({
  number: count(1, 200, { title: 'Pass', help: 'Number of the pass on the set-up card.' }),
  plate: amount(
    'temperature',
    { least: ZERO_CELSIUS - 40, most: ZERO_CELSIUS + 1000 },
    { title: 'Plate', help: 'Temperature of the plate beside the seam when the pass started.' },
  ).optional(),
  current: amount(
    'current',
    { least: 1, most: 5000 },
    { title: 'Current', help: 'Read while it ran.' },
  ).optional(),
  voltage: amount(
    'voltage',
    { least: 1, most: 100 },
    { title: 'Arc voltage', help: 'Read while it ran.' },
  ).optional(),
  travel: amount(
    'speed',
    { least: 10 * MM_PER_MIN, most: 10_000 * MM_PER_MIN },
    { title: 'Travel', help: 'As set or timed.' },
  ).optional(),
  air: amount(
    'pressure',
    { least: 0, most: 2e6 },
    { title: 'Air', help: 'Flowing pressure, gauge.' },
  ).optional(),
  start: moment('Start'),
  end: moment('End'),
  note: text(200, { title: 'Note', help: 'Anything seen.' }).optional(),
});

const electrodeChange = z.strictObject({
  pass: count(1, 200, { title: 'Pass', help: 'Number of the pass.' }),
  at: place('Place', 'Distance from the start of the seam.'),
});

const event = z.strictObject({
  pass: count(1, 200, { title: 'Pass', help: 'Number of the pass.' }).optional(),
  at: place('Place', 'Distance from the start of the seam.').optional(),
  what: text(200, { title: 'What', help: 'What happened, such as arc out or a stop.' }),
});

const layer = z.strictObject({
  after_layer: count(0, 50, {
    title: 'After layer',
    help: 'Layer after which it was gauged; 0 for the trial cut or the first stretch.',
  }),
  reading: amount(
    'length',
    { least: 0, most: 1 },
    { title: 'Reading', help: 'Depth that was read, the mean where there were several.' },
  ),
  travel_set: amount(
    'speed',
    { least: 10 * MM_PER_MIN, most: 10_000 * MM_PER_MIN },
    { title: 'Travel set', help: 'Travel that was set by it for what follows.' },
  ).optional(),
  by: who('By'),
  note: text(200, { title: 'Note', help: 'Anything seen.' }).optional(),
});
const recut = z.strictObject({
  from: place('From', 'Where the cut began, from the start of the seam.'),
  to: place('To', 'Where it ended, from the start of the seam.'),
  travel: amount(
    'speed',
    { least: 10 * MM_PER_MIN, most: 10_000 * MM_PER_MIN },
    { title: 'Travel', help: 'As set or timed.' },
  ).optional(),
  when: moment('When'),
  by: who('By'),
  note: text(200, { title: 'Note', help: 'Anything seen.' }).optional(),
});
const afterRecut = count(0, 50, {
  title: 'After recut',
  help: 'How many recuts were done before it was measured; left out: none.',
}).optional();
const afterPass = count(1, 200, {
  title: 'After pass',
  help: 'Pass after which it was gauged, where others were still to come; left out: all were done.',
}).optional();
const scan = z.strictObject({
  name: text(200, { title: 'File', help: 'Name of the file that was handed in.' }),
  sha256: described(z.string().regex(/^[0-9a-f]{64}$/u), {
    title: 'Hash',
    help: 'SHA-256 of its bytes, by which the original is found.',
  }),
  unit: described(z.enum(['mm', 'cm', 'm', 'in', 'um']), {
    title: 'Unit',
    help: 'Unit of its lengths, where the file does not state it.',
  }).optional(),
  vertical: described(z.enum(['height', 'range']), {
    title: 'Second coordinate',
    help: 'Heights upwards, or ranges from the sensor; left out: as found.',
  }).optional(),
  station: place('Place', 'Place along the seam of a single section.').optional(),
  description: text(8000, {
    title: 'How it is read',
    help: 'Description of its columns, as the page writes it once they were corrected.',
  }).optional(),
  after_pass: afterPass,
  after_recut: afterRecut,
  by: who('By'),
  when: moment('When'),
});
const log = z.strictObject({
  name: text(200, { title: 'Log', help: 'Name of the log of the run.' }),
  sha256: described(z.string().regex(/^[0-9a-f]{64}$/u), {
    title: 'Hash',
    help: 'SHA-256 of its bytes, by which the original is found.',
  }),
  description: text(200_000, {
    title: 'How it is read',
    help: 'Logger description by which its columns are read; left out: as found.',
  }).optional(),
});
const gaugeCheck = z.strictObject({
  block: amount(
    'length',
    { least: 0.1 * MM, most: 1 },
    { title: 'Block', help: 'Size of the block that the gauge was held against.' },
  ),
  allowed: amount(
    'length',
    { least: 0.001 * MM, most: 10 * MM },
    { title: 'Allowed', help: 'Greatest deviation that is allowed.' },
  ),
  block_spread: amount(
    'length',
    { least: 0, most: MM },
    { title: 'Spread of the block', help: 'Standard uncertainty of its size; left out: none.' },
  ).optional(),
  readings: z
    .array(
      z.strictObject({
        reading: amount(
          'length',
          { least: 0, most: 1 },
          { title: 'Reading', help: 'What the gauge showed on the block.' },
        ),
      }),
    )
    .min(2)
    .max(50),
  when: moment('When'),
  by: who('By'),
});
const station = z.strictObject({
  at: place('Place', 'Distance from the start of the seam.'),
  track: count(1, 20, { title: 'Track', help: 'Track across the groove, from 1.' }).optional(),
  after_pass: afterPass,
  depth: amount(
    'length',
    { least: 0, most: 1 },
    { title: 'Depth', help: 'Depth below the plate’s surface.' },
  ),
  width: amount(
    'length',
    { least: 0, most: 1 },
    { title: 'Width', help: 'Width at the surface.' },
  ).optional(),
  root_radius: amount(
    'length',
    { least: 0.1 * MM, most: 1 },
    { title: 'Root radius', help: 'Radius at the root, by template.' },
  ).optional(),
  after_recut: afterRecut,
  by: who('By'),
  when: moment('When'),
  note: text(200, { title: 'Note', help: 'Anything seen.' }).optional(),
});

/** What was run and gauged: the one source of its types, its validation and its JSON Schema. */
export const readingsSchema = z.strictObject({
  furrow_readings: described(z.literal(1), { title: 'Version', help: 'Version of the readings document.' }),
  job_revision: text(64, {
    title: 'Revision of the job',
    help: 'The revision printed at the foot of the papers that were worked by; its first characters do.',
  }).optional(),
  date: text(40, { title: 'Date', help: 'Day of the work, as the crew writes it.' }).optional(),
  gauge: text(120, { title: 'Gauge', help: 'What the depths were read with.' }).optional(),
  gauge_file: text(400, {
    title: 'Gauge file',
    help: 'Where its study and checks are kept, from the folder of this file; the terminal looks there. The bench takes the gauge that the shop keeps.',
  }).optional(),
  gauge_check: gaugeCheck.optional(),
  reading_spread: amount(
    'length',
    { least: 0.001 * MM, most: 10 * MM },
    {
      title: 'Spread of one reading',
      help: 'Standard uncertainty of one reading, by a gauge study; left out: that of the job’s gauge.',
    },
  ).optional(),
  spread_from: text(200, {
    title: 'Spread is from',
    help: 'What that spread comes from, such as the study and its method.',
  }).optional(),
  invented: described(z.enum(['yes']), {
    title: 'Invented',
    help: 'Says that nothing of it was ever measured: made up, or rehearsed. The shop learns nothing from it.',
  }).optional(),
  note: text(2000, { title: 'Note', help: 'Anything that belongs to the record.' }).optional(),
  crew: z.array(person).max(40).optional(),
  passes: z.array(runPass).max(200).optional(),
  layers: z.array(layer).max(200).optional(),
  electrode_changes: z.array(electrodeChange).max(500).optional(),
  events: z.array(event).max(500).optional(),
  stations: z.array(station).max(500).optional(),
  recuts: z.array(recut).max(50).optional(),
  files: z.array(scan).max(200).optional(),
  run: log.optional(),
});

/** What was run and gauged, every amount in SI. */
export type Readings = z.output<typeof readingsSchema>;
