import type { LiveRun } from './live-runs.ts';

/** Longest time without a word [ms]: whoever listens sees how old the last reading is, and that the line is open. */
const SAY_AFTER = 1000;

/**
 * Everything that comes in of a live run, from a place in its file on, as server-sent events: readings as lines under
 * the identifier of the place behind them, so that a listener who lost the line asks on from there; `state` with what is
 * told beside them; `end` when the run has ended.
 */
export async function* runEvents(live: LiveRun, from: number, now: () => Date): AsyncGenerator<string> {
  let at = from > live.length ? 0 : from;
  // a page knows by it that the line is open before anything comes in
  yield 'retry: 1000\n\n';
  let told = 0;
  for (;;) {
    const ended = live.ended;
    const lines = await live.linesFrom(at);
    if (lines.length > 0) {
      at += lines.length;
      const data = lines.toString('utf8').trimEnd().replaceAll('\n', '\ndata: ');
      yield `id: ${at}\ndata: ${data}\n\n`;
    }
    const moment = now().getTime();
    if (lines.length === 0 || moment - told >= SAY_AFTER) {
      told = moment;
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
