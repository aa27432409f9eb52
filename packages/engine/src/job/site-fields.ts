import { z } from 'zod';
import { described } from '../document/index.ts';

/** Where the work is done and by whom, as the hazards ask for it. */
export const site = z.strictObject({
  place: described(z.enum(['open_air', 'open_bay', 'closed_space']), {
    title: 'Place',
    help: 'Open air, an open bay, or a closed space such as a vessel.',
    fallback: { text: 'open_bay', why: 'most gouging is done in a bay' },
  }),
});
