import { z } from 'zod';
import { amount, count, described, text } from '../document/index.ts';
import { FOOT } from '../quantity/index.ts';
import { crew } from './crew-fields.ts';

const room = z.strictObject({
  volume: amount(
    'volume',
    { least: 1, most: 1e6 },
    {
      title: 'Volume of the room',
      help: 'Volume of the bay or space, such as 900 m3 or 30000 ft3, for the general ventilation test.',
    },
  ).optional(),
  ceiling: amount(
    'length',
    { least: 0.5, most: 200 },
    { title: 'Ceiling', help: 'Height of the ceiling.' },
  ).optional(),
  barriers: described(z.enum(['none', 'some']), {
    title: 'Barriers',
    help: 'Whether partitions, balconies or other barriers hinder the cross-draught.',
  }).optional(),
});

const ventilation = z.strictObject({
  flow: amount(
    'air_flow',
    { least: 1e-4, most: 1000 },
    {
      title: 'Mechanical ventilation',
      help: 'Air that fans bring through the room, such as 120 m3/min or 4000 cfm; left out: none is counted on.',
    },
  ).optional(),
  hood_flow: amount(
    'air_flow',
    { least: 1e-4, most: 100 },
    { title: 'Hood, air flow', help: 'Air drawn by the hood at the source, for each torch.' },
  ).optional(),
  hood_distance: amount(
    'length',
    { least: 0.02, most: 2 },
    { title: 'Hood, distance', help: 'Distance from the opening of the hood to the arc.' },
  ).optional(),
  hood_area: amount(
    'area',
    { least: 1e-4, most: 4 },
    { title: 'Hood, opening', help: 'Area of the opening of the hood, such as 300 cm2.' },
  ).optional(),
  hood_flange: described(z.enum(['flanged', 'plain']), {
    title: 'Hood, edge',
    help: 'A flange around the opening keeps clean air from being drawn in from behind.',
    fallback: { text: 'plain', why: 'the one that needs more air' },
  }),
});

const measurement = z.strictObject({
  substance: described(
    z.enum([
      'iron_oxide',
      'copper',
      'manganese',
      'chromium_vi',
      'nickel',
      'lead',
      'zinc_oxide',
      'cadmium',
      'carbon_monoxide',
      'nitrogen_dioxide',
      'ozone',
    ]),
    { title: 'Substance', help: 'What was measured in the breathing zone.' },
  ),
  mg_per_m3: described(z.number().min(0).max(1e5), {
    title: 'Concentration',
    help: 'Mean concentration while the sample ran, in mg/m3; for gases as well.',
  }),
  time: amount(
    'time',
    { least: 60, most: 86_400 },
    { title: 'Time', help: 'How long somebody is exposed to it in a shift.' },
  ),
});

const fume = z.strictObject({
  limits: described(z.enum(['osha', 'acgih', 'eu']), {
    title: 'Limit set',
    help: 'Limits by which the air flow is worked out: OSHA PEL, ACGIH TLV or EU limit values.',
    fallback: { text: 'osha', why: 'read in public texts; the other sets are shown beside it' },
  }),
  coating: described(z.enum(['none', 'chromium', 'zinc', 'lead', 'cadmium', 'other']), {
    title: 'Coating',
    help: 'Coating or paint on the metal where it is gouged; none only where it is known that there is none.',
  }).optional(),
  emission_mg_per_min: described(z.number().positive().max(1e6), {
    title: 'Fume of one torch',
    help: 'Fume given off while the arc is on, in mg/min; an assumption unless measured, left out: no figure.',
  }).optional(),
  mixing_factor: described(z.number().min(1).max(10), {
    title: 'Mixing factor',
    help: 'How much more air than with perfect mixing is needed, 1 to 10.',
    fallback: { text: 3, why: 'a middling bay (judgement, no source)' },
  }),
  measured: z.array(measurement).max(40).optional(),
});

const noise = z.strictObject({
  at_ear_dBA: described(z.number().min(60).max(150), {
    title: 'Gouging noise at the ear',
    help: 'Level at the ear in dBA, measured with all torches burning; it replaces the usual band of 100 to 120 dBA.',
  }).optional(),
  plug_NRR_dB: described(z.number().min(0).max(50), {
    title: 'Ear plug, NRR',
    help: 'Rating of the plugs in stock, in dB.',
  }).optional(),
  plug_kind: described(z.enum(['formable', 'other']), {
    title: 'Ear plug, kind',
    help: 'Formable plugs keep more of their rating than other plugs (NIOSH derating).',
    fallback: { text: 'other', why: 'the one that keeps less of its rating' },
  }),
  muff_NRR_dB: described(z.number().min(0).max(50), {
    title: 'Ear muff, NRR',
    help: 'Rating of the muffs in stock, in dB.',
  }).optional(),
  derating: described(z.enum(['rated', 'half', 'niosh']), {
    title: 'Derating',
    help: 'How much of the rating is counted on: all of it, half of it (OSHA field practice), or NIOSH shares by kind.',
    fallback: { text: 'half', why: 'OSHA field practice: protectors are rarely worn as in the laboratory' },
  }),
});

const eyes = z.strictObject({
  shade: count(1, 16, { title: 'Filter shade', help: 'Shade number of the filter that is worn.' }).optional(),
  table: described(z.enum(['advice', 'binding']), {
    title: 'Shade table',
    help: 'OSHA’s table ends at 1000 A; binding keeps the plan inside it.',
    fallback: { text: 'advice', why: 'above the table a competent person may choose the filter' },
  }),
});

const fire = z.strictObject({
  clear: amount(
    'length',
    { least: 0, most: 1000 },
    { title: 'Clear all round', help: 'Distance from the seam to the nearest thing that can burn.' },
  ).optional(),
  clear_ahead: amount(
    'length',
    { least: 0, most: 1000 },
    { title: 'Clear ahead', help: 'Distance to the nearest thing that can burn, ahead along the jet.' },
  ).optional(),
  radius: amount(
    'length',
    { least: 35 * FOOT, most: 500 },
    { title: 'Zone all round', help: 'Radius of the fire zone, if it is to be more than 35 ft; never less.' },
  ).optional(),
  ahead: amount(
    'length',
    { least: 35 * FOOT, most: 500 },
    {
      title: 'Zone ahead',
      help: 'How far the zone reaches ahead of the torch along the jet.',
      fallback: { text: '75 ft', why: 'the far end of the guidance for what the jet throws' },
    },
  ),
  height: amount(
    'length',
    { least: 0, most: 300 },
    {
      title: 'Working height',
      help: 'Height of the work above the floor below; above 3 m the zone grows.',
      fallback: { text: '2 m', why: 'work near the floor' },
    },
  ),
  watch: amount(
    'time',
    { least: 0, most: 86_400 },
    { title: 'Fire watch', help: 'How long the watch stays after the last arc.' },
  ).optional(),
});

const leads = z.strictObject({
  apart: amount(
    'length',
    { least: 0.01, most: 20 },
    {
      title: 'Leads apart',
      help: 'Distance between electrode lead and work lead where they run together.',
      fallback: { text: '50 mm', why: 'laid side by side (judgement, no source)' },
    },
  ),
  wearer: amount(
    'length',
    { least: 0, most: 1000 },
    {
      title: 'Implant wearer, distance',
      help: 'Nearest that a person with an implanted device comes to lead or arc; left out: they stay out.',
    },
  ).optional(),
});

/** Where the work is done and by whom, as the hazards ask for it. */
export const site = z.strictObject({
  place: described(z.enum(['open_air', 'open_bay', 'closed_space']), {
    title: 'Place',
    help: 'Open air, an open bay, or a closed space such as a vessel.',
    fallback: { text: 'open_bay', why: 'most gouging is done in a bay' },
  }),
  bay: text(60, {
    title: 'Bay',
    help: 'Name of the bay in the kit in which the job is done; left out: the control station is not placed, and plans show the seam alone.',
  }).optional(),
  workplace: described(z.enum(['fixed', 'changing']), {
    title: 'Workplace',
    help: 'A fixed gouging place, or one that changes with the work.',
  }).optional(),
  duration: described(z.enum(['short', 'long']), {
    title: 'Duration',
    help: 'Whether gouging is done for a short or a long time there, as the competent person judges it.',
  }).optional(),
  torches: count(1, 50, {
    title: 'Torches at once',
    help: 'How many torches burn at the same time in this place.',
    fallback: { text: 1, why: 'one torch was stated' },
  }),
  crews: z.array(crew).max(20).optional(),
  noise,
  eyes,
  fire,
  room,
  ventilation,
  fume,
  oxygen: amount(
    'share',
    { least: 0, most: 1 },
    { title: 'Oxygen', help: 'Oxygen measured in the space before work, by volume.' },
  ).optional(),
  leads,
  cleaning_air: amount(
    'pressure',
    { least: 0, most: 2e6 },
    { title: 'Cleaning air', help: 'Pressure of the air with which the groove is blown clean.' },
  ).optional(),
});
