import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { EXIT } from '../frame/exit-code.ts';
import { run } from './papers.ts';

const EXAMPLES = fileURLToPath(new URL('../../../../examples', import.meta.url));
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

interface Run {
  readonly code: number;
  readonly printed: string;
  readonly problem: string;
}

/** Runs the command on the job. */
async function papers(kit?: string): Promise<Run> {
  const options = { output, units: 'metric', paper: 'a4', json: false, ...(kit && { kit }) } as const;
  const {
    exit,
    print = '',
    problem = [],
  } = await run([job], options, {
    print: () => undefined,
    problem: () => undefined,
  });
  return { code: exit, printed: print, problem: problem.join('\n') };
}

/** Every file of the folder with its bytes. */
function contents(): Record<string, string> {
  const names = readdirSync(output).toSorted();
  return Object.fromEntries(names.map((name) => [name, readFileSync(join(output, name), 'latin1')]));
}

test('files of the user stay beside the papers, and what is no longer made is taken away and told', async () => {
  output = folder;
  const own = { 'job.yaml': '# the only copy\n', 'kit.yaml': '# of this one too\n' };
  for (const [name, text] of Object.entries(own)) writeFileSync(join(output, name), text);
  expect(await papers(KIT)).toMatchObject({ code: EXIT.refusal, problem: '' });
  const kept = join(output, 'papers-made-from.kit.yaml');
  expect(readFileSync(kept, 'utf8')).toBe(readFileSync(KIT, 'utf8'));
  const { code, printed } = await papers();
  expect(code).toBe(EXIT.refusal);
  for (const gone of ['papers-made-from.kit.yaml', 'commissioning-sheet.pdf']) {
    expect(printed).toContain(`Removed ${join(output, gone)}`);
    expect(existsSync(join(output, gone))).toBe(false);
  }
  expect(contents()).toMatchObject(own);
});

test('files of the user under the names of papers stop the run before it touches anything', async () => {
  output = folder;
  const own = ['kit.yaml', 'job.yaml', 'bay.dxf', 'section.svg', 'hot-work-sheet.pdf'];
  for (const name of own) writeFileSync(join(output, name), `${name} of the user`);
  const before = contents();
  const { code, printed, problem } = await papers();
  expect([code, printed]).toEqual([EXIT.badInput, '']);
  for (const name of ['section.svg', 'hot-work-sheet.pdf']) expect(problem).toContain(join(output, name));
  expect(contents()).toEqual(before);
});

test('the gauge that the readings name is looked for beside them, one that a person names before that', async () => {
  const readings = join(folder, 'readings.yaml');
  const gauge = join(EXAMPLES, 'gauges', 'bridge-gauge.yaml');
  const station = 'stations:\n  - { at: 0.3 m, depth: 14.2 mm }\n';
  const options = { output, units: 'metric', paper: 'a4', json: false, readings } as const;
  const streams = { print: () => undefined, problem: () => undefined };
  writeFileSync(readings, `furrow_readings: 1\ngauge_file: gauge.yaml\n${station}`);
  const lost = await run([job], options, streams);
  expect([lost.exit, lost.problem?.join()]).toEqual([
    EXIT.badInput,
    expect.stringContaining('gauge.yaml: there is no such file'),
  ]);
  expect((await run([job], { ...options, gauge }, streams)).exit).toBe(EXIT.refusal);
  writeFileSync(join(folder, 'gauge.yaml'), readFileSync(gauge));
  expect((await run([job], options, streams)).exit).toBe(EXIT.refusal);
});
