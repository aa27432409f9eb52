import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from './install.mjs';
import { handConversions } from './unit-arithmetic.ts';

/** Where units are converted; nowhere else. */
const ONE_ROOM = /^packages\/engine\/src\/quantity\//u;

/** Lines that only look like it, each with its reason. */
const ALLOWED: Readonly<Record<string, string>> = {
  'packages/engine/src/heat/cooling-time.ts: (4300 - 4.3 * t0) * 1e5': 'a constant of the formula',
  'packages/engine/src/heat/cooling-time.ts: ((4300 - 4.3 * t0) / (6700 - 5 * t0)) * 1e5':
    'a constant of the formula',
  'packages/engine/src/job/schema.ts: 60_000 * MM_PER_MIN': 'a bound, in the unit named beside it',
  'packages/engine/src/plan/ways.ts: 1.8 * last': 'no unit: a factor of the search',
  'packages/engine/src/supply/air/air-state.ts: 100_000 / (AIR_GAS_CONSTANT * 293.15)':
    'the reference pressure [Pa]',
  'packages/engine/src/survey/seam/check-reading.ts: 1 / 25.4': 'a slip of whoever writes, as a ratio',
  'packages/papers/src/blocks/supply-blocks.ts: 100 * loss.loss_W': 'a share of watts, in percent',
  'packages/papers/src/drawing/seam-strip-drawing.ts: 1.8 * size': 'no unit: letters of room',
};

describe('amounts are converted in one room', () => {
  it('and nowhere else', () => {
    const files = readdirSync(join(ROOT, 'packages'))
      .flatMap((name) =>
        readdirSync(join(ROOT, 'packages', name, 'src'), { recursive: true, encoding: 'utf8' }).map(
          (path) => `packages/${name}/src/${path.replaceAll('\\', '/')}`,
        ),
      )
      .filter(
        (path) => /\.tsx?$/u.test(path) && !/\.test(?:-\w+)?\.|\.test-support\.|\/testing\//u.test(path),
      )
      .filter((path) => !ONE_ROOM.test(path));
    expect(files.length).toBeGreaterThan(800);
    const found = files.flatMap((path) =>
      handConversions(path, readFileSync(join(ROOT, path), 'utf8')).map(({ text }) => `${path}: ${text}`),
    );
    expect(found.filter((line) => ALLOWED[line] === undefined)).toEqual([]);
    expect(Object.keys(ALLOWED).filter((line) => !found.includes(line))).toEqual([]);
  });

  it.each([
    ['length_mm / 1000', true],
    ['plan.floor_depth_mm.p50 / 1000', true],
    ['(1000 * report.at_mm!)', true],
    ['celsius + 273.15', true],
    ['metres / 0.0254', true],
    ['pass.travel_mm_per_min / 60_000', true],
    ['count / 1000', false],
    ['1000 * share', false],
    ["fromUnit(length_mm, 'mm')", false],
    ['length_mm * 2', false],
  ])('sees whether `%s` converts by hand', (expression, converts) => {
    expect(handConversions('one.ts', `export const value = ${expression};`).length > 0).toBe(converts);
  });
});
