import { pathText } from '@furrow/engine';
import type { Edit } from './edit.ts';
import { editJson, isJsonText } from './edit-json.ts';
import { applyEdit } from './edit-tree.ts';
import { spliceScalar } from './splice-scalar.ts';
import { type TextFile, textFile } from './text-file.ts';

/** The changed file, or why the change cannot be made. */
export type Edited =
  | { readonly ok: true; readonly file: TextFile }
  | { readonly ok: false; readonly why: string };

/**
 * Changes a file and leaves the rest of it as it was written. A value that stands in the file is replaced in
 * its place, letter for letter; other changes go through the tree, which keeps comments and order.
 */
export function editFile(file: TextFile, edits: readonly Edit[]): Edited {
  if (file.broken) {
    return { ok: false, why: 'The text has a mistake that must be put right in the text view first.' };
  }
  let current = edits.some(({ do: what }) => what !== 'remove') ? withVersion(file) : file;
  for (const edit of edits) {
    const next = editOnce(current, edit);
    if (!next.ok) return next;
    current = next.file;
  }
  return { ok: true, file: current };
}

/** The file with the version that it must state: the form has no field for it, so whoever fills in the form gets it written. */
function withVersion(file: TextFile): TextFile {
  const { version } = file.fields;
  // what stands before a marker of YAML would be a document of its own
  if (isJsonText(file.text) || file.document.has(version) || /^(?:---|%)/mu.test(file.text)) return file;
  return textFile(`${version}: 1\n${file.text}`, file.fields);
}

function editOnce(file: TextFile, edit: Edit): Edited {
  const spliced = edit.do === 'set' ? spliceScalar(file, edit.path, edit.value) : undefined;
  if (spliced !== undefined) return { ok: true, file: spliced };
  if (isJsonText(file.text))
    return { ok: true, file: textFile(editJson(file.text, edit, file.fields), file.fields) };
  const refused = {
    ok: false,
    why: `${pathText(edit.path)} is written in a way the form cannot change: change it in the text view.`,
  } as const;
  try {
    // a tree of its own: the one that belongs to the file stays as it is
    const { document } = textFile(file.text, file.fields);
    applyEdit(document, edit, file.fields);
    const next = textFile(document.toString({ lineWidth: 0 }), file.fields);
    return !next.broken ? { ok: true, file: next } : refused;
  } catch {
    // the tree refuses paths that run through an alias or through something that is no group
    return refused;
  }
}
