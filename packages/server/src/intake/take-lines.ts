import { FRAME_BYTES_MOST } from './frame.ts';
import type { Intake } from './intake.ts';
import { LineCutter } from './line-cutter.ts';

/** What became of the lines of one request. */
export interface TakenLines {
  /** Frames that are on disk [-]. */
  readonly kept: number;
  /** The first of those that were not taken. */
  readonly refused: { readonly line: number; readonly why: string }[];
  readonly refused_count: number;
}

/** Greatest content of one request [bytes]. */
const BODY_MOST = 16 * 1024 * 1024;
const REFUSED_NAMED = 20;

/** More was sent in one request than is taken; what came before is kept. */
export class TooManyLines extends Error {
  readonly kept: number;

  constructor(kept: number) {
    super(`A request holds at most ${BODY_MOST / 1024 / 1024} MiB; ${kept} frames of it are kept.`);
    this.kept = kept;
  }
}

/** Takes newline JSON, a frame per line; done when all its frames are on disk. A full disk is a `JournalFailure`. */
export async function takeLines(pieces: AsyncIterable<Uint8Array>, intake: Intake): Promise<TakenLines> {
  const cutter = new LineCutter(FRAME_BYTES_MOST);
  const refused: { line: number; why: string }[] = [];
  let line = 0;
  let length = 0;
  let kept = 0;
  let refusedCount = 0;
  const take = async (lines: readonly Uint8Array[]): Promise<void> => {
    const outcomes = await Promise.all(
      lines.map(async (bytes) => {
        line += 1;
        const at = line;
        return bytes.length === 0 ? undefined : { at, why: await intake.take(bytes) };
      }),
    );
    for (const outcome of outcomes) {
      if (outcome === undefined) continue;
      if (outcome.why === undefined) kept += 1;
      else {
        refusedCount += 1;
        if (refused.length < REFUSED_NAMED) refused.push({ line: outcome.at, why: outcome.why });
      }
    }
  };
  for await (const piece of pieces) {
    length += piece.length;
    if (length > BODY_MOST) throw new TooManyLines(kept);
    await take(cutter.push(piece));
  }
  await take(cutter.end());
  return { kept, refused, refused_count: refusedCount };
}
