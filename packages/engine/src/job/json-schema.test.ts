import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { JsonSchema } from '../document/index.ts';
import { jobJsonSchema } from './json-schema.ts';

const EXAMPLES = new URL('../../../../examples/', import.meta.url);
const FILES = readdirSync(EXAMPLES).filter((name) => name.endsWith('.yaml') && !name.endsWith('-kit.yaml'));

type Properties = Record<string, JsonSchema>;

/** What a document does that the schema does not allow: unknown keys, missing keys, wrong types and choices. */
function offences(schema: JsonSchema, value: unknown, path = ''): string[] {
  if ('const' in schema && schema['const'] !== value) return [`${path}: not ${String(schema['const'])}`];
  if (Array.isArray(schema['enum']) && !schema['enum'].includes(value)) return [`${path}: not a choice`];
  switch (schema['type']) {
    case 'object':
      return typeof value === 'object' && value !== null && !Array.isArray(value)
        ? objectOffences(schema, value as Record<string, unknown>, path)
        : [`${path}: no group`];
    case 'array':
      return Array.isArray(value)
        ? value.flatMap((item, index) => offences(schema['items'] as JsonSchema, item, `${path}[${index}]`))
        : [`${path}: no list`];
    case 'integer':
      return Number.isInteger(value) ? [] : [`${path}: no whole number`];
    default:
      return [undefined, typeof value].includes(schema['type'] as 'string')
        ? []
        : [`${path}: no ${schema['type']}`];
  }
}

function objectOffences(schema: JsonSchema, value: Record<string, unknown>, path: string): string[] {
  const properties = schema['properties'] as Properties;
  const patterns = Object.entries((schema['patternProperties'] ?? {}) as Properties);
  const required = (schema['required'] ?? []) as string[];
  const either = (schema['allOf'] ?? []) as { anyOf: { required: string[] }[] }[];
  const found = required.filter((key) => !(key in value)).map((key) => `${path}.${key}: missing`);
  for (const { anyOf } of either) {
    if (!anyOf.some((one) => one.required.every((key) => key in value)))
      found.push(`${path}: none of ${JSON.stringify(anyOf)}`);
  }
  for (const [key, inner] of Object.entries(value)) {
    const own = properties[key] ?? patterns.find(([pattern]) => new RegExp(pattern, 'u').test(key))?.[1];
    if (own === undefined) {
      if (schema['additionalProperties'] === false) found.push(`${path}.${key}: unknown`);
    } else found.push(...offences(own, inner, `${path}.${key}`));
  }
  return found;
}

describe('the JSON Schema of a job', () => {
  const schema = jobJsonSchema();

  it.each(FILES)('allows %s', (name) => {
    expect(offences(schema, parse(readFileSync(new URL(name, EXAMPLES), 'utf8')))).toEqual([]);
  });

  const job = () => parse(readFileSync(new URL(FILES[0]!, EXAMPLES), 'utf8'));

  it.each<[string, (value: ReturnType<typeof job>) => void]>([
    ['an unknown field', (value) => Object.assign(value.plate, { thicknes: '1 mm' })],
    ['a missing field', (value) => delete value.title],
    ['a missing amount', (value) => delete value.plate.thickness],
    ['another version', (value) => Object.assign(value, { furrow: 2 })],
    ['another choice', (value) => Object.assign(value.groove, { shape: 'v' })],
    ['a bare number', (value) => Object.assign(value.plate, { thickness: 12 })],
    ['an amount under a key with unit', (value) => Object.assign(value.plate, { thickness_mm: '12 mm' })],
    ['a list for a group', (value) => Object.assign(value, { plate: [] })],
  ])('does not allow %s', (_what, spoil) => {
    const spoilt = job();
    spoil(spoilt);
    expect(offences(schema, spoilt)).not.toEqual([]);
  });

  it('allows an amount under a key with its unit', () => {
    const keyed = job();
    delete keyed.plate.thickness;
    keyed.plate.thickness_mm = 32;
    expect(offences(schema, keyed)).toEqual([]);
  });

  it('asks for no field that has a default', () => {
    const text = JSON.stringify(schema);
    expect(text).not.toMatch(/"required":\[[^\]]*"(purpose|assurance|rates|locks|plan)"/);
    expect((schema['properties'] as Properties)['groove']?.['required']).toEqual(['depth', 'width']);
  });
});
