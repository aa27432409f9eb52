import { z } from 'zod';
import { amount, count, described, text } from '../document/index.ts';

const volts = (title: string, help: string) => amount('voltage', { least: 1, most: 200 }, { title, help });

/** One power source, or several alike. */
export const sourceSchema = z.strictObject({
  name: text(60, { title: 'Name', help: 'Name of the source, as the shop calls it.' }),
  count: count(1, 6, {
    title: 'How many',
    help: 'Sources alike that are joined side by side.',
    fallback: { text: 1, why: 'one source was stated' },
  }),
  characteristic: described(z.enum(['drooping', 'flat', 'points']), {
    title: 'Characteristic',
    help: 'How its voltage falls with current: a drooping or a flat line of a stated slope, or points read off its plate.',
    fallback: { text: 'drooping', why: 'most sources for this work droop' },
  }),
  no_load_voltage: volts('No-load voltage', 'Voltage at its terminals without load.').optional(),
  slope: amount(
    'resistance',
    { least: 1e-5, most: 10 },
    { title: 'Slope', help: 'Fall of the voltage with current, such as 3.5 V/100A, for a line.' },
  ).optional(),
  points: z
    .array(
      z.strictObject({
        current: amount(
          'current',
          { least: 0, most: 10_000 },
          { title: 'Current', help: 'Current at this point of the curve; 0 A for no load.' },
        ),
        voltage: amount(
          'voltage',
          { least: 0, most: 200 },
          { title: 'Voltage', help: 'Voltage at the terminals at this current.' },
        ),
      }),
    )
    .min(2)
    .max(20)
    .optional(),
  rating: z
    .array(
      z.strictObject({
        current: amount(
          'current',
          { least: 1, most: 10_000 },
          { title: 'Rated current', help: 'Current that the plate gives for this duty.' },
        ),
        voltage: volts('Rated voltage', 'Load voltage that the plate gives with it.').optional(),
        duty: amount(
          'share',
          { least: 0.05, most: 1 },
          { title: 'Duty', help: 'Share of a ten-minute period for which the plate allows this current.' },
        ),
      }),
    )
    .min(1)
    .max(8),
  current_most: amount(
    'current',
    { least: 1, most: 10_000 },
    { title: 'Greatest current', help: 'Rated maximum, where it is above the greatest rating point.' },
  ).optional(),
  efficiency: amount(
    'share',
    { least: 0.1, most: 1 },
    { title: 'Efficiency', help: 'Share of the power drawn that reaches the terminals, from the plate.' },
  ).optional(),
  power_factor: amount(
    'share',
    { least: 0.1, most: 1 },
    { title: 'Power factor', help: 'Power factor at the mains, from the plate.' },
  ).optional(),
  mains_voltage: amount(
    'voltage',
    { least: 50, most: 1500 },
    { title: 'Mains voltage', help: 'Voltage between the lines of the mains.' },
  ).optional(),
  mains_phases: described(z.literal([1, 3]), {
    title: 'Mains phases',
    help: 'Phases of the mains, 1 or 3.',
  }).optional(),
});

const joint = z.strictObject({
  name: text(60, { title: 'Name', help: 'Name of the joint: a lug, a coupler, a clamp.' }),
  resistance: amount(
    'resistance',
    { least: 0, most: 1 },
    {
      title: 'Resistance',
      help: 'Resistance of the joint; a joint that is not tight has more.',
      fallback: { text: '0.01 mohm', why: 'a clean, tight joint (judgement, no source)' },
    },
  ),
  at: described(z.enum(['end', 'middle']), {
    title: 'Place',
    help: 'At an end of the lead, or in its middle, where heat can leave on both sides.',
    fallback: { text: 'end', why: 'the hotter of the two' },
  }),
  carries: described(z.enum(['run', 'conductor']), {
    title: 'Carries',
    help: 'The whole current of the run, or one such joint in every conductor.',
    fallback: { text: 'run', why: 'the hotter of the two' },
  }),
});

const size = amount(
  'area',
  { least: 1e-6, most: 1e-3 },
  {
    title: 'Size',
    help: 'Size of one conductor, such as 95 mm2, 4/0 AWG or 250 kcmil.',
  },
);

const parallels = (title: string, help: string) =>
  count(1, 20, { title, help, fallback: { text: 1, why: 'no second conductor was stated' } });

/** One lead as it is laid. */
export const leadSchema = z.strictObject({
  name: text(60, { title: 'Name', help: 'Name of the lead.' }),
  side: described(z.enum(['electrode', 'work']), {
    title: 'Side',
    help: 'From the source to the torch, or from the work back to the source.',
  }),
  size,
  metal: described(z.enum(['copper', 'tinned copper']), {
    title: 'Metal',
    help: 'Metal of the conductor.',
    fallback: { text: 'copper', why: 'most leads are of plain copper' },
  }),
  parallels: parallels('Side by side', 'Conductors side by side in this lead.'),
  length: amount(
    'length',
    { least: 0.1, most: 1000 },
    { title: 'Length', help: 'Length of the run from end to end.' },
  ),
  source: text(60, {
    title: 'Source',
    help: 'Name of the source that alone feeds this lead; left out for a lead of the whole current.',
  }).optional(),
  laid: described(z.enum(['clear', 'bundled', 'coiled']), {
    title: 'Laid',
    help: 'How it lies; only a lead that lies clear and straight can be worked out, others are cautioned.',
    fallback: { text: 'clear', why: 'what the heat model knows' },
  }),
  resistance_mohm_per_m: described(z.number().min(0.001).max(100), {
    title: 'Resistance, mohm per m',
    help: 'Resistance at 20 °C that the shop measured, in milliohms per metre, in place of the standard’s.',
  }).optional(),
  insulation_limit: amount(
    'temperature',
    { least: 313.15, most: 473.15 },
    {
      title: 'Insulation limit',
      help: 'Temperature that the insulation stands at the conductor; stated here it turns hotter plans away.',
    },
  ).optional(),
  joints: z.array(joint).max(20).optional(),
});

/** Leads of one kind in stock. */
export const leadStockSchema = z.strictObject({
  name: text(60, { title: 'Name', help: 'Name of this kind of lead.' }),
  size,
  length: amount('length', { least: 0.1, most: 1000 }, { title: 'Length', help: 'Length of one.' }),
  count: count(0, 500, { title: 'How many', help: 'How many are in stock.' }),
  parallels_most: parallels('Side by side at most', 'How many may be laid side by side as one lead.'),
});
