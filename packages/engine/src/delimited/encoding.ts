/** How the bytes of a file stand for characters. */
export type Encoding = 'utf-8' | 'utf-8-bom' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** All of them, for schemas and forms. */
export const ENCODINGS: readonly Encoding[] = ['utf-8', 'utf-8-bom', 'utf-16le', 'utf-16be', 'windows-1252'];

/** What 0x80 to 0x9f mean in Windows-1252; the five that it leaves open stand for themselves. */
const WINDOWS_1252 = [...'€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ'];

/** A choice and why it was made. */
export interface GuessedEncoding {
  readonly encoding: Encoding;
  readonly says: string;
}

/**
 * Bytes of the byte order mark that a file begins with.
 *
 * @param encoding - how its bytes stand for characters [text], one of ENCODINGS
 * @param bytes - the beginning of the file [bytes], of any length
 * @returns length of the mark, 0 without one [bytes]
 * @source The Unicode Standard, byte order mark (memory)
 * @example
 * markLength('utf-8', [0xef, 0xbb, 0xbf, 0x41]) // => 3
 */
export function markLength(encoding: Encoding, bytes: Uint8Array): number {
  if (encoding === 'utf-8-bom' || encoding === 'utf-8') {
    return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  }
  if (encoding === 'utf-16le') return bytes[0] === 0xff && bytes[1] === 0xfe ? 2 : 0;
  if (encoding === 'utf-16be') return bytes[0] === 0xfe && bytes[1] === 0xff ? 2 : 0;
  return 0;
}

/** The encoding of a file by its first bytes: marks, zeros at every second place, and whether UTF-8 holds. */
export function guessEncoding(head: Uint8Array): GuessedEncoding {
  if (head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf) {
    return { encoding: 'utf-8-bom', says: 'the file begins with the mark of UTF-8' };
  }
  if (head[0] === 0xff && head[1] === 0xfe)
    return { encoding: 'utf-16le', says: 'the file begins with the mark of UTF-16, low byte first' };
  if (head[0] === 0xfe && head[1] === 0xff)
    return { encoding: 'utf-16be', says: 'the file begins with the mark of UTF-16, high byte first' };
  const zeros = [0, 0];
  const looked = Math.min(head.length, 4096);
  for (let at = 0; at < looked; at += 1) if (head[at] === 0) zeros[at % 2]! += 1;
  const half = looked / 2;
  if (zeros[1]! > 0.7 * half && zeros[0]! < 0.1 * half)
    return { encoding: 'utf-16le', says: 'every second byte is zero, as in UTF-16, low byte first' };
  if (zeros[0]! > 0.7 * half && zeros[1]! < 0.1 * half)
    return { encoding: 'utf-16be', says: 'every second byte is zero, as in UTF-16, high byte first' };
  const { wrong, longer } = utf8Faults(head);
  if (longer === 0 && wrong === 0) return { encoding: 'utf-8', says: 'nothing but plain ASCII characters' };
  if (wrong === 0) return { encoding: 'utf-8', says: `${longer} characters beyond ASCII, all good UTF-8` };
  return {
    encoding: 'windows-1252',
    says: `${wrong} byte${wrong === 1 ? '' : 's'} above 127 that cannot be UTF-8`,
  };
}

/** Sequences beyond ASCII, good and bad; one cut by the end of the head is neither. */
function utf8Faults(bytes: Uint8Array): { wrong: number; longer: number } {
  let wrong = 0;
  let longer = 0;
  for (let at = 0; at < bytes.length; ) {
    const first = bytes[at]!;
    if (first < 0x80) {
      at += 1;
      continue;
    }
    const more =
      first >= 0xc2 && first < 0xe0
        ? 1
        : first >= 0xe0 && first < 0xf0
          ? 2
          : first >= 0xf0 && first < 0xf5
            ? 3
            : 0;
    if (more > 0 && at + more >= bytes.length) break;
    let good = more > 0;
    for (let next = 1; next <= more; next += 1) good &&= (bytes[at + next]! & 0xc0) === 0x80;
    if (good) longer += 1;
    else wrong += 1;
    at += good ? more + 1 : 1;
  }
  return { wrong, longer };
}

/**
 * Text of some bytes. What cannot be decoded becomes U+FFFD; UTF-16 has been turned into UTF-8 before.
 *
 * @param bytes - the file, or a piece of it [bytes], of any length
 * @param from - first byte of the text [-], from 0 on
 * @param to - byte behind the last of it [-], at most the length
 * @param encoding - how bytes stand for characters [text], UTF-8 or Windows-1252
 * @returns what they say [text]
 * @source UTF-8 by RFC 3629; Windows-1252 by its code page (memory)
 * @example
 * textOf([0x35, 0xc2, 0xb0], 0, 3, 'utf-8') // => "5°"
 */
export function textOf(bytes: Uint8Array, from: number, to: number, encoding: Encoding): string {
  let text = '';
  if (encoding === 'windows-1252') {
    for (let at = from; at < to; at += 1) {
      const byte = bytes[at]!;
      text += byte >= 0x80 && byte < 0xa0 ? WINDOWS_1252[byte - 0x80] : String.fromCharCode(byte);
    }
    return text;
  }
  for (let at = from; at < to; ) {
    const first = bytes[at]!;
    if (first < 0x80) {
      text += String.fromCharCode(first);
      at += 1;
      continue;
    }
    const more = first >= 0xf0 ? 3 : first >= 0xe0 ? 2 : first >= 0xc2 ? 1 : 0;
    let code = more === 3 ? first & 7 : more === 2 ? first & 15 : first & 31;
    let good = more > 0 && at + more < to;
    for (let next = 1; good && next <= more; next += 1) {
      const byte = bytes[at + next]!;
      good = (byte & 0xc0) === 0x80;
      code = (code << 6) | (byte & 63);
    }
    text += good && code <= 0x10ffff ? String.fromCodePoint(code) : '\ufffd';
    at += good ? more + 1 : 1;
  }
  return text;
}

/** Turns UTF-16 into UTF-8 piece by piece; a character cut by the end of a piece waits for the next. */
export class Utf16ToUtf8 {
  readonly #low: 0 | 1;
  #waiting: number[] = [];

  constructor(encoding: 'utf-16le' | 'utf-16be') {
    this.#low = encoding === 'utf-16le' ? 0 : 1;
  }

  push(piece: Uint8Array): Uint8Array {
    const bytes = new Uint8Array(this.#waiting.length + piece.length);
    bytes.set(this.#waiting);
    bytes.set(piece, this.#waiting.length);
    const out = new Uint8Array(Math.ceil((bytes.length / 2) * 3));
    let length = 0;
    let at = 0;
    for (; at + 1 < bytes.length; at += 2) {
      let code = bytes[at + this.#low]! | (bytes[at + 1 - this.#low]! << 8);
      if (code >= 0xd800 && code < 0xdc00) {
        if (at + 3 >= bytes.length) break;
        const trail = bytes[at + 2 + this.#low]! | (bytes[at + 3 - this.#low]! << 8);
        if (trail >= 0xdc00 && trail < 0xe000) {
          code = 0x10000 + ((code - 0xd800) << 10) + (trail - 0xdc00);
          at += 2;
        } else code = 0xfffd;
      } else if (code >= 0xdc00 && code < 0xe000) code = 0xfffd;
      if (code < 0x80) out[length++] = code;
      else if (code < 0x800) {
        out[length++] = 0xc0 | (code >> 6);
        out[length++] = 0x80 | (code & 63);
      } else if (code < 0x10000) {
        out[length++] = 0xe0 | (code >> 12);
        out[length++] = 0x80 | ((code >> 6) & 63);
        out[length++] = 0x80 | (code & 63);
      } else {
        out[length++] = 0xf0 | (code >> 18);
        out[length++] = 0x80 | ((code >> 12) & 63);
        out[length++] = 0x80 | ((code >> 6) & 63);
        out[length++] = 0x80 | (code & 63);
      }
    }
    this.#waiting = [...bytes.subarray(at)];
    return out.subarray(0, length);
  }
}
