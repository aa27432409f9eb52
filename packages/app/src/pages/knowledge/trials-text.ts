import { documentTree } from '@furrow/engine';
import { type Document, isMap, isSeq } from 'yaml';

/** One entry of a trials file as it is written: amounts as people type them. */
export interface WrittenEntry {
  readonly id: string;
  readonly [field: string]: unknown;
}

/** Why something was changed, and when. */
export interface Change {
  /** Day [ISO date]. */
  readonly date: string;
  readonly reason: string;
}

/** A trials file of a shop that has tried nothing yet. */
export function newTrials(shop: string): string {
  return `furrow_trials: 1\nshop: ${JSON.stringify(shop)}\nentries: []\n`;
}

/** The entries of a trials file as they are written; none where it cannot be read. */
export function writtenEntries(text: string): readonly WrittenEntry[] {
  const tree = documentTree(text);
  const entries: unknown = tree.ok ? tree.value.document.toJS()?.entries : undefined;
  return Array.isArray(entries) ? (entries as WrittenEntry[]) : [];
}

/** A name for a new entry that no entry of the file has: t-01, t-02 for trials, j-01 for jobs. */
export function freeId(text: string, kind: 'trial' | 'job'): string {
  const known = new Set(writtenEntries(text).map(({ id }) => id));
  const letter = kind === 'trial' ? 't' : 'j';
  for (let number = 1; ; number += 1) {
    const id = `${letter}-${String(number).padStart(2, '0')}`;
    if (!known.has(id)) return id;
  }
}

/** The text with an entry more. */
export function withEntry(text: string, entry: WrittenEntry): string {
  return edited(text, (document) => {
    if (isSeq(document.get('entries'))) document.addIn(['entries'], entryNode(document, entry));
    else document.set('entries', document.createNode([entry]));
  });
}

/** The text with an entry corrected: what it says now, and beside it that it was changed and why. */
export function withCorrected(text: string, entry: WrittenEntry, change: Change): string {
  return edited(text, (document) => {
    const at = placeOf(text, entry.id);
    const before = writtenEntries(text)[at];
    if (before === undefined) return;
    const corrected = [...(Array.isArray(before['corrected']) ? before['corrected'] : []), change];
    // what the form does not know of the entry stays
    document.setIn(['entries', at], entryNode(document, { ...before, ...entry, corrected }));
  });
}

/** The text with an entry taken out: it is kept and no longer counted. */
export function withTakenOut(text: string, id: string, change: Change): string {
  return edited(text, (document) =>
    document.setIn(['entries', placeOf(text, id), 'taken_out'], document.createNode(change, { flow: true })),
  );
}

/** The text with an entry counted again that was taken out; that it was out stays among its corrections. */
export function withPutBack(text: string, id: string, change: Change): string {
  return edited(text, (document) => {
    const at = placeOf(text, id);
    const before = writtenEntries(text)[at];
    if (before === undefined) return;
    const { taken_out: _out, ...entry } = before;
    const corrected = [...(Array.isArray(before['corrected']) ? before['corrected'] : []), change];
    document.setIn(['entries', at], entryNode(document, { ...entry, id, corrected }));
  });
}

/** Entries of another text that this one does not have, by name. */
export function newEntries(text: string, other: string): readonly WrittenEntry[] {
  const known = new Set(writtenEntries(text).map(({ id }) => id));
  return writtenEntries(other).filter(({ id }) => !known.has(id));
}

function placeOf(text: string, id: string): number {
  return writtenEntries(text).findIndex((entry) => entry.id === id);
}

/** Changes a file and leaves what people wrote around it as it was. */
function edited(text: string, change: (document: Document) => void): string {
  const tree = documentTree(text);
  if (!tree.ok || tree.value.mistakes.length > 0) return text;
  const { document } = tree.value;
  change(document);
  return document.toString({ lineWidth: 0 });
}

/** An entry as it is written into the file: one line for each station, change and electrode. */
function entryNode(document: Document, entry: WrittenEntry): unknown {
  const node = document.createNode(entry);
  if (!isMap(node)) return node;
  for (const path of ['electrode', 'taken_out']) {
    const inner = node.get(path);
    if (isMap(inner)) inner.flow = true;
  }
  const passes = node.get('passes');
  for (const pass of isSeq(passes) ? passes.items : []) {
    const stations = isMap(pass) ? pass.get('stations') : undefined;
    for (const station of isSeq(stations) ? stations.items : []) if (isMap(station)) station.flow = true;
  }
  return node;
}
