import { describe, expect, it } from 'vitest';
import { STATED_UNITS } from '../quantity/index.ts';
import { RESULT_NAMES, resultJsonSchema } from './index.ts';

/** What is looked at of a JSON Schema. */
interface Node {
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, Node>>;
  readonly type?: string | readonly string[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly anyOf?: readonly Node[];
  readonly items?: Node;
}

/** One key of a result: where it stands, and what may stand there. */
interface Key {
  readonly at: string;
  readonly name: string;
  readonly description: string | undefined;
  readonly types: readonly string[];
  /** Whether its values are named one by one. */
  readonly listed: boolean;
}

/** All keys of a schema, those of its named parts under their names. */
function keysOf(schema: Node, name: string): readonly Key[] {
  const parts = schema.$defs ?? {};
  const resolved = (node: Node): Node =>
    node.$ref === undefined ? node : { ...parts[node.$ref.split('/').at(-1) ?? ''], ...node };
  const found: Key[] = [];
  const look = (node: Node, at: string): void => {
    for (const [key, value] of Object.entries(node.properties ?? {})) {
      const own = resolved(value);
      const kinds = [own, ...(own.anyOf ?? [])]
        .map(resolved)
        .flatMap((each) => [each, ...(each.items === undefined ? [] : [resolved(each.items)])]);
      found.push({
        at: `${at}.${key}`,
        name: key,
        description: kinds.map(({ description }) => description).find((text) => text !== undefined),
        types: kinds.flatMap(({ type = [] }) => type),
        listed: kinds.some((each) => each.enum !== undefined || each.const !== undefined),
      });
      look(value.$ref === undefined ? value : {}, `${at}.${key}`);
    }
    for (const each of [...(node.anyOf ?? []), ...(node.items === undefined ? [] : [node.items])])
      if (each.$ref === undefined) look(each, at);
  };
  look(schema, name);
  for (const [part, node] of Object.entries(parts)) look(node, part);
  return found;
}

/** Ends of keys that carry a unit: `_mm`, `_mm_per_min`, and money or chances by some length or time. */
const UNIT_ENDS = [...STATED_UNITS.map((unit) => unit.replace('/', '_per_').replace('%', 'percent')), 'C'];

function carriesUnit({ name, description = '' }: Key): boolean {
  return (
    UNIT_ENDS.some((unit) => name.endsWith(`_${unit}`)) ||
    /_per_[a-z0-9]+$/u.test(name) ||
    /\[[^\]]+\]|currency|unit of the key|the unit beside it|`unit`|\b(?:share|chance|0 to 1)\b/iu.test(
      description,
    )
  );
}

describe.each(RESULT_NAMES)('the schema of %s', (name) => {
  const keys = keysOf(resultJsonSchema(name) as Node, name);

  it('says of every number, text and yes or no what it is; records and lists of names say it by their members', () => {
    const told = keys.filter(
      ({ types, listed }) =>
        !listed && types.some((type) => ['number', 'integer', 'string', 'boolean'].includes(type)),
    );
    expect(told.length).toBeGreaterThan(5);
    expect(told.filter(({ description }) => description === undefined).map(({ at }) => at)).toEqual([]);
  });

  it('carries the unit of every number in its key, or says beside it that it has none', () => {
    const numbers = keys.filter(({ types }) => types.includes('number'));
    expect(numbers.length).toBeGreaterThan(2);
    expect(
      numbers.filter((key) => !carriesUnit(key)).map(({ at, description }) => `${at}: ${description}`),
    ).toEqual([]);
  });
});
