import { z } from 'zod';
import { amount, described, text } from '../document/index.ts';
import { airSchema, hoseStockSchema } from './air-schema.ts';
import { baySchema } from './bay-schema.ts';
import { leadSchema, leadStockSchema, sourceSchema } from './electric-schema.ts';

const ambient = z.strictObject({
  temperature: amount(
    'temperature',
    { least: 233.15, most: 333.15 },
    {
      title: 'Temperature',
      help: 'Highest temperature of the air around leads and hoses.',
      fallback: { text: '30 °C', why: 'a warm day; a hotter bay needs to be stated' },
    },
  ),
  atmosphere: amount(
    'pressure',
    { least: 5e4, most: 1.1e5 },
    {
      title: 'Atmosphere',
      help: 'Pressure of the atmosphere, absolute; less on high ground.',
      fallback: { text: '101.325 kPa', why: 'the standard atmosphere at sea level' },
    },
  ),
});

const stock = z.strictObject({
  leads: z.array(leadStockSchema).max(40).optional(),
  hoses: z.array(hoseStockSchema).max(40).optional(),
  lead_joint: amount(
    'resistance',
    { least: 0, most: 0.1 },
    {
      title: 'Joint between leads',
      help: 'Resistance of one joint between two leads.',
      fallback: { text: '0.01 mohm', why: 'a clean, tight joint (judgement, no source)' },
    },
  ),
  hose_joint: amount(
    'pressure',
    { least: 0, most: 2e5 },
    {
      title: 'Joint between hoses',
      help: 'Pressure lost in one coupling between two hoses at the torch’s flow.',
      fallback: { text: '2 kPa', why: 'a full-bore coupling (judgement, no source)' },
    },
  ),
});

/** The kit document: the one source of its types, its validation, its JSON Schema and its form. */
export const kitSchema = z.strictObject({
  furrow_kit: described(z.literal(1), { title: 'Version', help: 'Version of the kit document.' }),
  title: text(120, { title: 'Title', help: 'Name of the kit.' }),
  note: text(2000, { title: 'Note', help: 'Anything the crew should know of the kit.' }).optional(),
  polarity: described(z.enum(['electrode_positive', 'electrode_negative']), {
    title: 'Polarity',
    help: 'Terminal that the electrode lead goes to.',
    fallback: { text: 'electrode_positive', why: 'what shops use on steel; see the advice on the metal' },
  }),
  ambient,
  sources: z.array(sourceSchema).min(1).max(12),
  leads: z.array(leadSchema).min(1).max(40),
  air: airSchema,
  stock,
  stick_out: amount(
    'length',
    { least: 0.01, most: 0.5 },
    { title: 'Stick-out', help: 'Length of electrode from the contact jaws to the arc that the shop sets.' },
  ).optional(),
  turning_roll: amount(
    'length',
    { least: 0.03, most: 3 },
    {
      title: 'Turning roll',
      help: 'Diameter of the rolls that turn a shell under the torch; for a girth their revolutions are told.',
    },
  ).optional(),
  bay: baySchema.optional(),
});

/** The kit as its document has it, in SI. */
export type Kit = z.output<typeof kitSchema>;
