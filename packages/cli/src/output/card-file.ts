import { lstatSync, readFileSync } from 'node:fs';
import { DISK, type Disk } from './disk.ts';
import { sha256Of } from './paper-list.ts';

/** Bytes of a comment that may follow the end of a PDF: the SHA-256 of all before it. */
const SEAL = /\n%furrow ([0-9a-f]{64})\n$/u;
const SEAL_LENGTH = '\n%furrow \n'.length + 64;

/** What came of writing a card. */
export type Written = 'new' | 'replaced' | 'in_the_way';

/**
 * Writes a card whole or not at all: first beside its place, then moved there.
 * What stands in that place is replaced only if it is a card that nobody changed since Furrow wrote it.
 */
export function writeCard(file: string, pdf: Uint8Array, disk: Disk = DISK): Written {
  const found = lstatSync(file, { throwIfNoEntry: false });
  if (found !== undefined && !(found.isFile() && isAsWritten(readFileSync(file)))) return 'in_the_way';
  const beside = `${file}.${process.pid}.part`;
  disk.writeNew(beside, sealed(pdf));
  try {
    disk.move(beside, file);
  } catch (error) {
    disk.remove(beside);
    throw error;
  }
  return found === undefined ? 'new' : 'replaced';
}

function sealed(pdf: Uint8Array): Uint8Array {
  return Buffer.concat([pdf, Buffer.from(`\n%furrow ${sha256Of(pdf)}\n`)]);
}

function isAsWritten(bytes: Buffer): boolean {
  const end = SEAL.exec(bytes.subarray(-SEAL_LENGTH).toString('latin1'));
  return end !== null && end[1] === sha256Of(bytes.subarray(0, -SEAL_LENGTH));
}
