import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ROOT } from './install.mjs';
import { thirdPartyNotices } from './third-party-notices.mjs';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'furrow-notices-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const FILES = {
  'node_modules/one/LICENSE': 'the terms of one\n',
  'node_modules/one/NOTICE.txt': 'the notice of one\n',
  'node_modules/one/node_modules/two/README.md':
    '# two\n\nUse it.\n\n## License\n\nthe terms of two\n\n## News\n\nolder\n',
  'node_modules/three/index.js': '',
  'node_modules/four/index.js': '',
  'node_modules/tool/LICENSE': 'the terms of a tool\n',
  'node_modules/assemblyscript/LICENSE': 'the terms of the compiler\n',
  'package-lock.json': JSON.stringify({
    packages: {
      '': { name: 'furrow' },
      'packages/engine': { version: '0.1.0' },
      'node_modules/@furrow/engine': { resolved: 'packages/engine', link: true },
      'node_modules/one': { version: '1.0.0', license: 'MIT' },
      'node_modules/one/node_modules/two': { version: '2.0.0', license: 'ISC' },
      'node_modules/three': { version: '3.0.0', license: 'MIT' },
      'node_modules/four': { version: '4.0.0' },
      'node_modules/elsewhere': { version: '5.0.0', license: 'MIT', optional: true },
      'node_modules/tool': { version: '6.0.0', license: 'MIT', dev: true },
      'node_modules/assemblyscript': { version: '7.0.0', license: 'Apache-2.0', dev: true },
    },
  }),
};

test('every package that ships stands with its texts, and what could not be checked is said', () => {
  for (const [path, text] of Object.entries(FILES)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  const { text, unchecked } = thirdPartyNotices(folder);
  for (const part of [
    'the terms of one',
    'the notice of one',
    'the terms of two',
    'the terms of the compiler',
  ]) {
    expect(text).toContain(part);
  }
  for (const part of ['a tool', '@furrow', 'older', 'Use it']) expect(text).not.toContain(part);
  expect(unchecked).toEqual([
    'three 3.0.0: ships no licence text; it names MIT.',
    'four 4.0.0: names no licence and ships no text of one.',
    'elsewhere 5.0.0: for another kind of computer, so not installed here; it names MIT.',
  ]);
  for (const line of unchecked) expect(text).toContain(`- ${line}`);
});

test('the installed packages give the texts of the typefaces, and no licence but the permissive ones', () => {
  const { text } = thirdPartyNotices(ROOT);
  expect(text).toContain('SIL OPEN FONT LICENSE');
  expect(text).toContain('Bitstream Vera');
  const named = [...text.matchAll(/^Licence named: (.*)$/gmu)].map((match) => match[1]!);
  expect(named.length).toBeGreaterThan(50);
  // two that name none ship the text of MIT; the typeface's is read above
  const permissive = ['MIT', '0BSD', 'ISC', 'BSD-3-Clause', 'Apache-2.0', 'BlueOak-1.0.0', 'OFL-1.1'];
  expect(named.filter((name) => !permissive.includes(name)).toSorted()).toEqual([
    'SEE LICENSE IN README.md AND LICENSE',
    'none',
    'none',
  ]);
  const { packages } = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, { version: string }>;
  };
  expect(text).toContain(`zod ${packages['node_modules/zod']!.version}\n`);
});
