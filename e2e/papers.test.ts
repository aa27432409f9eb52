import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { brokenRules } from './broken-rules.ts';
import { cutOff } from './cut-off.ts';
import { BenchPage } from './pages/bench-page.ts';
import { pdfPages } from './pdf-pages.ts';
import { runFurrow } from './run-furrow.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

const EXAMPLES = fileURLToPath(new URL('../examples', import.meta.url));
const JOB = join(EXAMPLES, 'penstock-seam.yaml');
const KIT = join(EXAMPLES, 'yard-kit.yaml');
const READINGS = join(EXAMPLES, 'readings', 'penstock-seam.yaml');
const folder = mkdtempSync(join(tmpdir(), 'furrow-papers-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What a PDF tool of the system prints. */
function poppler(tool: string, ...args: string[]): string {
  return execFileSync(tool, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
}

/** Whether the PDF tools of the system are here; without them what they check is left out. */
const NO_POPPLER = (() => {
  try {
    poppler('pdfinfo', '-v');
    return false;
  } catch {
    return true;
  }
})();

interface Written {
  readonly revision: string;
  readonly files: readonly { readonly file: string; readonly pages: number | null; readonly bytes: number }[];
  readonly left_out: readonly { readonly paper: string }[];
  readonly superseded: { readonly differences: readonly { readonly words: string }[] } | null;
}

describe('furrow papers', () => {
  const output = join(folder, 'metric');
  let written: Written;
  beforeAll(async () => {
    const run = await runFurrow([
      ...['papers', JOB, '-o', output, '--kit', KIT, '--readings', READINGS, '--json'],
    ]);
    expect([run.code, run.err]).toEqual([0, '']);
    written = JSON.parse(run.out) as Written;
  });

  it('writes every paper and drawing, and lists them as they are', () => {
    expect(written.left_out).toEqual([]);
    expect(written.superseded).toBeNull();
    expect(written.files.map(({ file }) => file)).toEqual([
      'set-up-card.pdf',
      'procedure-sheet.pdf',
      'commissioning-sheet.pdf',
      'hot-work-sheet.pdf',
      'run-record.pdf',
      'groove-report.pdf',
      'quote.pdf',
      'estimate.pdf',
      'section.svg',
      'section.dxf',
      'seam-strip.svg',
      'seam-strip.dxf',
      'bay.svg',
      'bay.dxf',
    ]);
    for (const { file, pages, bytes } of written.files) {
      const content = readFileSync(join(output, file));
      expect(content.length).toBe(bytes);
      if (pages !== null) expect(pdfPages(content)).toBe(pages);
    }
  });

  it.skipIf(NO_POPPLER)('sets papers whose pages, text and structure other programs can read', () => {
    for (const { file, pages } of written.files.filter((each) => each.pages !== null)) {
      const path = join(output, file);
      const info = poppler('pdfinfo', path);
      expect(info).toMatch(new RegExp(`^Pages:\\s+${pages}$`, 'mu'));
      expect(info).toMatch(/^Tagged:\s+yes$/mu);
      expect(info).toMatch(/^Page size:\s+595\.28 x 841\.89 pts \(A4\)$/mu);
      expect(info).toMatch(/^Title:\s+Penstock section 7/mu);
      const text = poppler('pdftotext', '-layout', path, '-');
      for (const [index, page] of text.split('\f').slice(0, -1).entries()) {
        expect(page).toContain(`job revision ${written.revision.slice(0, 12)}`);
        expect(page).toContain(`page ${index + 1} of ${pages}`);
      }
      const structure = poppler('pdfinfo', '-struct-text', path);
      for (const tag of ['H1', 'Table', 'TR', 'TH', 'TD', 'Figure']) expect(structure).toContain(tag);
      expect(structure).toContain('Penstock section 7, long seam, second side');
    }
  });

  it('tells what the new papers supersede when the job has changed', async () => {
    const changed = join(folder, 'changed.yaml');
    writeFileSync(changed, readFileSync(JOB, 'utf8').replace('wanted: 12 mm', 'wanted: 12.5 mm'));
    const run = await runFurrow(['papers', changed, '-o', output, '--kit', KIT, '--units', 'metric']);
    expect([run.code, run.err]).toEqual([0, '']);
    expect(run.out).toContain(`at revision ${written.revision.slice(0, 12)} is superseded`);
    expect(run.out).toContain('Groove, depth: 12.0 mm before, 12.5 mm now.');
    const compared = await runFurrow(['compare', JOB, changed, '--json']);
    expect(JSON.parse(compared.out)).toMatchObject({
      before: written.revision,
      differences: [{ path: 'groove.depth.wanted', before: '12.0 mm', after: '12.5 mm' }],
    });
  });

  it('leaves out what it cannot know, and takes it away where it lies from before', async () => {
    const run = await runFurrow([
      'papers',
      JOB,
      '-o',
      output,
      '--json',
      '--units',
      'inch',
      '--paper',
      'letter',
    ]);
    const { left_out, files } = JSON.parse(run.out) as Written;
    expect(left_out.map(({ paper }) => paper)).toEqual(['commissioning-sheet', 'bay']);
    expect(files.map(({ file }) => file)).not.toContain('bay.dxf');
    expect(() => readFileSync(join(output, 'commissioning-sheet.pdf'))).toThrow();
  });

  it('writes nothing where the readings cannot be read, and says where', async () => {
    const bad = join(folder, 'bad-readings.yaml');
    writeFileSync(bad, 'furrow_readings: 1\nstations:\n  - { at: 1 m, depth: 12 }\n');
    const run = await runFurrow(['papers', JOB, '-o', join(folder, 'none'), '--readings', bad]);
    expect(run.code).toBe(2);
    expect(run.err).toMatch(/bad-readings\.yaml:3:\d+: .*\[\w+\]/u);
    expect(() => readFileSync(join(folder, 'none', 'quote.pdf'))).toThrow();
  });

  it('takes an order for a folder that cannot be as bad input', async () => {
    const run = await runFurrow(['papers', JOB, '-o', join(JOB, 'papers')]);
    expect(run.code).toBe(2);
    expect(run.err).toContain('could not be written');
  });
});

describe.skipIf(NO_BROWSER)('papers page', () => {
  const stage = useStage();

  it('shows a paper, and keeps of a saved job what was handed out until the job changes', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    await bench.save(1);
    const saved = new URL(page.url()).pathname;
    await page.goto(`${saved}/papers`);
    await page.getByRole('button', { name: 'Show Groove report' }).click();
    const preview = page.frameLocator('iframe');
    await preview.getByText('Groove report, to be filled in').waitFor();
    const coming = page.waitForEvent('download');
    await page.getByRole('link', { name: 'Download Groove report' }).click();
    expect((await coming).suggestedFilename()).toBe('groove-report.pdf');
    await page.getByText('printed at revision 1', { exact: false }).waitFor();
    await page.goto(saved);
    await bench.replanned(async () => (await bench.field('Groove', 'Deeper by at most')).fill('7 mm'));
    await bench.save(2);
    await page.goto(`${saved}/papers`);
    const superseded = page.getByRole('region', { name: 'Superseded prints' });
    await superseded.waitFor();
    expect(await seenText(superseded)).toContain(
      'Groove, depth, deeper by at most: 6.0 mm before, 7.0 mm now.',
    );
    const changes = page.getByRole('region', { name: 'What changed' }).getByRole('listitem');
    expect(await seenText(changes)).toBe('Groove, depth, deeper by at most: 6.0 mm before, 7.0 mm now.');
    // an earlier revision comes back as an unsaved change
    await page.getByRole('button', { name: 'Put revision 1 back on the bench' }).click();
    await bench.planned();
    expect(await (await bench.field('Groove', 'Deeper by at most')).inputValue()).toBe('6 mm');
    await bench.save(3);
  });

  it('fills a record in from a readings file, and says where one cannot be read', async () => {
    const { page } = await stage.visit({ expect: [422] });
    await page.goto('/demo/penstock-seam/papers');
    const file = page.getByLabel('Readings file for Groove report');
    const bad = {
      name: 'bad.yaml',
      mimeType: 'text/plain',
      buffer: Buffer.from('furrow_readings: 1\nstations: 5\n'),
    };
    await file.setInputFiles(bad);
    expect(await seenText(page.getByRole('alert'))).toContain('line 2');
    const coming = page.waitForEvent('download');
    await file.setInputFiles(READINGS);
    const path = join(folder, 'filled-in.pdf');
    await (await coming).saveAs(path);
    expect(pdfPages(readFileSync(path))).toBe(2);
  });

  it.each(['bench', 'tablet'] as const)('can be used by everybody on a %s', async (screen) => {
    const { page } = await stage.visit({ screen });
    await page.goto('/demo/casting-wash/papers');
    await page.frameLocator('iframe').getByRole('heading', { level: 1 }).waitFor();
    // the typeface of the PDF, in both of its weights
    const preview = page.frames().find((frame) => frame !== page.mainFrame())!;
    await expect
      .poll(() => preview.evaluate(() => [...document.fonts].map(({ status }) => status)))
      .toEqual(['loaded', 'loaded']);
    const violations = await brokenRules(page);
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
    expect(await cutOff(page)).toEqual([]);
  });
});
