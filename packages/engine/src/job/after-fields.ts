import { z } from 'zod';
import { amount } from '../document/index.ts';

/** What comes before and after the arc: set-up, cleaning, grinding, inspection, refill. */
export const after = z.strictObject({
  set_up_time: amount(
    'time',
    { least: 0, most: 7 * 86_400 },
    {
      title: 'Set-up',
      help: 'Time to place and connect everything before the first arc.',
      fallback: { text: '45 min', why: 'judgement, no source' },
    },
  ),
});
