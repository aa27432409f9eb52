import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { type DocReading, readDocComments } from './doc-comments.ts';
import { ROOT } from './install.mjs';
import { runWorkedExample } from './worked-example.ts';

const OPTIONS: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2023,
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  lib: ['lib.es2023.d.ts'],
  types: [],
  strict: true,
  exactOptionalPropertyTypes: true,
  allowImportingTsExtensions: true,
  noEmit: true,
  skipLibCheck: true,
};

/** What worked numbers may rest on: the pocket and the kit of the demo as read, and the answer to them. */
async function demo(): Promise<Record<string, unknown>> {
  const { answerJob, readJob, readKit } = await import('@furrow/engine');
  const text = (name: string): string => readFileSync(join(ROOT, `examples/${name}.yaml`), 'utf8');
  const job = readJob(text('defect-pocket'));
  const kit = readKit(text('yard-kit'));
  if (!job.ok || !kit.ok) throw new Error('an example cannot be read');
  const answer = answerJob({ job: job.value, version: '0', kit: kit.value });
  return { demoJob: job.value, demoKit: kit.value, demoAnswer: answer };
}

describe('the engine', () => {
  const source = join(ROOT, 'packages/engine/src');
  const rooms = readdirSync(source, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(join(source, entry.name, 'index.ts')))
    .map((entry) => entry.name)
    .sort();
  const index = (room: string): string => join(source, room, 'index.ts');
  const readings = new Map<string, DocReading>();
  const scope: Record<string, unknown> = {};
  const unloaded = new Map<string, unknown>();

  beforeAll(async () => {
    const program = ts.createProgram(rooms.map(index), OPTIONS);
    const seen = new Set<ts.Node>();
    for (const room of rooms) {
      readings.set(room, readDocComments(program, index(room), seen));
      try {
        Object.assign(scope, await import(/* @vite-ignore */ pathToFileURL(index(room)).href));
      } catch (error) {
        unloaded.set(room, error);
      }
    }
    Object.assign(scope, { z }, await demo());
  }, 60_000);

  test('no worked number says only that something is a function', () => {
    const typed = [...readings.values()].flatMap(({ examples }) =>
      examples.filter(({ example }) => example.expression.startsWith('typeof ')).map(({ name }) => name),
    );
    expect(typed).toEqual([]);
  });

  test.each(rooms)('every public comment of %s is complete', (room) => {
    expect(readings.get(room)!.omissions).toEqual([]);
  });

  test.each(rooms)('every worked number of %s holds', async (room) => {
    expect(unloaded.get(room), 'the room does not load').toBeUndefined();
    const wrong: string[] = [];
    for (const { name, example } of readings.get(room)!.examples) {
      const told = await runWorkedExample(example, scope);
      if (told !== undefined) wrong.push(`${name}: ${told}`);
    }
    expect(wrong).toEqual([]);
  });
});

describe('the reader of comments', () => {
  const COMPLETE = `
/**
 * Area of a rectangle.
 *
 * @param width - width [m], > 0
 * @param height - height, measured
 *   upwards [m], > 0
 * @returns area [m2]
 * @source geometry
 * @example
 * const side = 2;
 * area(side, 3) // => 6
 * area(1, 0.3333) // => 0.33...
 */
export function area(width: number, height: number): number { return width * height; }
/** A box. */
export interface Box {
  /** Height [m]. */
  readonly height: number;
  readonly name: string;
  readonly sides: 4 | 6;
}
/** Steps tried at most [-]. */
export const STEPS: number = 4;
`;
  const folder = mkdtempSync(join(tmpdir(), 'furrow-comments-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  function read(text: string): DocReading {
    const file = join(mkdtempSync(join(folder, 'case-')), 'index.ts');
    writeFileSync(file, text);
    return readDocComments(ts.createProgram([file], OPTIONS), file);
  }

  /** The omissions after one piece of the complete text was replaced; the piece must be there. */
  function omissionsAfter(piece: string, by: string): readonly string[] {
    expect(COMPLETE).toContain(piece);
    return read(COMPLETE.replace(piece, by)).omissions;
  }

  test('has nothing against a complete comment, and finds its worked numbers', () => {
    const { omissions, examples } = read(COMPLETE);
    expect(omissions).toEqual([]);
    expect(examples.map(({ example }) => [example.expression, example.written])).toEqual([
      ['area(side, 3)', '6'],
      ['area(1, 0.3333)', '0.33...'],
    ]);
  });

  test.each([
    [' * Area of a rectangle.\n', '', 'area: no sentence that says what it answers'],
    ['rectangle.', 'rectangle', 'area: its first sentence does not end'],
    ['[m], > 0\n * @param h', '\n * @param h', 'area: no [unit] for the parameter width'],
    ['[m], > 0\n * @param h', '[m]\n * @param h', 'area: no range after the [unit] of the parameter width'],
    [' * @param width - width [m], > 0\n', '', 'area: no @param for width'],
    [' * @returns', ' * @param depth - depth [m], > 0\n * @returns', 'area: @param depth is not a parameter'],
    [' * @returns area [m2]\n', '', 'area: no @returns'],
    ['[m2]', '', 'area: no [unit] in @returns'],
    [' * @source geometry\n', '', 'area: no @source'],
    [' geometry', '', 'area: no @source'],
    ['/** A box. */', '', 'Box: no doc comment'],
    ['/** Height [m]. */', '/** Height. */', 'Box.height: no [unit] in its comment'],
    ['readonly name: string', 'readonly name: readonly number[]', 'Box.name: no [unit] in its comment'],
    ['readonly name: string', 'readonly name?: Float64Array', 'Box.name: no [unit] in its comment'],
    ['name: string', 'name: Readonly<Record<string, number>>', 'Box.name: no [unit] in its comment'],
    ['name: string', 'name: readonly { x: number }[]', 'Box.name.x: no [unit] in its comment'],
    ['tried at most [-]', 'tried at most', 'STEPS: no [unit] in its comment'],
    ['/** Steps tried at most [-]. */', '', 'STEPS: no doc comment'],
  ])('misses %j', (piece, by, told) => {
    expect(omissionsAfter(piece, by)).toContain(told);
  });

  test('misses a worked number', () => {
    const plain = COMPLETE.replaceAll('// =>', '//');
    expect(read(plain).omissions).toEqual(['area: no @example line with a worked value behind // =>']);
    expect(omissionsAfter('area(side, 3) //', 'const total = area(side, 3) //')[0]).toContain(
      'area: an @example cannot be read',
    );
  });

  test('reads arrow functions, destructured parameters and overloads as well', () => {
    const arrow = COMPLETE.replace(
      /export function.*\n/,
      'export const area = ({ width }: Box, height: number): number => width * height;\n',
    );
    expect(read(arrow).omissions).toEqual([]);
    const overloaded = COMPLETE.replace(
      'export function area',
      'export function area(width: number, height: number): number;\nexport function area',
    );
    expect(read(overloaded).omissions).toEqual([]);
    expect(
      read(
        COMPLETE.replace(' * @param width - width [m], > 0\n', '').replace(
          /export function area.*\n/,
          'export const area = ({ width }: Box): number => width;\n',
        ),
      ).omissions,
    ).toEqual([]);
  });

  test('runs worked numbers with the statements before them, and tells which one is wrong', async () => {
    const { examples } = read(COMPLETE);
    const area = (width: number, height: number): number => width * height;
    const runAll = (scope: Record<string, unknown>) =>
      Promise.all(examples.map(({ example }) => runWorkedExample(example, scope)));
    expect(await runAll({ area })).toEqual([undefined, undefined]);
    const told = await runAll({ area: () => 7 });
    expect(told[0]).toBe('area(side, 3): 6 is written, got 7');
    expect(await runWorkedExample(examples[0]!.example, {})).toContain('area is not defined');
  });

  test('reads an expression and a value over several lines', async () => {
    const { examples } = read(
      COMPLETE.replace('area(side, 3) // => 6', 'area(\n *   side,\n *   3,\n * ) // => [1,\n *   // 2]'),
    );
    expect(examples[0]!.example).toMatchObject({ written: '[1, 2]' });
    expect(await runWorkedExample(examples[0]!.example, { area: () => [1, 2] })).toBeUndefined();
  });
});
