import { z } from 'zod';
import { amount, count, described, text } from '../document/index.ts';

const pressure = (title: string, help: string) =>
  amount('pressure', { least: 1000, most: 3e6 }, { title, help });
const flow = (title: string, help: string) => amount('air_flow', { least: 0, most: 5 }, { title, help });
const conductance = described(z.number().min(0.001).max(1e4), {
  title: 'Sonic conductance',
  help: 'Sonic conductance after ISO 6358, in dm3/(s bar).',
});
const criticalRatio = described(z.number().min(0).max(0.99), {
  title: 'Critical ratio',
  help: 'Pressure ratio below which it is choked, after ISO 6358.',
  fallback: { text: 0.5, why: 'a usual value of couplings and valves (judgement, no source)' },
});

/** Trade size or bore of a hose or pipe, one of the two. */
const runSize = {
  size: text(20, {
    title: 'Size',
    help: 'Trade size of a hose or pipe, such as 3/4 in or 19 mm.',
  }).optional(),
  bore: amount(
    'length',
    { least: 1e-3, most: 0.3 },
    { title: 'Bore', help: 'Bore of a hose or pipe, in place of its trade size.' },
  ).optional(),
};

const fittings = z
  .array(
    z.strictObject({
      name: text(60, {
        title: 'Fitting',
        help: 'Name of a listed fitting, such as 90 deg elbow, or any other with its loss.',
      }),
      count: count(1, 100, {
        title: 'How many',
        help: 'How many of them.',
        fallback: { text: 1, why: 'one was stated' },
      }),
      loss_in_bores: described(z.number().min(0).max(10_000), {
        title: 'Loss',
        help: 'Loss of one as a length of the same bore, in bores, where it is not listed.',
      }).optional(),
    }),
  )
  .max(20)
  .optional();

const item = z.strictObject({
  name: text(60, { title: 'Name', help: 'Name of this part of the way.' }),
  kind: described(z.enum(['hose', 'pipe', 'component', 'regulator', 'draw']), {
    title: 'Kind',
    help: 'A hose, a pipe, a component such as a valve or coupling, a regulator, or air that others take here.',
    fallback: { text: 'hose', why: 'most of the way is hose' },
  }),
  ...runSize,
  length: amount(
    'length',
    { least: 0.05, most: 2000 },
    { title: 'Length', help: 'Length of a hose or pipe.' },
  ).optional(),
  wall: described(
    z.enum([
      'smooth_hose',
      'plastic_pipe',
      'drawn_copper',
      'stainless_steel',
      'commercial_steel',
      'steel_ten_years',
      'galvanised_steel',
    ]),
    { title: 'Wall', help: 'How rough the wall is; a hose is smooth if nothing is stated, a pipe of steel.' },
  ).optional(),
  fittings,
  conductance_dm3_per_s_bar: conductance.optional(),
  critical_ratio: criticalRatio,
  valve: described(z.enum(['open', 'closed']), {
    title: 'Valve',
    help: 'Whether a component lets air pass.',
    fallback: { text: 'open', why: 'it must be open for any air to pass' },
  }),
  set: pressure('Set pressure', 'Pressure to which a regulator is set without flow.').optional(),
  droop_kPa_per_100_L_per_min: described(z.number().min(0).max(1000), {
    title: 'Droop, kPa per 100 L/min',
    help: 'Fall of a regulator’s pressure for each 100 L/min of free air, in kPa.',
    fallback: { text: 0, why: 'no droop was stated' },
  }),
  flow: flow('Flow', 'Free air that others take here.').optional(),
});

/** Hoses of one kind in stock. */
export const hoseStockSchema = z.strictObject({
  name: text(60, { title: 'Name', help: 'Name of this kind of hose.' }),
  ...runSize,
  length: amount('length', { least: 0.1, most: 1000 }, { title: 'Length', help: 'Length of one.' }),
  count: count(0, 500, { title: 'How many', help: 'How many are in stock.' }),
});

const torch = z.strictObject({
  flow: flow('Flow', 'Free air that the torch takes at the pressure beside.').optional(),
  flow_at: pressure('Flow stated at', 'Pressure before the torch for which its flow is stated.').optional(),
  conductance_dm3_per_s_bar: conductance.optional(),
  critical_ratio: criticalRatio,
  bore: amount(
    'length',
    { least: 2e-4, most: 0.03 },
    { title: 'Bore of a hole', help: 'Bore of one hole of the torch.' },
  ).optional(),
  holes: count(1, 50, {
    title: 'Holes',
    help: 'Number of holes.',
    fallback: { text: 1, why: 'one hole was stated' },
  }),
  discharge_coefficient: described(z.number().min(0.3).max(1), {
    title: 'Discharge coefficient',
    help: 'Share of the ideal flow that a hole passes: about 0.97 rounded, 0.61 to 0.65 sharp-edged.',
    fallback: { text: 0.8, why: 'between a rounded and a sharp-edged hole (judgement, no source)' },
  }),
});

/** Everything from the compressor to the torch. */
export const airSchema = z.strictObject({
  compressor: z.strictObject({
    name: text(60, {
      title: 'Name',
      help: 'Name of the compressor.',
      fallback: { text: 'compressor', why: 'no name was stated' },
    }),
    delivery: z
      .array(
        z.strictObject({
          pressure: pressure('Delivery pressure', 'Pressure at which this is delivered.'),
          flow: flow('Delivery', 'Free air delivered at this pressure.'),
        }),
      )
      .min(1)
      .max(20),
  }),
  receiver: z.strictObject({
    volume: amount(
      'volume',
      { least: 1e-3, most: 1000 },
      { title: 'Volume', help: 'Volume of the receiver.' },
    ),
    cut_in: pressure('Cut-in', 'Pressure at which the compressor starts to deliver.'),
    cut_out: pressure('Cut-out', 'Pressure at which the compressor stops delivering.'),
  }),
  path: z.array(item).min(1).max(40),
  torch,
  wanted: z.strictObject({
    regulator: pressure(
      'At the regulator',
      'Least flowing pressure behind the regulator that the shop asks for; 80 psi by common practice if left out.',
    ).optional(),
    torch: pressure(
      'At the torch',
      'Least flowing pressure before the torch that the shop asks for; 60 psi if left out.',
    ).optional(),
  }),
});
