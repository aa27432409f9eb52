import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { EXIT } from './exit-code.ts';
import { papersCommand } from './papers-command.ts';

const EXAMPLES = fileURLToPath(new URL('../../../examples', import.meta.url));
const KIT = join(EXAMPLES, 'yard-kit.yaml');
// a plate too thin to gouge: the papers of a refusal are made quickly
const TEXT = readFileSync(join(EXAMPLES, 'penstock-seam.yaml'), 'utf8').replace(
  'thickness: 32 mm',
  'thickness: 21 mm',
);

let folder: string;
let job: string;
let output: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'furrow-papers-command-'));
  job = join(folder, 'seam.yaml');
  writeFileSync(job, TEXT);
  output = join(folder, 'papers');
});
afterEach(() => rmSync(folder, { recursive: true }));

/** Runs the command on the job; gives what it printed. */
async function papers(kit?: string): Promise<string> {
  const printed: string[] = [];
  const code = await papersCommand(
    job,
    { output, units: 'metric', kit, paper: 'a4', readings: undefined, json: false },
    { print: (text) => printed.push(text), problem: (lines) => expect(lines).toEqual([]) },
  );
  expect(code).toBe(EXIT.refusal);
  return printed.join('\n');
}

test('files of the user that lie in the folder stay as they are, with a kit and without', async () => {
  output = folder;
  const own = { 'job.yaml': '# the only copy\n', 'kit.yaml': '# of this one too\n' };
  for (const [name, text] of Object.entries(own)) writeFileSync(join(output, name), text);
  const kept = join(output, 'papers-made-from.kit.yaml');
  await papers(KIT);
  expect(readFileSync(kept, 'utf8')).toBe(readFileSync(KIT, 'utf8'));
  await papers();
  expect(existsSync(kept)).toBe(false);
  for (const [name, text] of Object.entries(own)) expect(readFileSync(join(output, name), 'utf8')).toBe(text);
});
