import { createReadStream } from 'node:fs';
import { type Issue, JOB_TEXT_MOST, type ReadJob, readJob } from '@furrow/engine';

/** A UTF-8 character takes four bytes at most. */
const BYTES_MOST = 4 * JOB_TEXT_MOST;

/** A job file as read, or the lines that tell what is wrong with it. */
export type LoadedJob =
  | { readonly ok: true; readonly read: ReadJob }
  | { readonly ok: false; readonly lines: readonly string[] };

/** Reads a job from a file, or from standard input for `-`. */
export async function loadJob(file: string): Promise<LoadedJob> {
  let text: string;
  try {
    text = await readText(file);
  } catch (error) {
    return { ok: false, lines: [`${file}: ${whyUnreadable(error as NodeJS.ErrnoException)}`] };
  }
  const outcome = readJob(text.replace(/^\uFEFF/u, ''));
  if (outcome.ok) return { ok: true, read: outcome.value };
  return { ok: false, lines: outcome.issues.map((issue) => issueLine(file, issue)) };
}

/** Reads no further than a job can reach, so that a device or a film given by mistake ends soon. */
async function readText(file: string): Promise<string> {
  const source = file === '-' ? process.stdin : createReadStream(file);
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of source) {
    size += (chunk as Buffer).length;
    if (size > BYTES_MOST) throw new Error(`this has more than ${BYTES_MOST} bytes; a job has fewer.`);
    chunks.push(chunk as Buffer);
  }
  return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks));
}

function whyUnreadable(error: NodeJS.ErrnoException): string {
  switch (error.code) {
    case 'ENOENT':
      return 'there is no such file.';
    case 'EISDIR':
      return 'this is a folder; a job file is wanted.';
    case 'EACCES':
      return 'this user may not read the file.';
    case 'ERR_ENCODING_INVALID_ENCODED_DATA':
      return 'the file is not text in UTF-8; save it as UTF-8 and try again.';
    default:
      return error.message;
  }
}

/** One issue on one line: file, line and column, message, and what would be accepted. */
function issueLine(file: string, issue: Issue): string {
  const place = issue.position === undefined ? '' : `:${issue.position.line}:${issue.position.column}`;
  const nearest = issue.nearest === undefined ? '' : ` Nearest: ${issue.nearest}.`;
  return `${file}${place}: ${issue.message}${nearest} [${issue.code}]`;
}
