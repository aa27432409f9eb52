import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { unpackWoff } from './unpack-woff.ts';

/** Weight of a text on paper. */
export type Weight = 'regular' | 'bold';

/** Stands for a character that none of the typefaces has. */
export const MISSING_SIGN = '□';

const require = createRequire(import.meta.url);

// drawn for legibility first; the last one has the scripts and signs that the others lack
const FILES: Readonly<Record<Weight, readonly string[]>> = {
  regular: [
    require.resolve(
      '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff',
    ),
    require.resolve(
      '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-400-normal.woff',
    ),
    require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'),
  ],
  bold: [
    require.resolve(
      '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff',
    ),
    require.resolve(
      '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-700-normal.woff',
    ),
    require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf'),
  ],
};

/** The typeface that papers are set in, as a file that a browser reads. */
export function paperFace(weight: Weight): Uint8Array {
  return readFileSync(FILES[weight][0]!);
}

const unpacked = new Map<string, Uint8Array>();

/** A typeface as pdfkit reads it quickly, unpacked once. */
function fontIn(file: string): Uint8Array {
  const known = unpacked.get(file) ?? unpackWoff(readFileSync(file));
  unpacked.set(file, known);
  return known;
}

/** The part of an embedded font that tells which characters it has; pdfkit's types leave it out. */
interface CoveringFont {
  hasGlyphForCodePoint(codePoint: number): boolean;
}

/** The typefaces of one PDF. */
export interface Typefaces {
  /** Name of the first typeface that has every character of the cluster. */
  faceOf(cluster: string, weight: Weight): string | undefined;
  /** Width of a text in one typeface [pt]. */
  widthOf(text: string, face: string, size: number): number;
}

/** Makes the typefaces known to a PDF; only what is used gets embedded. */
export function typefacesOf(pdf: PDFKit.PDFDocument): Typefaces {
  const names: Record<Weight, string[]> = { regular: [], bold: [] };
  const covering = new Map<string, CoveringFont>();
  for (const weight of ['regular', 'bold'] as const) {
    for (const [index, file] of FILES[weight].entries()) {
      const name = `${weight}-${index}`;
      pdf.registerFont(name, fontIn(file) as unknown as PDFKit.Mixins.PDFFontSource);
      names[weight].push(name);
    }
  }
  const fontOf = (name: string): CoveringFont => {
    const known = covering.get(name);
    if (known !== undefined) return known;
    pdf.font(name);
    const { font } = (pdf as unknown as { _font: { font: CoveringFont } })._font;
    covering.set(name, font);
    return font;
  };
  const clusters = new Map<string, string | undefined>();
  return {
    faceOf(cluster, weight) {
      const key = weight + cluster;
      if (!clusters.has(key)) {
        const points = [...cluster].map((sign) => sign.codePointAt(0) ?? 0);
        clusters.set(
          key,
          names[weight].find((name) => points.every((point) => fontOf(name).hasGlyphForCodePoint(point))),
        );
      }
      return clusters.get(key);
    },
    widthOf(text, face, size) {
      return pdf.font(face).fontSize(size).widthOfString(text);
    },
  };
}
