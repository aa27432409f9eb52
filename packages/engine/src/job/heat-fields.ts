import { z } from 'zod';
import { amount, described, type Fallback, text } from '../document/index.ts';
import { METAL_FAMILIES, metalOf } from '../material/index.ts';
import { formatAmount, MM, ZERO_CELSIUS } from '../quantity/index.ts';

/** The greatest interpass temperature that is usual for the metal of a job as written. */
function usualInterpass(document: unknown): Fallback {
  const { plate } = (document ?? {}) as { plate?: { material?: unknown } };
  const family = METAL_FAMILIES.find((each) => each === plate?.material) ?? 'carbon_steel';
  const { value, source } = metalOf(family).interpassMost;
  return { text: formatAmount(value, 'temperature', 'metric'), why: source };
}

/** Heat in the plate: where it starts, what it keeps, what it may do. */
export const heat = z.strictObject({
  ambient: amount(
    'temperature',
    { least: ZERO_CELSIUS - 40, most: ZERO_CELSIUS + 60 },
    {
      title: 'Ambient',
      help: 'Temperature of the air, and of a plate that is not preheated.',
      fallback: { text: '20 °C', why: 'a mild day' },
    },
  ),
  preheat: amount(
    'temperature',
    { least: ZERO_CELSIUS - 40, most: ZERO_CELSIUS + 450 },
    {
      title: 'Preheat for gouging',
      help: 'Temperature of the plate when gouging begins; left out: that of the re-weld (common practice, no code formula).',
    },
  ).optional(),
  interpass_most: amount(
    'temperature',
    { least: ZERO_CELSIUS + 20, most: ZERO_CELSIUS + 500 },
    {
      title: 'Greatest interpass temperature',
      help: 'How hot the plate beside the groove may be when the next pass starts; left out: what is usual for the metal.',
      fallback: usualInterpass,
    },
  ),
  kept_least: amount(
    'share',
    { least: 0.01, most: 0.99 },
    {
      title: 'Heat kept, at least',
      help: 'Lower end of the share of the arc energy that the plate keeps; left out: from the energy balance.',
    },
  ).optional(),
  kept_most: amount(
    'share',
    { least: 0.01, most: 0.99 },
    {
      title: 'Heat kept, at most',
      help: 'Upper end of the share of the arc energy that the plate keeps; left out: from the energy balance.',
    },
  ).optional(),
  losses: described(z.enum(['film_and_radiation', 'none']), {
    title: 'Losses at the surface',
    help: 'Whether the faces lose heat to the air and by radiation.',
    fallback: { text: 'film_and_radiation', why: 'a plate in still air' },
  }),
  back_face: text(80, {
    title: 'What is behind',
    help: 'What the back of the plate touches or carries: paint, a lining, contents.',
  }).optional(),
  back_face_most: amount(
    'temperature',
    { least: ZERO_CELSIUS + 20, most: ZERO_CELSIUS + 900 },
    {
      title: 'Greatest temperature behind',
      help: 'What the back of the plate stands; left out: it is told, not limited.',
    },
  ).optional(),
  hardness_most_HV: described(z.number().min(100).max(900), {
    title: 'Greatest hardness in HV',
    help: 'Hardness asked for at the groove, in HV 10; it is shown, never a reason to refuse.',
  }).optional(),
  skin_allowance: amount(
    'length',
    { least: 0, most: 10 * MM },
    {
      title: 'Grinding allowance',
      help: 'How much of the gouged face is ground away with the carburised skin.',
      fallback: { text: '1.5 mm', why: 'ASME PCC-2, carbon steel' },
    },
  ),
});

/** The weld that fills the groove again, as preheat and refill ask for it. */
export const reweld = z.strictObject({
  process: described(z.enum(['stick', 'solid_wire', 'metal_cored', 'flux_cored', 'submerged_arc']), {
    title: 'Process',
    help: 'How the groove is filled again.',
    fallback: { text: 'solid_wire', why: 'the most used one' },
  }),
  heat_input_kJ_per_mm: described(z.number().min(0.1).max(20), {
    title: 'Heat input in kJ/mm',
    help: 'Heat input of the re-weld in kJ/mm, with its thermal efficiency.',
    fallback: { text: 1.5, why: 'a middling pass (judgement, no source)' },
  }),
  hydrogen_mL_per_100g: described(z.number().min(0.1).max(50), {
    title: 'Hydrogen in mL/100 g',
    help: 'Diffusible hydrogen of the filler in mL per 100 g of deposit, by ISO 3690.',
    fallback: { text: 5, why: 'a low-hydrogen filler (judgement, no source)' },
  }),
  restraint: described(z.enum(['low', 'medium', 'high']), {
    title: 'Restraint',
    help: 'How far the parts can give way while the weld shrinks.',
    fallback: { text: 'medium', why: 'judgement, no source' },
  }),
});
