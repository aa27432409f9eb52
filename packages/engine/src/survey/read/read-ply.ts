import { textOf } from '../../delimited/index.ts';
import type { Outcome } from '../../issue/index.ts';

/** Points of a cloud, in the unit of their file. */
export interface CloudPoints {
  /** First coordinate of each [the file's unit]. */
  readonly x: Float64Array;
  /** Second coordinate [the file's unit]. */
  readonly y: Float64Array;
  /** Third coordinate [the file's unit]. */
  readonly z: Float64Array;
}

/** Bytes of each kind of number, and how it is read. */
const KINDS: Readonly<
  Record<string, readonly [bytes: number, read: (view: DataView, at: number, little: boolean) => number]>
> = {
  char: [1, (view, at) => view.getInt8(at)],
  uchar: [1, (view, at) => view.getUint8(at)],
  short: [2, (view, at, little) => view.getInt16(at, little)],
  ushort: [2, (view, at, little) => view.getUint16(at, little)],
  int: [4, (view, at, little) => view.getInt32(at, little)],
  uint: [4, (view, at, little) => view.getUint32(at, little)],
  float: [4, (view, at, little) => view.getFloat32(at, little)],
  double: [8, (view, at, little) => view.getFloat64(at, little)],
};

/** Other names of them. */
const SAME: Readonly<Record<string, string>> = {
  int8: 'char',
  uint8: 'uchar',
  int16: 'short',
  uint16: 'ushort',
  int32: 'int',
  uint32: 'uint',
  float32: 'float',
  float64: 'double',
};

/** Greatest length of a header [bytes]. */
const HEADER_MOST = 64 * 1024;

function refused(message: string): Outcome<never> {
  return {
    ok: false,
    issues: [
      {
        code: 'SURVEY_NOT_READABLE',
        message,
        path: '',
        accepted: 'a PLY file whose vertices have x, y and z, as text or binary',
      },
    ],
  };
}

/** Whether bytes begin as a PLY file does. */
export function isPly(bytes: Uint8Array): boolean {
  return bytes[0] === 0x70 && bytes[1] === 0x6c && bytes[2] === 0x79 && (bytes[3] === 10 || bytes[3] === 13);
}

/** Reads the vertices of a PLY file: text, or binary in either order of bytes. */
export function readPly(bytes: Uint8Array): Outcome<CloudPoints> {
  const head = textOf(bytes, 0, Math.min(bytes.length, HEADER_MOST), 'windows-1252');
  const end = /end_header\r?\n/u.exec(head);
  if (end === null) return refused('The header of the PLY file has no end.');
  const lines = head.slice(0, end.index).split(/\r?\n/u);
  let format = '';
  let count = -1;
  let element = '';
  let before = false;
  const properties: { name: string; kind: string }[] = [];
  for (const line of lines) {
    const words = line.trim().split(/\s+/u);
    if (words[0] === 'format') format = words[1] ?? '';
    if (words[0] === 'element') {
      element = words[1] ?? '';
      if (element === 'vertex') count = Number(words[2]);
      else if (count < 0) before = true;
    }
    if (words[0] === 'property' && element === 'vertex') {
      if (words[1] === 'list') return refused('The vertices of the PLY file hold lists.');
      properties.push({ name: words[2] ?? '', kind: SAME[words[1] ?? ''] ?? words[1] ?? '' });
    }
  }
  if (before) return refused('Something else stands before the vertices of the PLY file.');
  if (!(count > 0)) return refused('The PLY file has no vertices.');
  if (count > bytes.length)
    return refused(`The PLY file promises ${count} vertices, more than a file of its size can hold.`);
  const places = ['x', 'y', 'z'].map((name) => properties.findIndex((property) => property.name === name));
  if (places.some((place) => place < 0)) return refused('The vertices of the PLY file have no x, y and z.');
  if (properties.some(({ kind }) => KINDS[kind] === undefined))
    return refused('The PLY file names a kind of number that is not known.');
  const body = end.index + end[0].length;
  const out = { x: new Float64Array(count), y: new Float64Array(count), z: new Float64Array(count) };
  const columns = [out.x, out.y, out.z];
  if (format === 'ascii') {
    const numbers = textOf(bytes, body, bytes.length, 'windows-1252').split(/\r?\n/u);
    for (let i = 0; i < count; i += 1) {
      const cells = numbers[i]?.trim().split(/\s+/u) ?? [];
      if (cells.length < properties.length)
        return refused(`The PLY file promises ${count} vertices and ends after ${i}.`);
      places.forEach((place, k) => {
        columns[k]![i] = Number(cells[place]);
      });
    }
    return { ok: true, value: out };
  }
  if (format !== 'binary_little_endian' && format !== 'binary_big_endian')
    return refused(`The PLY file says its format is "${format}".`);
  const little = format === 'binary_little_endian';
  const offsets: number[] = [];
  let stride = 0;
  for (const { kind } of properties) {
    offsets.push(stride);
    stride += KINDS[kind]![0];
  }
  if (bytes.length - body < count * stride)
    return refused(
      `The PLY file promises ${count} vertices and ends after ${Math.floor((bytes.length - body) / stride)}.`,
    );
  const view = new DataView(bytes.buffer, bytes.byteOffset + body);
  places.forEach((place, k) => {
    const read = KINDS[properties[place]!.kind]![1];
    const column = columns[k]!;
    for (let i = 0; i < count; i += 1) column[i] = read(view, i * stride + offsets[place]!, little);
  });
  return { ok: true, value: out };
}
