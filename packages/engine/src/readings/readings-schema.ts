import { z } from 'zod';
import { amount, count, described, text } from '../document/index.ts';

const MM = 1e-3;
const MM_PER_MIN = 1e-3 / 60;

const place = (title: string, help: string) => amount('length', { least: 0, most: 500 }, { title, help });

const moment = (title: string) =>
  text(40, { title, help: 'As the crew writes it: a time, or date and time.' }).optional();

const person = z.strictObject({
  name: text(80, { title: 'Name', help: 'Who.' }),
  role: text(80, { title: 'Role', help: 'What this person did, such as operator or fire watch.' }).optional(),
});

const runPass = z.strictObject({
  number: count(1, 200, { title: 'Pass', help: 'Number of the pass on the set-up card.' }),
  plate: amount(
    'temperature',
    { least: 233.15, most: 1273.15 },
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

const station = z.strictObject({
  at: place('Place', 'Distance from the start of the seam.'),
  track: count(1, 20, { title: 'Track', help: 'Track across the groove, from 1.' }).optional(),
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
  note: text(2000, { title: 'Note', help: 'Anything that belongs to the record.' }).optional(),
  crew: z.array(person).max(40).optional(),
  passes: z.array(runPass).max(200).optional(),
  electrode_changes: z.array(electrodeChange).max(500).optional(),
  events: z.array(event).max(500).optional(),
  stations: z.array(station).max(500).optional(),
});

/** What was run and gauged, every amount in SI. */
export type Readings = z.output<typeof readingsSchema>;
