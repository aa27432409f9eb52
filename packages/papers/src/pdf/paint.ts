import type { Typefaces } from './typefaces.ts';

/** What blocks are laid out and painted with. */
export interface Paint {
  readonly pdf: PDFKit.PDFDocument;
  readonly faces: Typefaces;
  /** Factor on all sizes, by which a page is made to fit [-]. */
  readonly scale: number;
}

/** Element of the PDF's structure, by which a screen reader walks the page. */
export type StructureElement = PDFKit.PDFStructureElement;

/** Something laid out: its height is known before it is painted. */
export interface Box {
  /** Height [pt]. */
  readonly height: number;
  /** Stands at the foot of a page only with the beginning of what follows. */
  readonly keepsWithNext?: boolean;
  /** Begins a page only with the end of what stands before it. */
  readonly keepsWithBefore?: boolean;
  /** Whether it heads what follows, and stands close to it. */
  readonly heads?: boolean;
  /** Whether it begins a new page. */
  readonly startsPage?: boolean;
  /** Least room that its beginning takes, where it can be cut; its height if left out [pt]. */
  readonly least?: number;
  /** Cuts it in two, the first of which fits into the room; undefined where it cannot be cut so. */
  cut?(room: number): { readonly first: Box; readonly rest: Box } | undefined;
  /** Paints with the top left corner given and hangs what it paints into the structure. */
  paint(x: number, y: number, parent: StructureElement): void;
}
