import type { DocumentPath } from '@furrow/engine';
import {
  type Document,
  isMap,
  isNode,
  isScalar,
  isSeq,
  type Node,
  Pair,
  Scalar,
  YAMLMap,
  YAMLSeq,
} from 'yaml';
import type { Edit } from './edit.ts';
import type { FieldList } from './field-list.ts';
import { orderedIndex } from './ordered-index.ts';
import { patternOf } from './path.ts';
import { keyText, pairOf } from './text-file.ts';

/** Makes one change in the tree of a file; throws where the path runs through something that is no group. */
export function applyEdit(document: Document, edit: Edit, fields: FieldList): void {
  if (edit.do === 'remove') removeAt(document, edit.path, fields);
  else if (edit.do === 'set') setAt(document, edit.path, edit.value, fields);
  else appendAt(document, edit.path, edit.entry, fields);
}

function appendAt(
  document: Document,
  path: DocumentPath,
  content: Readonly<Record<string, unknown>>,
  fields: FieldList,
): void {
  const list = groupAt(document, path, fields, () => new YAMLSeq());
  if (!isSeq(list)) throw new TypeError('not a list');
  const entry = document.createNode(content);
  const before = list.items.at(-1);
  if (isMap(entry) && isMap(before)) entry.flow = before.flow ?? false;
  list.items.push(entry);
}

function setAt(document: Document, path: DocumentPath, value: string | number, fields: FieldList): void {
  const parent = groupAt(document, path.slice(0, -1), fields, () => new YAMLMap());
  if (!isMap(parent)) throw new TypeError('not a group');
  const name = String(path.at(-1));
  const pair = pairOf(parent, name, fields.at(patternOf(path)));
  const scalar = new Scalar(value);
  if (pair === undefined) {
    insert(parent, path, new Pair(new Scalar(name), scalar), fields);
    return;
  }
  if (isNode(pair.value)) {
    const { comment, commentBefore, spaceBefore } = pair.value;
    Object.assign(scalar, { comment, commentBefore, spaceBefore });
  }
  // a key with a unit, `thickness_mm`, gives way to the plain one: the amount brings its own
  if (isScalar(pair.key)) pair.key.value = name;
  pair.value = scalar;
}

/** The group or list at a path; what is missing on the way is made. */
function groupAt(
  document: Document,
  path: DocumentPath,
  fields: FieldList,
  make: () => YAMLMap | YAMLSeq,
): unknown {
  document.contents ??= (path.length === 0 ? make() : new YAMLMap()) as never;
  let node: unknown = document.contents;
  path.forEach((part, index) => {
    if (isSeq(node) && typeof part === 'number') {
      node = node.items[part];
      return;
    }
    // a number is a place in a list: an entry that is not there is appended, never set
    if (!isMap(node) || typeof part === 'number') throw new TypeError('not a group');
    const pair = node.items.find((item) => keyText(item) === part);
    if (pair !== undefined && !isEmpty(pair.value)) {
      node = pair.value;
      return;
    }
    const made = index === path.length - 1 ? make() : new YAMLMap();
    if (pair === undefined) insert(node, path.slice(0, index + 1), new Pair(new Scalar(part), made), fields);
    else pair.value = made;
    node = made;
  });
  return node;
}

function isEmpty(value: unknown): boolean {
  return value === null || (isScalar(value) && value.value === null);
}

function insert(parent: YAMLMap, path: DocumentPath, pair: Pair<Scalar, Node>, fields: FieldList): void {
  const above = patternOf(path.slice(0, -1));
  const keys = parent.items.map(keyText);
  const at = orderedIndex(keys, fields.namesIn(above), keyText(pair));
  const spaced = parent.items.some((item) => isNode(item.key) && item.key.spaceBefore === true);
  if (path.length === 1 && spaced && at > 0 && !isScalar(pair.value)) pair.key.spaceBefore = true;
  const first = parent.items[0]?.key;
  if (at === 0 && path.length > 1 && parent.commentBefore && isNode(first)) {
    // the comment above the first field is read as the group's: it stays with its field
    first.commentBefore = parent.commentBefore;
    parent.commentBefore = null;
  }
  parent.items.splice(at, 0, pair);
}

function removeAt(document: Document, path: DocumentPath, fields: FieldList): void {
  const parentPath = path.slice(0, -1);
  const parent = parentPath.length === 0 ? document.contents : document.getIn(parentPath, true);
  const last = path.at(-1);
  if (isSeq(parent) && typeof last === 'number') {
    keepComment(parent.items[last], parent.items[last + 1], parent);
    parent.items.splice(last, 1);
    return;
  }
  if (!isMap(parent)) return;
  const pair = pairOf(parent, String(last), fields.at(patternOf(path)));
  if (pair === undefined) return;
  const at = parent.items.indexOf(pair);
  keepComment(pair.key, parent.items[at + 1]?.key, parent);
  parent.items.splice(at, 1);
  if (parent.items.length === 0 && fields.canBeLeftOut(patternOf(parentPath)) && !parent.comment) {
    removeAt(document, parentPath, fields);
  }
}

/** Lines of comment above something that is taken out stay: above what follows, or at the end of the group. */
function keepComment(leaving: unknown, following: unknown, group: Node): void {
  if (!isNode(leaving) || !leaving.commentBefore) return;
  const target = isNode(following) ? following : undefined;
  if (target !== undefined) {
    target.commentBefore = [leaving.commentBefore, target.commentBefore].filter(Boolean).join('\n');
    target.spaceBefore ??= leaving.spaceBefore ?? false;
  } else {
    group.comment = [group.comment, leaving.commentBefore].filter(Boolean).join('\n');
  }
}
