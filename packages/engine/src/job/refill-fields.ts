import { z } from 'zod';
import { amount } from '../document/index.ts';
import { price } from './price-field.ts';
import { rate } from './rate-field.ts';

/** The weld that fills the groove again, as time and money ask for it; its process stands with the re-weld. */
export const refill = z.strictObject({
  deposition_kg_per_h: rate({
    title: 'Deposition, kg per h',
    help: 'Weld metal in kg per hour of arc; left out: a usual one of the process.',
    least: 0.05,
    most: 50,
    unit: 'kg/h',
    never:
      'at a deposition of 0 kg/h the groove is never full; leave it out to take a usual one of the process.',
  }).optional(),
  operating_factor: amount(
    'share',
    { least: 0.02, most: 1 },
    {
      title: 'Operating factor',
      help: 'Share of the welder’s time with the arc burning; left out: a usual one of the process.',
    },
  ).optional(),
  efficiency: amount(
    'share',
    { least: 0.3, most: 1 },
    {
      title: 'Deposition efficiency',
      help: 'Share of the filler bought that ends as weld metal; left out: a usual one of the process.',
    },
  ).optional(),
  cap_share: amount(
    'share',
    { least: 0, most: 1 },
    {
      title: 'Cap',
      help: 'Weld metal above the plate, as a share of what fills the groove.',
      fallback: { text: '10 %', why: 'a low cap (judgement, no source)' },
    },
  ),
  filler_per_kg: price({
    title: 'Filler per kg',
    help: 'Price of one kg of filler as bought.',
    fallback: { text: 0, why: 'no price was stated, so filler costs nothing in this result' },
  }),
  gas_per_arc_hour: price({
    title: 'Gas per hour of arc',
    help: 'Price of the shielding gas for one hour of arc.',
    fallback: { text: 0, why: 'no price was stated, so gas costs nothing in this result' },
  }),
  flux_per_kg: price({
    title: 'Flux per kg of weld metal',
    help: 'Price of the flux that goes with one kg of weld metal.',
    fallback: { text: 0, why: 'no price was stated, so flux costs nothing in this result' },
  }),
  welder_per_hour: price({
    title: 'Welder per hour',
    help: 'Labour and overhead while the groove is filled; left out: that of the crew.',
  }).optional(),
});
