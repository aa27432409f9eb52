import { crc32, deflateSync, inflateSync } from 'node:zlib';

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const COLOURS_MOST = 256;

/** Writes a picture of a screen anew with at most 256 colours: rare shades, as at the edges of letters, go to their nearest. */
export function smallPng(png: Buffer): Buffer {
  const { width, height, colours } = readPixels(png);
  const counts = new Map<number, number>();
  for (const colour of colours) counts.set(colour, (counts.get(colour) ?? 0) + 1);
  const palette = [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0]).slice(0, COLOURS_MOST);
  const place = new Map(palette.map(([colour], index) => [colour, index]));
  for (const colour of counts.keys()) {
    if (!place.has(colour)) place.set(colour, nearest(colour, palette));
  }
  const rows = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      rows[y * (width + 1) + 1 + x] = place.get(colours[y * width + x] ?? 0) ?? 0;
    }
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 3, 0, 0, 0], 8);
  const table = Buffer.from(palette.flatMap(([colour]) => channels(colour)));
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', header),
    chunk('PLTE', table),
    chunk('IDAT', deflateSync(rows, { level: 9, memLevel: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function channels(colour: number): [number, number, number] {
  return [colour >> 16, (colour >> 8) & 255, colour & 255];
}

function nearest(colour: number, palette: readonly (readonly [number, number])[]): number {
  const [red, green, blue] = channels(colour);
  let [best, least] = [0, Number.POSITIVE_INFINITY];
  for (const [index, [candidate]] of palette.entries()) {
    const [r, g, b] = channels(candidate);
    const distance = (r - red) ** 2 + (g - green) ** 2 + (b - blue) ** 2;
    if (distance < least) [best, least] = [index, distance];
  }
  return best;
}

function chunk(name: string, content: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), content]);
  const frame = Buffer.alloc(8);
  frame.writeUInt32BE(content.length, 0);
  frame.writeUInt32BE(crc32(body), 4);
  return Buffer.concat([frame.subarray(0, 4), body, frame.subarray(4)]);
}

/** Colours of a picture as a browser writes it: 8 bits per channel, with or without opacity, not interlaced. */
function readPixels(png: Buffer): { width: number; height: number; colours: Uint32Array } {
  const parts: Buffer[] = [];
  for (let at = SIGNATURE.length; at < png.length; at += 12 + png.readUInt32BE(at)) {
    if (png.toString('latin1', at + 4, at + 8) === 'IDAT') {
      parts.push(png.subarray(at + 8, at + 8 + png.readUInt32BE(at)));
    }
  }
  const [width, height, depth, kind] = [png.readUInt32BE(16), png.readUInt32BE(20), png[24], png[25]];
  if (depth !== 8 || (kind !== 2 && kind !== 6)) throw new Error(`a picture of kind ${kind}, ${depth} bits`);
  const step = kind === 2 ? 3 : 4;
  const data = inflateSync(Buffer.concat(parts));
  const length = width * step;
  let before = new Uint8Array(length);
  const colours = new Uint32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const start = y * (length + 1);
    const row = unfiltered(data[start] ?? 0, data.subarray(start + 1, start + 1 + length), before, step);
    for (let x = 0; x < width; x += 1) {
      const [r = 0, g = 0, b = 0] = row.subarray(x * step, x * step + 3);
      colours[y * width + x] = (r << 16) | (g << 8) | b;
    }
    before = row;
  }
  return { width, height, colours };
}

/** A row as it was before its filter: each byte was written as what it differs by from its neighbours. */
function unfiltered(
  filter: number,
  data: Uint8Array,
  above: Uint8Array,
  step: number,
): Uint8Array<ArrayBuffer> {
  const row = new Uint8Array(data.length);
  for (let i = 0; i < data.length; i += 1) {
    const a = i < step ? 0 : (row[i - step] ?? 0);
    const b = above[i] ?? 0;
    const c = i < step ? 0 : (above[i - step] ?? 0);
    row[i] = (data[i] ?? 0) + ([0, a, b, (a + b) >> 1, paeth(a, b, c)][filter] ?? 0);
  }
  return row;
}

function paeth(a: number, b: number, c: number): number {
  const p = a + b - c;
  const [da, db, dc] = [Math.abs(p - a), Math.abs(p - b), Math.abs(p - c)];
  if (da <= db && da <= dc) return a;
  return db <= dc ? b : c;
}
