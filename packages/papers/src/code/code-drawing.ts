import qrcode from 'qrcode-generator';
import type { Drawing, Mark } from '../drawing/index.ts';

/** Longest content that is taken; more makes the code too fine for a telephone [characters]. */
const CONTENT_MOST = 300;

/** Empty modules around the code, as ISO/IEC 18004 asks for [-]. */
const QUIET = 4;

/** Draws a text as a QR code (ISO/IEC 18004, medium error correction), one drawing unit per module; undefined if it is too long. */
export function codeDrawing(content: string, words: string): Drawing | undefined {
  if (content === '' || content.length > CONTENT_MOST) return undefined;
  const code = qrcode(0, 'M');
  code.addData(asBytes(content), 'Byte');
  code.make();
  const count = code.getModuleCount();
  const marks: Mark[] = [];
  for (let row = 0; row < count; row += 1) {
    for (let from = 0; from < count; from += 1) {
      if (!code.isDark(row, from)) continue;
      let to = from;
      while (to < count && code.isDark(row, to)) to += 1;
      marks.push(bar(row + QUIET, from + QUIET, to + QUIET));
      from = to;
    }
  }
  const size = count + 2 * QUIET;
  return { width: size, height: size, title: 'QR code', description: `${words}: ${content}`, marks };
}

/** The library takes one byte per character. */
function asBytes(content: string): string {
  return String.fromCharCode(...new TextEncoder().encode(content));
}

function bar(row: number, from: number, to: number): Mark {
  const points = [
    { x: from, y: row },
    { x: to, y: row },
    { x: to, y: row + 1 },
    { x: from, y: row + 1 },
  ];
  return { kind: 'area', role: 'code', points };
}
