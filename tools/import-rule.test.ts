import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from './install.mjs';

const PACKAGES = ['engine', 'contract', 'papers', 'store', 'server', 'cli', 'app'];
const BARE: Readonly<Record<string, string>> = {
  'packages/engine/src/index.ts': "export * from './plan/index.ts';",
  'packages/engine/src/issue/index.ts': 'export const issue = 1;',
  'packages/engine/src/quantity/index.ts': "export * from './parse.ts';",
  'packages/engine/src/quantity/parse.ts': "export { issue as parse } from '../issue/index.ts';",
  'packages/engine/src/heat/index.ts': "export { parse as heat } from '../quantity/index.ts';",
  'packages/engine/src/plan/index.ts': "export { heat as plan } from '../heat/index.ts';",
  'packages/contract/src/index.ts': "export { plan as contract } from '@furrow/engine';",
  'packages/papers/src/index.ts':
    "export { contract as paper } from '@furrow/contract'; export { page } from './html/index.ts';",
  'packages/papers/src/words/index.ts': "export * from './one.ts';",
  'packages/papers/src/words/one.ts': 'export const one = 1;',
  'packages/papers/src/blocks/index.ts': "export { one as block } from '../words/index.ts';",
  'packages/papers/src/html/index.ts': "export { block as page } from '../blocks/index.ts';",
  'packages/store/src/index.ts': "export { contract as store } from '@furrow/contract';",
  'packages/server/src/index.ts':
    "export { store as server } from '@furrow/store'; export { paper } from '@furrow/papers';",
  'packages/cli/src/index.ts': "export { server as cli } from '@furrow/server';",
  'packages/app/src/main.ts':
    "export { paper } from '@furrow/papers'; export type { plan } from '@furrow/engine';",
  'published/one.ts': "export { plan } from '@furrow/engine';",
  'e2e/one.ts': "export { server } from '@furrow/server'; import 'node:fs';",
};

const PROGRAM = join(ROOT, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'furrow-imports-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Lays the bare tree with some files replaced or added, and returns `rule: from -> to` of what is reported. */
function violations(changes: Readonly<Record<string, string>>): string[] {
  const root = mkdtempSync(join(folder, 'tree-'));
  for (const [path, text] of Object.entries({ ...BARE, ...changes })) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), `${text}\n`);
  }
  mkdirSync(join(root, 'node_modules/@furrow'), { recursive: true });
  for (const name of PACKAGES) {
    const exports = { '.': { 'furrow-source': './src/index.ts', default: './dist/index.js' } };
    writeFileSync(
      join(root, 'packages', name, 'package.json'),
      JSON.stringify({ name: `@furrow/${name}`, exports }),
    );
    symlinkSync(join('../../packages', name), join(root, 'node_modules/@furrow', name), 'dir');
  }
  writeFileSync(join(root, 'tsconfig.json'), '{}');
  const folders = readdirSync(root).filter((name) => ['packages', 'published', 'e2e'].includes(name));
  const rule = join(ROOT, 'tools/import-rule.cjs');
  const run = spawnSync(process.execPath, [PROGRAM, '--config', rule, '--output-type', 'json', ...folders], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  const report: { summary: { violations: { rule: { name: string }; from: string; to: string }[] } } =
    JSON.parse(run.stdout);
  return report.summary.violations.map(({ rule: broken, from, to }) => `${broken.name}: ${from} -> ${to}`);
}

test('the tree that keeps the order has nothing to report', () => {
  expect(violations({})).toEqual([]);
}, 30_000);

describe('each forbidden import is reported', () => {
  let found: string[];
  beforeAll(() => {
    found = violations({
      'packages/engine/src/quantity/up.ts': "export { plan } from '../plan/index.ts';",
      'packages/engine/src/heat/behind.ts': "export { parse } from '../quantity/parse.ts';",
      'packages/engine/src/heat/clock.ts': "import 'node:fs';",
      'packages/engine/src/survey/index.ts': "export { learn } from '../learn/index.ts';",
      'packages/engine/src/learn/index.ts': 'export const learn = 1;',
      'packages/engine/src/drawer/index.ts': 'export const drawer = 1;',
      'packages/engine/src/answer/index.ts': "export { drawer } from '../drawer/index.ts';",
      'packages/engine/src/answer/supply/up.ts': "export { job } from '../job/job.ts';",
      'packages/engine/src/answer/job/job.ts': 'export const job = 1;',
      'packages/engine/src/answer/cost/odds.ts': "export { odd } from '../odds/odd.ts';",
      'packages/engine/src/answer/odds/odd.ts': 'export const odd = 1;',
      'packages/engine/src/issue/one.ts': "export { two as one } from './two.ts';",
      'packages/engine/src/issue/two.ts': "export { one as two } from './one.ts';",
      'packages/engine/src/heat/gone.ts': "export { gone } from './nowhere.ts';",
      'packages/engine/src/heat/type.ts': "export type { plan } from '../plan/index.ts';",
      'packages/contract/src/up.ts': "export { server } from '@furrow/server';",
      'packages/app/src/stored.ts': "export { store } from '@furrow/store';",
      'packages/app/src/node.ts': "import 'node:path';",
      'packages/app/src/ui/up.ts': "export { row } from '../job/row.ts';",
      'packages/app/src/job/row.ts': 'export const row = 1;',
      'packages/app/src/shelf/thing.ts': 'export const thing = 1;',
      'packages/app/src/job/shelf.ts': "export { thing } from '../shelf/thing.ts';",
      'packages/app/src/pages/one/page.tsx': "export { two } from '../two/page.tsx';",
      'packages/app/src/pages/two/page.tsx': "export const two = 2; export { row } from '../../job/row.ts';",
      'packages/app/src/pages/two/table.ts': 'export const table = 1;',
      'packages/app/src/shell/app.ts': "export { table } from '../pages/two/table.ts';",
      'packages/papers/src/behind.ts': "export { parse } from '../../engine/src/quantity/index.ts';",
      'packages/papers/src/words/up.ts': "export { block } from '../blocks/index.ts';",
      'packages/papers/src/html/through.ts': "export { one } from '../words/one.ts';",
      'packages/papers/src/html/beside.ts': "export { text } from '../text/index.ts';",
      'packages/papers/src/text/index.ts': 'export const text = 1;',
      'packages/papers/src/drawer/index.ts': 'export const drawer = 1;',
      'packages/papers/src/html/odds.ts': "export { drawer } from '../drawer/index.ts';",
      'packages/store/src/database/up.ts': "export { job } from '../job/job.ts';",
      'packages/store/src/job/job.ts': 'export const job = 1;',
      'packages/store/src/shop-file/beside.ts': "export { job } from '../job/job.ts';",
      'packages/store/src/shop-file/odds.ts': "export { odd } from '../drawer/odd.ts';",
      'packages/store/src/drawer/odd.ts': 'export const odd = 1;',
      'packages/server/src/work/up.ts': "export { route } from '../routes/route.ts';",
      'packages/server/src/routes/route.ts': 'export const route = 1;',
      'packages/server/src/routes/odds.ts': "export { odd } from '../drawer/odd.ts';",
      'packages/server/src/drawer/odd.ts': 'export const odd = 1;',
      'packages/cli/src/outward.ts': "export { plan } from '../../../published/one.ts';",
      'published/behind.ts': "export { parse } from '../packages/engine/src/quantity/parse.ts';",
    });
  }, 30_000);

  test.each([
    'room-order-quantity: packages/engine/src/quantity/up.ts -> packages/engine/src/plan/index.ts',
    'room-order-heat: packages/engine/src/heat/type.ts -> packages/engine/src/plan/index.ts',
    'room-order-survey: packages/engine/src/survey/index.ts -> packages/engine/src/learn/index.ts',
    'room-door: packages/engine/src/heat/behind.ts -> packages/engine/src/quantity/parse.ts',
    'room-unknown: packages/engine/src/answer/index.ts -> packages/engine/src/drawer/index.ts',
    'answer-order-supply: packages/engine/src/answer/supply/up.ts -> packages/engine/src/answer/job/job.ts',
    'answer-room-unknown: packages/engine/src/answer/cost/odds.ts -> packages/engine/src/answer/odds/odd.ts',
    'pure-engine: packages/engine/src/heat/clock.ts -> fs',
    'no-cycle: packages/engine/src/issue/one.ts -> packages/engine/src/issue/two.ts',
    'resolvable: packages/engine/src/heat/gone.ts -> ./nowhere.ts',
    'package-order-contract: packages/contract/src/up.ts -> packages/server/src/index.ts',
    'package-order-app: packages/app/src/stored.ts -> packages/store/src/index.ts',
    'app-in-browser: packages/app/src/node.ts -> path',
    'app-order-ui: packages/app/src/ui/up.ts -> packages/app/src/job/row.ts',
    'app-part-unknown: packages/app/src/job/shelf.ts -> packages/app/src/shelf/thing.ts',
    'page-alone: packages/app/src/pages/one/page.tsx -> packages/app/src/pages/two/page.tsx',
    'page-door: packages/app/src/shell/app.ts -> packages/app/src/pages/two/table.ts',
    'package-door: packages/papers/src/behind.ts -> packages/engine/src/quantity/index.ts',
    'papers-order-words: packages/papers/src/words/up.ts -> packages/papers/src/blocks/index.ts',
    'papers-order-html: packages/papers/src/html/beside.ts -> packages/papers/src/text/index.ts',
    'papers-door: packages/papers/src/html/through.ts -> packages/papers/src/words/one.ts',
    'store-order-database: packages/store/src/database/up.ts -> packages/store/src/job/job.ts',
    'store-order-shop-file: packages/store/src/shop-file/beside.ts -> packages/store/src/job/job.ts',
    'store-room-unknown: packages/store/src/shop-file/odds.ts -> packages/store/src/drawer/odd.ts',
    'server-order-work: packages/server/src/work/up.ts -> packages/server/src/routes/route.ts',
    'server-room-unknown: packages/server/src/routes/odds.ts -> packages/server/src/drawer/odd.ts',
    'papers-room-unknown: packages/papers/src/html/odds.ts -> packages/papers/src/drawer/index.ts',
    'no-outward: packages/cli/src/outward.ts -> published/one.ts',
    'package-door-from-outside: published/behind.ts -> packages/engine/src/quantity/parse.ts',
  ])('%s', (line) => {
    expect(found).toContain(line);
  });
});
