import { expect, it } from 'vitest';
import { z } from 'zod';
import * as contract from './index.ts';

/** What is looked at of a JSON Schema. */
interface Node {
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, Node>>;
  readonly description?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly additionalProperties?: Node | boolean;
  readonly anyOf?: readonly Node[];
  readonly oneOf?: readonly Node[];
  readonly items?: Node;
}

/** Keys of a schema, by where they stand, that neither say what they are nor refer to a part that does. */
function silentKeys(node: Node, at: string): readonly string[] {
  const own = Object.entries(node.properties ?? {}).flatMap(([key, value]) => {
    const says = value.description ?? value.$ref ?? value.enum ?? value.const;
    return [...(says === undefined ? [`${at}.${key}`] : []), ...silentKeys(value, `${at}.${key}`)];
  });
  const more = node.additionalProperties;
  const inner = [
    ...(node.anyOf ?? []),
    ...(node.oneOf ?? []),
    ...(node.items === undefined ? [] : [node.items]),
    ...(typeof more === 'object' ? [more] : []),
  ];
  const parts = Object.entries(node.$defs ?? {}).flatMap(([name, part]) => silentKeys(part, name));
  return [...own, ...inner.flatMap((each) => silentKeys(each, at)), ...parts];
}

const schemas = Object.entries(contract).flatMap(([name, value]) =>
  value instanceof z.ZodType ? [[name, value] as const] : [],
);

it.each(schemas)('%s says of each of its keys what it is', (name, schema) => {
  const node = z.toJSONSchema(schema, { io: 'output', unrepresentable: 'any' }) as Node;
  expect(silentKeys(node, name)).toEqual([]);
});

it('is looked at, and a key that says nothing is found wherever it stands', () => {
  expect(schemas.length).toBeGreaterThan(30);
  const inner = z.object({ said: z.string().describe('Said.'), bare: z.string() });
  const schema = z.object({
    list: z.array(inner).describe('A list.'),
    either: z.union([inner, z.null()]).describe('One or none.'),
  });
  expect(silentKeys(z.toJSONSchema(schema) as Node, 's')).toEqual(['s.list.bare', 's.either.bare']);
});
