import {
  type Document,
  isMap,
  isNode,
  isScalar,
  LineCounter,
  parseDocument,
  visit,
  type YAMLMap,
} from 'yaml';
import { shown } from './printable.ts';
import { notAName, type TextFault, textFault } from './text-shape.ts';

/** A file's text as a tree, its lines to find places by, and its mistakes of syntax. */
export interface DocumentTree {
  readonly document: Document.Parsed;
  readonly lines: LineCounter;
  readonly mistakes: readonly Mistake[];
}

/** A mistake of syntax: what is wrong, and its place in the text [characters from its start]. */
export interface Mistake {
  readonly message: string;
  readonly pos: readonly [number, number];
  readonly code?: string;
}

/** The tree of a text, or where and why none is built. */
export type TreeOutcome =
  | { readonly ok: true; readonly value: DocumentTree }
  | { readonly ok: false; readonly fault: TextFault };

/**
 * Builds the tree of a text, YAML or JSON; every text that a person hands in is parsed by this and nothing else.
 *
 * What could hang or end the program is refused on the way in: more than 200 000 characters, 10 000 lines, 20 levels or
 * 50 references, and anything but plain text as the name of a field. Work grows with the length of the text.
 *
 * @param text - the file's content [text], any
 * @returns the tree with its mistakes, or the fault with its place [record]
 * @source none: bookkeeping
 * @example
 * documentTree('{{}}').ok // => false
 */
export function documentTree(text: string): TreeOutcome {
  const fault = textFault(text);
  if (fault !== undefined) return { ok: false, fault };
  const lines = new LineCounter();
  const document = parseDocument(text, {
    lineCounter: lines,
    logLevel: 'error',
    // With them, the parser counts lines from the start for each mistake.
    prettyErrors: false,
    // Looked for below: the parser compares each name with each other one.
    uniqueKeys: false,
  });
  const odd = oddName(document, text);
  if (odd !== undefined) return { ok: false, fault: odd };
  const mistakes = [...document.errors, ...doubledNames(document)];
  return { ok: true, value: { document, lines, mistakes } };
}

/**
 * The text that a file has in a field at its top.
 *
 * @param text - the file's content [text], mistakes included
 * @param name - of the field [text], any
 * @returns what stands there; undefined where nothing or no single value does [text]
 * @source none: bookkeeping
 * @example
 * topField('title: Tank seam\nseam: {', 'title') // => "Tank seam"
 */
export function topField(text: string, name: string): string | undefined {
  const tree = documentTree(text);
  if (!tree.ok) return undefined;
  const { contents } = tree.value.document;
  const pair = isMap(contents)
    ? contents.items.find(({ key }) => isScalar(key) && key.value === name)
    : undefined;
  const value = isScalar(pair?.value) ? pair.value.value : undefined;
  return typeof value === 'string' || typeof value === 'number' ? String(value) : undefined;
}

/** A name of a field that is no plain text after all: broken texts are put right by the parser in its own ways. */
function oddName(document: Document, text: string): TextFault | undefined {
  let fault: TextFault | undefined;
  visit(document, {
    Pair(_key, { key }) {
      if (key === null || isScalar(key)) return undefined;
      fault = notAName(text, (isNode(key) && key.range?.[0]) || 0);
      return visit.BREAK;
    },
  });
  return fault;
}

/** Names that stand twice in one group, the later one each. */
function doubledNames(document: Document): Mistake[] {
  const mistakes: Mistake[] = [];
  visit(document, {
    Map(_key, map: YAMLMap) {
      const seen = new Set<string>();
      for (const { key } of map.items) {
        if (!isScalar(key)) continue;
        const name = String(key.value);
        if (seen.has(name)) {
          const at = key.range?.[0] ?? 0;
          mistakes.push({ message: `“${shown(name)}” stands twice in one group; keep one.`, pos: [at, at] });
        }
        seen.add(name);
      }
    },
  });
  return mistakes;
}
