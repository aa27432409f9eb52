import type { Writable } from 'node:stream';
import { whyUnwritable } from '../output/disk.ts';
import { EXIT } from './exit-code.ts';

/** A program that reads as much as it wants and closes the pipe is no fault. */
const CLOSED = new Set(['EPIPE', 'ERR_STREAM_DESTROYED', 'ECONNRESET']);

/** Ends quietly when nobody reads on, and tells of an output that cannot be written, such as a file on a full disk. */
export function watchOutput(output: Writable, problem: (lines: readonly string[]) => void): void {
  let known = false;
  output.on('error', (error: NodeJS.ErrnoException) => {
    if (known || CLOSED.has(error.code ?? '')) return;
    known = true;
    problem([`The output could not be written: ${whyUnwritable(error) ?? error.message}`]);
    // the command itself may end well after this, and sets its own code then
    process.once('exit', () => {
      process.exitCode = EXIT.badInput;
    });
  });
}
