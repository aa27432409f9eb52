import { z } from 'zod';
import { amount, count, described, text } from '../document/index.ts';

const DAY = 86_400;

const task = z.strictObject({
  name: text(60, { title: 'Task', help: 'What is done, in words.' }),
  work: described(
    z.enum([
      'gouging',
      'grinding',
      'chipping',
      'gas_shielded_welding',
      'stick_welding',
      'plasma_cutting',
      'other',
    ]),
    {
      title: 'Kind of work',
      help: 'Its usual noise stands in where no level is stated; other work needs its level.',
      fallback: { text: 'gouging', why: 'the loudest: work that is not named counts as gouging' },
    },
  ),
  time: amount(
    'time',
    { least: 0, most: DAY },
    { title: 'Time', help: 'How long the task lasts in the shift, all its spells together.' },
  ),
  level_dBA: described(z.number().min(40).max(150), {
    title: 'Level',
    help: 'Measured level at the ear in dBA; it replaces every estimate.',
  }).optional(),
});

/** One crew and its shift, for the noise that it takes home. */
export const crew = z.strictObject({
  name: text(60, { title: 'Name', help: 'Name of the crew or the shift; no names of persons.' }),
  people: count(1, 500, { title: 'People', help: 'How many are in it.' }).optional(),
  shift: amount(
    'time',
    { least: 60, most: DAY },
    {
      title: 'Shift',
      help: 'Length of the shift; what no task fills counts as quiet.',
      fallback: { text: '8 h', why: 'the day that noise rules are written for' },
    },
  ),
  worn: described(z.enum(['none', 'plug', 'muff', 'plug_and_muff']), {
    title: 'Hearing protection',
    help: 'What the crew wears; its rating stands in the noise group. Left out: whatever is rated there.',
  }).optional(),
  tasks: z.array(task).min(1).max(20),
});
