const [LF, CR] = [10, 13];

/** Pieces as one; one alone stays as it is. */
export function joined(pieces: readonly Uint8Array[]): Uint8Array {
  if (pieces.length === 1) return pieces[0]!;
  const all = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

/** Bytes with a line end behind them. */
export function withLineEnd(bytes: Uint8Array, eol: number): Uint8Array {
  return joined([bytes, Uint8Array.of(eol)]);
}

/** Zero bytes in a row from which they are room that a logger keeps, not letters of two bytes [bytes]. */
const ROOM = 64;

/** Bytes up to where a logger has kept room behind what it wrote. */
export function withoutRoom(bytes: Uint8Array): Uint8Array {
  let end = bytes.length;
  while (end > 0 && bytes[end - 1] === 0) end -= 1;
  if (bytes.length - end < ROOM) return bytes;
  // a last letter of two bytes may end in one of them
  const wide = bytes.subarray(0, end).includes(0);
  return bytes.subarray(0, wide ? end + (end % 2) : end);
}

/** Bytes up to the last line end, where they are cut; all of them where there is none. */
export function wholeLines(bytes: Uint8Array, isCut: boolean): Uint8Array {
  const end = isCut ? Math.max(bytes.lastIndexOf(LF), bytes.lastIndexOf(CR)) : -1;
  return end > 0 ? bytes.subarray(0, end + 1) : bytes;
}
