import { z } from 'zod';
import { amount, count, described, type FieldFacts, text } from '../document/index.ts';
import { METAL_FAMILIES } from '../material/index.ts';
import { MM, MM_PER_MIN } from '../quantity/index.ts';
import { after } from './after-fields.ts';
import { heat, reweld } from './heat-fields.ts';
import { site } from './site-fields.ts';

const DEGREE = Math.PI / 180;

const money = (facts: FieldFacts) => described(z.number().min(0).max(1e6), facts);
const massPercent = (symbol: string) =>
  described(z.number().min(0).max(100), {
    title: symbol,
    help: `Mass fraction of ${symbol} in per cent.`,
  }).optional();

const composition = z.strictObject({
  C: massPercent('C'),
  Si: massPercent('Si'),
  Mn: massPercent('Mn'),
  Cr: massPercent('Cr'),
  Mo: massPercent('Mo'),
  V: massPercent('V'),
  Ni: massPercent('Ni'),
  Cu: massPercent('Cu'),
  Nb: massPercent('Nb'),
  Ti: massPercent('Ti'),
  B: massPercent('B'),
  N: massPercent('N'),
});

const seam = z.strictObject({
  path: described(z.enum(['straight', 'girth']), {
    title: 'Path',
    help: 'A straight seam, or a girth around a shell.',
    fallback: { text: 'straight', why: 'most seams are' },
  }),
  length: amount(
    'length',
    { least: 10 * MM, most: 500 },
    {
      title: 'Length',
      help: 'Length of the seam to gouge; for a girth it may be left out and follows from the diameter.',
    },
  ).optional(),
  diameter: amount(
    'length',
    { least: 100 * MM, most: 60 },
    {
      title: 'Diameter',
      help: 'Diameter of the shell at the gouged surface, for a girth.',
    },
  ).optional(),
  position: described(z.enum(['flat', 'horizontal', 'vertical_down', 'overhead']), {
    title: 'Position',
    help: 'Position of the work; the removal law is fitted to flat work only.',
    fallback: { text: 'flat', why: 'the published rows are for the flat position' },
  }),
});

const plate = z.strictObject({
  material: described(z.enum(METAL_FAMILIES), {
    title: 'Metal',
    help: 'Family of the metal.',
    fallback: { text: 'carbon_steel', why: 'the published rows are for carbon steel' },
  }),
  thickness: amount(
    'length',
    { least: 2 * MM, most: 1 },
    {
      title: 'Thickness',
      help: 'Thickness of the plate or wall where it is gouged.',
    },
  ),
  composition: described(composition, {
    title: 'Composition',
    help: 'Mass per cent of the elements, from the certificate.',
  }).optional(),
});

const groove = z.strictObject({
  purpose: text(200, {
    title: 'Purpose',
    help: 'What the groove is for, in words; it is printed on the card.',
    fallback: { text: 'gouge to the drawing', why: 'no purpose was stated' },
  }),
  shape: described(z.enum(['u', 'wash', 'pocket']), {
    title: 'Shape',
    help: 'A U groove, a shallow wash over a width, or a defect pocket with run-outs at both ends.',
    fallback: { text: 'u', why: 'a U groove is the usual one' },
  }),
  depth: z.strictObject({
    wanted: amount(
      'length',
      { least: 0.5 * MM, most: 150 * MM },
      {
        title: 'Depth',
        help: 'Wanted depth below the surface.',
      },
    ),
    plus: amount(
      'length',
      { least: 0, most: 100 * MM },
      {
        title: 'Deeper by at most',
        help: 'How much deeper than wanted any point may be.',
      },
    ),
    minus: amount(
      'length',
      { least: 0, most: 100 * MM },
      {
        title: 'Shallower by at most',
        help: 'How much shallower than wanted the floor may stay.',
        fallback: { text: '0 mm', why: 'a groove that must reach sound metal may not stay shallow' },
      },
    ),
  }),
  width: z.strictObject({
    least: amount(
      'length',
      { least: 1 * MM, most: 500 * MM },
      {
        title: 'Least width',
        help: 'Least width at the surface.',
      },
    ),
    most: amount(
      'length',
      { least: 1 * MM, most: 600 * MM },
      {
        title: 'Greatest width',
        help: 'Greatest width at the surface.',
      },
    ),
  }),
  floor_width: amount(
    'length',
    { least: 0, most: 500 * MM },
    {
      title: 'Floor width',
      help: 'Width about the centre line over which the depth must be reached; 0: at the centre line only.',
      fallback: { text: '0 mm', why: 'a U groove must reach its depth at the root' },
    },
  ),
  root_radius_least: amount(
    'length',
    { least: 0, most: 100 * MM },
    {
      title: 'Least root radius',
      help: 'Least radius at the root that the welder can reach into.',
      fallback: { text: '0 mm', why: 'no least radius was stated' },
    },
  ),
  ligament_least: amount(
    'length',
    { least: 0, most: 1 },
    {
      title: 'Least ligament',
      help: 'Least plate left under the deepest point.',
      fallback: { text: '3 mm', why: 'a thinner ligament can blow through (judgement, no source)' },
    },
  ),
  assurance: amount(
    'share',
    { least: 0.5, most: 0.999 },
    {
      title: 'Assurance',
      help: 'Chance with which the depth must be reached, and with which it must not be exceeded.',
      fallback: { text: '95 %', why: 'the usual level of this program' },
    },
  ),
  ligament_assurance: amount(
    'share',
    { least: 0.5, most: 0.999 },
    {
      title: 'Assurance of the ligament',
      help: 'Chance with which the least ligament must be kept.',
      fallback: { text: '99 %', why: 'a blow-through is a hazard, so it is held stricter' },
    },
  ),
});

const electrode = z.strictObject({
  diameter: amount(
    'length',
    { least: 3 * MM, most: 26 * MM },
    {
      title: 'Diameter',
      help: 'Diameter of the electrode.',
    },
  ),
  kind: described(z.enum(['plain', 'jointed']), {
    title: 'Kind',
    help: 'Jointed electrodes feed without a stub; plain ones leave one.',
    fallback: { text: 'jointed', why: 'a carriage usually feeds jointed electrodes' },
  }),
  length: amount(
    'length',
    { least: 50 * MM, most: 1 },
    {
      title: 'Length',
      help: 'Length of one new electrode.',
      fallback: { text: '430 mm', why: 'a usual length of jointed electrodes (common practice, no source)' },
    },
  ),
  stub: amount(
    'length',
    { least: 0, most: 300 * MM },
    {
      title: 'Stub',
      help: 'Length left over of a plain electrode.',
      fallback: { text: '75 mm', why: 'what a holder needs to grip (common practice, no source)' },
    },
  ),
  count: count(0, 100_000, {
    title: 'In stock',
    help: 'How many there are.',
    fallback: { text: 1000, why: 'no stock was stated, so it is taken to suffice' },
  }),
  current_least: amount(
    'current',
    { least: 1, most: 5000 },
    {
      title: 'Least current',
      help: 'Least current for this electrode, where the shop knows better than the published range.',
    },
  ).optional(),
  current_most: amount(
    'current',
    { least: 1, most: 5000 },
    {
      title: 'Greatest current',
      help: 'Greatest current for this electrode, where the shop knows better than the published range.',
    },
  ).optional(),
  price_each: money({
    title: 'Price each',
    help: 'Price of one electrode, in the currency of the rates.',
    fallback: { text: 0, why: 'no price was stated, so electrodes cost nothing in this result' },
  }),
});

const kit = z.strictObject({
  electrodes: z.array(electrode).min(1).max(20),
  torch: text(40, {
    title: 'Torch',
    help: 'Name of the torch, where the shop keeps its torches apart in its trials.',
  }).optional(),
  current: z.strictObject({
    least: amount(
      'current',
      { least: 1, most: 5000 },
      { title: 'Least current', help: 'Least current of the power source.' },
    ),
    most: amount(
      'current',
      { least: 1, most: 5000 },
      { title: 'Greatest current', help: 'Greatest current of the power source.' },
    ),
  }),
  arc_voltage: z.strictObject({
    least: amount(
      'voltage',
      { least: 15, most: 80 },
      {
        title: 'Least arc voltage',
        help: 'Lower end of the arc-voltage window.',
        fallback: { text: '40 V', why: 'usual window (common practice, no source)' },
      },
    ),
    most: amount(
      'voltage',
      { least: 15, most: 80 },
      {
        title: 'Greatest arc voltage',
        help: 'Upper end of the arc-voltage window.',
        fallback: { text: '44 V', why: 'usual window (common practice, no source)' },
      },
    ),
    set: amount(
      'voltage',
      { least: 15, most: 80 },
      {
        title: 'Set arc voltage',
        help: 'Arc voltage that the electrode feed is set to hold.',
        fallback: { text: '42 V', why: 'middle of the usual window (common practice, no source)' },
      },
    ),
  }),
  travel: z.strictObject({
    least: amount(
      'speed',
      { least: 10 * MM_PER_MIN, most: 10_000 * MM_PER_MIN },
      { title: 'Least travel', help: 'Least steady travel of the carriage.' },
    ),
    most: amount(
      'speed',
      { least: 10 * MM_PER_MIN, most: 10_000 * MM_PER_MIN },
      { title: 'Greatest travel', help: 'Greatest steady travel of the carriage.' },
    ),
  }),
  push_angle: amount(
    'angle',
    { least: 20 * DEGREE, most: 80 * DEGREE },
    {
      title: 'Push angle',
      help: 'Angle between electrode and surface; 45 deg is usual and up to 60 deg is used.',
      fallback: { text: '45 deg', why: 'the published rows are for about 45 deg' },
    },
  ),
  loss_window: amount(
    'time',
    { least: 0, most: 10 },
    {
      title: 'Loss window',
      help: 'Time from losing the arc until the carriage stops.',
      fallback: { text: '0.4 s', why: 'a usual setting (common practice, no source)' },
    },
  ),
  gauge: z.strictObject({
    reading_sd: amount(
      'length',
      { least: 0.01 * MM, most: 5 * MM },
      {
        title: 'Gauge, one reading',
        help: 'Standard deviation of one depth reading, seating of the gauge included.',
        fallback: { text: '0.4 mm', why: 'a bridge gauge on a cleaned shoulder (judgement, no source)' },
      },
    ),
    stations_most: count(1, 50, {
      title: 'Stations at most',
      help: 'How many stations per track the crew will gauge at one stop.',
      fallback: { text: 5, why: 'about what a crew gauges in a few minutes' },
    }),
  }),
  trial: z.strictObject({
    on: described(z.enum(['scrap', 'run_on', 'none']), {
      title: 'Trial on',
      help: 'Where a trial can be cut first: on scrap of the same metal and about the same thickness, on a run-on plate tacked to the seam, or nowhere.',
      fallback: { text: 'scrap', why: 'most shops have an offcut of the metal' },
    }),
    length_most: amount(
      'length',
      { least: 50 * MM, most: 3 },
      {
        title: 'Trial, greatest length',
        help: 'How long a trial cut may be at most.',
        fallback: { text: '300 mm', why: 'the length of a usual run-on plate (judgement, no source)' },
      },
    ),
  }),
});

const rates = z.strictObject({
  currency: text(8, {
    title: 'Currency',
    help: 'Sign or code of the currency of all prices.',
    fallback: { text: '¤', why: 'no currency was stated' },
  }),
  labour_per_hour: money({
    title: 'Labour per hour',
    help: 'Labour and overhead of the crew, per hour.',
    fallback: { text: 0, why: 'no rate was stated, so labour costs nothing in this result' },
  }),
  power_per_kWh: money({
    title: 'Power per kWh',
    help: 'Price of electric energy.',
    fallback: { text: 0, why: 'no rate was stated, so power costs nothing in this result' },
  }),
  source_efficiency: amount(
    'share',
    { least: 0.3, most: 1 },
    {
      title: 'Efficiency of the source',
      help: 'Share of the energy drawn that reaches the output.',
      fallback: { text: '85 %', why: 'the floor for three-phase DC sources in EU rules' },
    },
  ),
  start_time: amount(
    'time',
    { least: 0, most: 3600 },
    {
      title: 'Time per start',
      help: 'Time to set and start one pass.',
      fallback: { text: '60 s', why: 'judgement, no source' },
    },
  ),
  electrode_change_time: amount(
    'time',
    { least: 0, most: 3600 },
    {
      title: 'Time per electrode change',
      help: 'Time to put in the next electrode and go on.',
      fallback: { text: '45 s', why: 'judgement, no source' },
    },
  ),
  gauge_time: amount(
    'time',
    { least: 0, most: 3600 },
    {
      title: 'Time per gauge reading',
      help: 'Time to clean and read one station.',
      fallback: { text: '30 s', why: 'judgement, no source' },
    },
  ),
  trial_time: amount(
    'time',
    { least: 0, most: 3600 },
    {
      title: 'Time to lay out a trial',
      help: 'Time to lay out the plate for a trial and take it away, beside start, arc and gauging.',
      fallback: { text: '120 s', why: 'judgement, no source' },
    },
  ),
  layer_time: amount(
    'time',
    { least: 0, most: 3600 },
    {
      title: 'Time between layers',
      help: 'Time to lower the torch to the new floor and check its line before the next layer, beside cleaning and start.',
      fallback: {
        text: '8 min',
        why: 'isolate, look at the floor, lower the torch and check its line (judgement, no source)',
      },
    },
  ),
  layer_cleaning_min_per_m: described(z.number().min(0).max(1000), {
    title: 'Cleaning between layers, min per m',
    help: 'Minutes to chip one metre of a layer free of slag, so that the next pass runs and a gauge sits clean.',
    fallback: {
      text: 2,
      why: 'less than the cleaning at the end, which takes the carbon off too (judgement, no source)',
    },
  }),
  return_travel: amount(
    'speed',
    { least: 10 * MM_PER_MIN, most: 60_000 * MM_PER_MIN },
    {
      title: 'Return travel',
      help: 'Travel of the carriage back to the start.',
      fallback: { text: '3 m/min', why: 'judgement, no source' },
    },
  ),
});

const planning = z.strictObject({
  objective: described(z.enum(['time', 'cost', 'heat']), {
    title: 'Best by',
    help: 'What the planner makes least: the cost of the whole job, the time on the seam, or the heat in the plate.',
    fallback: {
      text: 'cost',
      why: 'filling a groove again usually costs more than gouging it; without rates the quickest of equal costs is taken',
    },
  }),
  gauge_stops: described(z.enum(['allowed', 'never']), {
    title: 'Gauge stops',
    help: 'Whether the plan may stop to measure between layers.',
    fallback: { text: 'allowed', why: 'a stop buys much assurance' },
  }),
  tracks_most: count(1, 20, {
    title: 'Tracks at most',
    help: 'Greatest number of tracks side by side.',
    fallback: { text: 12, why: 'enough for a wash' },
  }),
  layers_most: count(1, 8, {
    title: 'Layers at most',
    help: 'Greatest number of layers.',
    fallback: { text: 4, why: 'more are rarely worth their time' },
  }),
  seed: count(0, 2 ** 31 - 1, {
    title: 'Seed',
    help: 'Seed of the random draws; the same seed gives the same plan.',
    fallback: { text: 1, why: 'any number serves' },
  }),
});

const locks = z.strictObject({
  electrode_diameter: amount(
    'length',
    { least: 3 * MM, most: 26 * MM },
    { title: 'Electrode', help: 'Plan with this electrode only.' },
  ).optional(),
  current: amount(
    'current',
    { least: 1, most: 5000 },
    { title: 'Current', help: 'Plan with this current only.' },
  ).optional(),
  travel: amount(
    'speed',
    { least: 10 * MM_PER_MIN, most: 10_000 * MM_PER_MIN },
    { title: 'Travel', help: 'Plan with this travel only, on every pass.' },
  ).optional(),
  tracks: count(1, 20, { title: 'Tracks', help: 'Plan with this number of tracks only.' }).optional(),
  track_spacing: amount(
    'length',
    { least: 1 * MM, most: 100 * MM },
    { title: 'Track spacing', help: 'Plan with this distance between tracks only.' },
  ).optional(),
  layers: count(1, 8, { title: 'Layers', help: 'Plan with this number of layers only.' }).optional(),
});

/** The job document: the one source of its types, its validation, its JSON Schema and its form. */
export const jobSchema = z.strictObject({
  furrow: described(z.literal(1), { title: 'Version', help: 'Version of the job document.' }),
  title: text(120, { title: 'Title', help: 'Name of the job.' }),
  note: text(2000, { title: 'Note', help: 'Anything the crew should know.' }).optional(),
  seam,
  plate,
  groove,
  kit,
  rates,
  heat,
  reweld,
  after,
  site,
  plan: planning,
  locks,
});

/** A job as the engine works with it: every amount in SI, every default filled in. */
export type JobDocument = z.output<typeof jobSchema>;
