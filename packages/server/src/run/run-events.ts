import { StoreFailure } from '@furrow/store';
import type { LiveRun } from './live-runs.ts';

/** Longest time without a word [ms]: whoever listens sees how old the last reading is, and that the line is open. */
const SAY_AFTER = 1000;
/** How often it is asked whether the listener still may [ms]. */
const ASK_EVERY = 5000;

/** Who listens, from where on, and by which clock. */
export interface RunListener {
  /** Place in the file to begin at [bytes]. */
  readonly from: number;
  /** Whether they still may: a stream outlives no session. */
  readonly mayStill: () => Promise<boolean>;
  readonly now: () => Date;
}

/**
 * Everything that comes in of a live run, from a place in its file on, as server-sent events: readings as lines under
 * the identifier of the place behind them, so that a listener who lost the line asks on from there; `state` with what is
 * told beside them, at once where the run begins or ceases to deviate from its plan; `end` when the run has ended.
 */
export async function* runEvents(
  live: LiveRun,
  { from, mayStill, now }: RunListener,
): AsyncGenerator<string> {
  let at = from > live.length ? 0 : from;
  // a page knows by it that the line is open before anything comes in
  yield 'retry: 1000\n\n';
  let told = 0;
  let toldTurns = live.turns;
  let asked = now().getTime();
  for (;;) {
    const ended = live.ended;
    const lines = await live.linesFrom(at);
    if (lines.length > 0) {
      at += lines.length;
      const data = lines.toString('utf8').trimEnd().replaceAll('\n', '\ndata: ');
      yield `id: ${at}\ndata: ${data}\n\n`;
    }
    const moment = now().getTime();
    if (moment - asked >= ASK_EVERY) {
      asked = moment;
      if (!(await heldOn(mayStill))) return;
    }
    const { turns } = live;
    if (lines.length === 0 || turns !== toldTurns || moment - told >= SAY_AFTER) {
      told = moment;
      toldTurns = turns;
      yield `event: state\ndata: ${JSON.stringify(live.state(moment))}\n\n`;
    }
    if (at < live.length) continue;
    if (ended) {
      yield 'event: end\ndata: {}\n\n';
      return;
    }
    await live.changed(SAY_AFTER);
  }
}

/** Whether the listener still may; while the database cannot be reached nobody is sent away. */
async function heldOn(mayStill: RunListener['mayStill']): Promise<boolean> {
  try {
    return await mayStill();
  } catch (error) {
    if (error instanceof StoreFailure) return true;
    throw error;
  }
}
