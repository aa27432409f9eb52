import { inflateSync } from 'node:zlib';

/** What a test reads back out of a PDF. */
export interface PdfContent {
  /** Number of pages [-]. */
  readonly pages: number;
  /** Text of all pages in the order of painting, pieces joined by a space. */
  readonly text: string;
  /** Size of the smallest letters on any page [pt]. */
  readonly smallest: number;
  /** Tags of the structure tree, in the order of the file. */
  readonly tags: readonly string[];
}

/** Reads pages, text and tags of a PDF as pdfkit writes them: glyph codes through each font's ToUnicode table. */
export function pdfContent(bytes: Uint8Array): PdfContent {
  const raw = Buffer.from(bytes).toString('latin1');
  const objects = new Map<string, string>();
  for (const [, id, body] of raw.matchAll(/(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) objects.set(id!, body!);
  const stream = (body: string): string => {
    const start = body.indexOf('stream\n') + 7;
    const data = Buffer.from(body.slice(start, body.lastIndexOf('\nendstream')), 'latin1');
    return body.includes('/FlateDecode') ? inflateSync(data).toString('latin1') : data.toString('latin1');
  };
  const pages = [...objects.values()].filter((body) => /\/Type \/Page\b/.test(body));
  const tables = new Map<string, string[]>();
  const pieces: string[] = [];
  let smallest = Number.POSITIVE_INFINITY;
  for (const page of pages) {
    const resources = objects.get(/\/Resources (\d+) 0 R/.exec(page)?.[1] ?? '') ?? page;
    for (const [, name, font] of resources.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const table = /\/ToUnicode (\d+) 0 R/.exec(objects.get(font!) ?? '')?.[1];
      if (table !== undefined) tables.set(name!, unicodeTable(stream(objects.get(table)!)));
    }
    const content = stream(objects.get(/\/Contents (\d+) 0 R/.exec(page)![1]!)!);
    smallest = Math.min(smallest, smallestLetters(content));
    let font: string[] = [];
    for (const [, name, shown] of content.matchAll(/\/(F\d+) [\d.]+ Tf|\[((?:<[\da-f]+>|[\s\d.-])+)\] TJ/g)) {
      if (name !== undefined) font = tables.get(name) ?? [];
      else pieces.push(decoded(shown!, font));
    }
  }
  const tags = [...raw.matchAll(/\/S \/(\w+)/g)].map(([, tag]) => tag!);
  return { pages: pages.length, text: pieces.join(' '), smallest, tags };
}

/** Size of the smallest letters that a page paints: the size of the font under every scale around it [pt]. */
function smallestLetters(content: string): number {
  let scale = 1;
  let smallest = Number.POSITIVE_INFINITY;
  const outer: number[] = [];
  for (const [operation, across, size] of content.matchAll(
    /^q$|^Q$|^(-?[\d.]+) -?[\d.]+ -?[\d.]+ -?[\d.]+ -?[\d.]+ -?[\d.]+ cm$|\/F\d+ ([\d.]+) Tf/gm,
  )) {
    if (operation === 'q') outer.push(scale);
    else if (operation === 'Q') scale = outer.pop() ?? 1;
    else if (across !== undefined) scale *= Math.abs(Number(across));
    else smallest = Math.min(smallest, scale * Number(size));
  }
  return smallest;
}

function decoded(shown: string, font: readonly string[]): string {
  const codes = [...shown.matchAll(/<([\da-f]+)>/g)].map(([, hex]) => hex!).join('');
  return (codes.match(/.{4}/g) ?? []).map((code) => font[Number.parseInt(code, 16)] ?? '?').join('');
}

/** Characters by glyph code. */
function unicodeTable(cmap: string): string[] {
  const table: string[] = [];
  for (const [, from, list] of cmap.matchAll(/<([\da-f]{4})> <[\da-f]{4}> \[([^\]]*)\]/g)) {
    let code = Number.parseInt(from!, 16);
    for (const [, hex] of list!.matchAll(/<([\da-f ]*)>/g)) {
      table[code] = Buffer.from(hex!.replaceAll(' ', ''), 'hex').swap16().toString('utf16le');
      code += 1;
    }
  }
  return table;
}
