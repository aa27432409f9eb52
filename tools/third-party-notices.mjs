import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ROOT } from './install.mjs';

/** Packages needed for building only, of which something ends up in what is shipped all the same. */
const BUILT_IN = { 'node_modules/assemblyscript': 'its runtime is part of the heat solver’s module' };

const LICENCE_FILE = /^(?:licen[cs]e|copying|notice)/iu;
const README = /^readme(?:\.(?:md|markdown|txt))?$/iu;
/** The part of a README under a heading that names the licence. */
const README_PART =
  /^(?:#{1,6} *licen[cs]e\b.*|licen[cs]e\s*\n[=-]{3,}.*)$[\s\S]*?(?=^#{1,6} |(?![\s\S]))/imu;

/** Licence texts that a package ships: files of their own, or else the part of its README about it. */
function textsOf(folder) {
  const names = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isFile());
  const read = ({ name }) => readFileSync(join(folder, name), 'utf8').trim();
  const files = names
    .filter(({ name }) => LICENCE_FILE.test(name))
    .map(read)
    .filter((text) => text !== '');
  if (files.length > 0) return files;
  const readme = names.find(({ name }) => README.test(name));
  const part = readme && README_PART.exec(read(readme))?.[0].trim();
  return part ? [part] : [];
}

/**
 * What Furrow ships of others, with their licences, from what the lock names and what is installed.
 *
 * @param {string} root folder with package-lock.json and node_modules
 * @returns the text, and in words what could not be checked
 */
export function thirdPartyNotices(root) {
  const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
  const unchecked = [];
  const parts = [];
  for (const [path, { version, license, dev, link }] of Object.entries(packages)) {
    if (!path.includes('node_modules/') || link || (dev && !(path in BUILT_IN))) continue;
    const name = `${path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length)} ${version}`;
    const folder = join(root, path);
    if (!existsSync(folder)) {
      unchecked.push(`${name}: for another kind of computer, so not installed here; it names ${license}.`);
      continue;
    }
    const texts = textsOf(folder);
    if (texts.length === 0) {
      unchecked.push(
        license === undefined
          ? `${name}: names no licence and ships no text of one.`
          : `${name}: ships no licence text; it names ${license}.`,
      );
    }
    const why = path in BUILT_IN ? ` (${BUILT_IN[path]})` : '';
    parts.push([`${name}${why}`, `Licence named: ${license ?? 'none'}`, ...texts].join('\n\n'));
  }
  const rule = `\n\n${'-'.repeat(72)}\n\n`;
  const text = [
    [
      'Furrow is made with the work of others. Here is what it runs with, each with its licence text as installed.',
      'A program file compiled elsewhere, such as the embedded database’s, may hold further parts that cannot be seen from here.',
    ].join('\n'),
    [
      'Could not be checked:',
      ...(unchecked.length > 0 ? unchecked.map((line) => `- ${line}`) : ['- nothing']),
    ].join('\n'),
    ...parts,
  ].join(rule);
  return { text: `${text}\n`, unchecked };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const { text, unchecked } = thirdPartyNotices(ROOT);
  writeFileSync(join(ROOT, 'packages/app/dist/third-party-notices.txt'), text);
  console.log(
    `Licences: ${unchecked.length} could not be checked here; third-party-notices.txt of the app names them.`,
  );
}
