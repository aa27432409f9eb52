import { type Document, isMap, isSeq } from 'yaml';
import { documentTree } from '../document/index.ts';

/** One entry of a trials file as it is written: amounts as people type them. */
export interface WrittenEntry {
  readonly id: string;
  readonly [field: string]: unknown;
}

/** Why something was changed, and when. */
export interface EntryChange {
  /** Day [ISO date]. */
  readonly date: string;
  readonly reason: string;
}

/**
 * A trials file of a shop that has tried nothing yet.
 *
 * @param shop - name of the shop [text], up to 40 characters
 * @returns the file [text]
 * @source none: bookkeeping
 * @example
 * newTrials('bay 2') // => "furrow_trials: 1\nshop: \"bay 2\"\nentries: []\n"
 */
export function newTrials(shop: string): string {
  return `furrow_trials: 1\nshop: ${JSON.stringify(shop)}\nentries: []\n`;
}

/**
 * The entries of a trials file as they are written.
 *
 * @param text - the file's content [text], any
 * @returns the entries; none where the text cannot be read [list]
 * @source none: bookkeeping
 * @example
 * writtenEntries('entries: [{ id: t-01 }]') // => [{"id":"t-01"}]
 */
export function writtenEntries(text: string): readonly WrittenEntry[] {
  const tree = documentTree(text);
  const entries: unknown = tree.ok ? tree.value.document.toJS()?.entries : undefined;
  return Array.isArray(entries) ? (entries as WrittenEntry[]) : [];
}

/**
 * A name for a new entry that no entry of the file has.
 *
 * @param text - the file's content [text], any
 * @param kind - what the entry is of [text], trial or job
 * @returns t-01, t-02 and so on for trials, j-01 for jobs [text]
 * @source none: bookkeeping
 * @example
 * freeId('entries: [{ id: j-01 }]', 'job') // => "j-02"
 */
export function freeId(text: string, kind: 'trial' | 'job'): string {
  const known = new Set(writtenEntries(text).map(({ id }) => id));
  const letter = kind === 'trial' ? 't' : 'j';
  for (let number = 1; ; number += 1) {
    const id = `${letter}-${String(number).padStart(2, '0')}`;
    if (!known.has(id)) return id;
  }
}

/**
 * A trials file with an entry more; what people wrote around it stays as it was.
 *
 * @param text - the file's content [text], as it is when it cannot be read
 * @param entry - the entry as it is written [record], with a name that no other has
 * @returns the file [text]
 * @source none: bookkeeping
 * @example
 * withEntry('furrow_trials: 1\nentries: []\n', { id: 't-01', kind: 'trial' }) // => "furrow_trials: 1\nentries: [ { id: t-01, kind: trial } ]\n"
 */
export function withEntry(text: string, entry: WrittenEntry): string {
  return edited(text, (document) => {
    if (isSeq(document.get('entries'))) document.addIn(['entries'], entryNode(document, entry));
    else document.set('entries', document.createNode([entry]));
  });
}

/**
 * A trials file with an entry corrected: what it says now, and beside it that it was changed and why.
 *
 * @param text - the file's content [text], as it is when it cannot be read
 * @param entry - the entry as it is now [record], of a name that the file has
 * @param change - when and why [record], any
 * @returns the file [text]
 * @source none: bookkeeping
 * @example
 * withCorrected('entries: [{ id: a }]', { id: 'a', kind: 'job' }, { date: '2026-01-02', reason: 'typed' }) // => "entries: [ { id: a, kind: job, corrected: [ { date: 2026-01-02, reason: typed } ] } ]\n"
 */
export function withCorrected(text: string, entry: WrittenEntry, change: EntryChange): string {
  return edited(text, (document) => {
    const at = placeOf(text, entry.id);
    const before = writtenEntries(text)[at];
    if (before === undefined) return;
    const corrected = [...(Array.isArray(before['corrected']) ? before['corrected'] : []), change];
    // what the form does not know of the entry stays
    document.setIn(['entries', at], entryNode(document, { ...before, ...entry, corrected }));
  });
}

/**
 * A trials file with an entry taken out: it is kept and no longer counted.
 *
 * @param text - the file's content [text], as it is when it cannot be read
 * @param id - name of the entry [text], one of the file's
 * @param change - when and why [record], any
 * @returns the file [text]
 * @source none: bookkeeping
 * @example
 * withTakenOut('entries: [{ id: a }]', 'a', { date: '2026-01-02', reason: 'hose off' }) // => "entries: [ { id: a, taken_out: { date: 2026-01-02, reason: hose off } } ]\n"
 */
export function withTakenOut(text: string, id: string, change: EntryChange): string {
  return edited(text, (document) =>
    document.setIn(['entries', placeOf(text, id), 'taken_out'], document.createNode(change, { flow: true })),
  );
}

/**
 * A trials file with an entry counted again that was taken out; that it was out stays among its corrections.
 *
 * @param text - the file's content [text], as it is when it cannot be read
 * @param id - name of the entry [text], one of the file's
 * @param change - when and why [record], any
 * @returns the file [text]
 * @source none: bookkeeping
 * @example
 * withPutBack('entries: [{ id: a, taken_out: { date: 2026-01-02, reason: hose off } }]', 'a', { date: '2026-01-03', reason: 'hose was on' }) // => "entries: [ { id: a, corrected: [ { date: 2026-01-03, reason: hose was on } ] } ]\n"
 */
export function withPutBack(text: string, id: string, change: EntryChange): string {
  return edited(text, (document) => {
    const at = placeOf(text, id);
    const before = writtenEntries(text)[at];
    if (before === undefined) return;
    const { taken_out: _out, ...entry } = before;
    const corrected = [...(Array.isArray(before['corrected']) ? before['corrected'] : []), change];
    document.setIn(['entries', at], entryNode(document, { ...entry, id, corrected }));
  });
}

/**
 * Entries of another trials file that this one does not have, by name.
 *
 * @param text - this file's content [text], any
 * @param other - the other file's content [text], any
 * @returns the entries [list]
 * @source none: bookkeeping
 * @example
 * newEntries('entries: [{ id: a }]', 'entries: [{ id: a }, { id: b }]') // => [{"id":"b"}]
 */
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
