import { z } from 'zod';
import type { Reply } from './failure.ts';
import { request } from './request.ts';

const entrySchema = z.object({
  name: z.string(),
  summary: z.string(),
  inputs: z.array(z.object({ name: z.string(), text: z.string() })),
  returns: z.string(),
  source: z.string(),
  worked: z.array(z.string()),
});
const roomSchema = z.object({ room: z.string(), answers: z.string(), entries: z.array(entrySchema) });

/** One question of the handbook: what it answers, from what, by which source, with a worked number. */
export type HandbookEntry = z.infer<typeof entrySchema>;
/** One room of the engine in the handbook. */
export type HandbookRoom = z.infer<typeof roomSchema>;

let kept: Promise<Reply<HandbookRoom[]>> | undefined;

/** The handbook as it was built with this app; asked for once. */
export function fetchHandbook(): Promise<Reply<HandbookRoom[]>> {
  kept ??= request('GET', '/handbook.json', z.array(roomSchema)).then((reply) => {
    if (!reply.ok) kept = undefined;
    return reply;
  });
  return kept;
}
