import { z } from 'zod';

/** Revision numbers stay far within what both databases call an integer. */
export const REVISION_MOST = 1_000_000_000;

/** Revision of something of which there may be none yet: 0 then. */
export const revisionFromNoneSchema = z
  .int()
  .min(0)
  .max(REVISION_MOST)
  .describe('Number of the revision, from 1, one more with each save; 0 as long as nothing was saved.');

/** What a save of such a thing is made from. */
export const basedOnFromNoneSchema = z
  .int()
  .min(0)
  .max(REVISION_MOST)
  .describe('Number of the revision that this was made from; 0 for the first save.');
