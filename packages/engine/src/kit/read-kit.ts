import {
  type DefaultUsed,
  DOCUMENT_TEXT_MOST,
  type DocumentKind,
  documentCodes,
  readDocument,
} from '../document/index.ts';
import type { Outcome } from '../issue/index.ts';
import type { Reader } from '../quantity/index.ts';
import { contradictions } from './contradictions.ts';
import { type Kit, kitSchema } from './kit-schema.ts';

/** Greatest size of a kit file [characters]. */
export const KIT_TEXT_MOST = DOCUMENT_TEXT_MOST;

const KIT: DocumentKind<typeof kitSchema> = {
  name: 'kit',
  versionField: 'furrow_kit',
  schema: kitSchema,
  codes: documentCodes('KIT'),
};

/** A kit as read: in SI, with the defaults that stood in and the hash of its content. */
export interface ReadKit {
  readonly kit: Kit;
  readonly defaultsUsed: readonly DefaultUsed[];
  /** SHA-256 of the content, defaults included, in hex; layout and comments do not count. */
  readonly revision: string;
}

/**
 * Reads a kit file, YAML or JSON, into a kit in SI, or tells what is wrong with it and where.
 *
 * Each default used is listed; nothing is filled in silently. Sizes, ratings, pressures and lengths are checked as
 * the supply will use them, so that a kit that is read can be computed with.
 *
 * @param text - the file's content [text], at most 200 000 characters
 * @param reader - whose units mistakes are told in [text], inch or metric; both where it is not known who reads
 * @returns the kit, the defaults used and the revision, or the issues [record]
 * @source none: bookkeeping
 * @example
 * readKit('furrow_kit: 1').ok // => false
 */
export function readKit(text: string, reader: Reader = 'both'): Outcome<ReadKit> {
  const outcome = readDocument(text, KIT, { wholeOf: (kit) => kit, contradictions }, reader);
  if (!outcome.ok) return outcome;
  const { whole: kit, defaultsUsed, revision } = outcome.value;
  return { ok: true, value: { kit, defaultsUsed, revision } };
}
