import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { BenchPage } from './pages/bench-page.ts';
import { pdfPages } from './pdf-pages.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

const POCKET = fileURLToPath(new URL('../examples/defect-pocket.yaml', import.meta.url));

describe.skipIf(NO_BROWSER)('files', () => {
  const stage = useStage();

  it('opens a job file and hands the same text out again', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    await bench.replanned(() => page.getByLabel('Job file to open').setInputFiles(POCKET));
    expect(await seenText(bench.title)).toContain('clear the indication');
    const { name, bytes } = await bench.handedOut(bench.button('Export'));
    expect(name).toMatch(/^penstock-section-4.*\.yaml$/u);
    expect(bytes.toString()).toBe(await readFile(POCKET, 'utf8'));
  });

  it('takes a pasted job, and asks before it replaces one that was never saved', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const paste = async (text: string): Promise<void> => {
      await bench.button('Paste').click();
      const dialog = page.getByRole('dialog', { name: 'Paste a job file' });
      await dialog.getByRole('textbox').fill(text);
      await dialog.getByRole('button', { name: 'Open on the bench' }).click();
    };
    const pocket = await readFile(POCKET, 'utf8');
    await bench.replanned(() => paste(pocket));
    expect(await seenText(bench.title)).toContain('clear the indication');
    await paste(pocket.replace('6 mm', '5 mm'));
    const question = page.getByRole('dialog', { name: 'Replace the unsaved job?' });
    await question.getByRole('button', { name: 'Keep it' }).click();
    expect(await bench.fileText()).toBe(pocket);
    await paste(pocket.replace('6 mm', '5 mm'));
    await bench.replanned(() => question.getByRole('button', { name: /^Discard it/u }).click());
    expect(await bench.fileText()).toContain('wanted: 5 mm');
  });

  it('says what is wrong with a file that is no job', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const file = { name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('dear all: [') };
    await page.getByLabel('Job file to open').setInputFiles(file);
    await bench.summary.waitFor();
    expect(await seenText(bench.result)).toContain('cannot be read');
    const large = { ...file, buffer: Buffer.alloc(1_100_000, 'a') };
    await page.getByLabel('Job file to open').setInputFiles(large);
    await page.getByRole('alert').filter({ hasText: 'too large' }).waitFor();
  });

  it('hands out the card as a PDF of a front and a back', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const { name, bytes } = await bench.handedOut(bench.button('Card as PDF'));
    expect(name).toMatch(/^penstock-section-7.*\.pdf$/u);
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
    expect(pdfPages(bytes)).toBe(2);
  });

  it('says why there is no card while the job has mistakes', async () => {
    const { page } = await stage.visit({ expect: [422] });
    const bench = await new BenchPage(page).open();
    await (await bench.field('Groove', 'Depth')).fill('twelve');
    await bench.button('Card as PDF').click();
    await page
      .getByRole('alert')
      .filter({ hasText: /^No card: / })
      .waitFor();
  });

  it('shows the card of a saved job as a page that prints on the two sides of a sheet', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    await bench.save(1);
    // a job of the shop's own is planned without the demo's kit and history, on the bench as on paper
    await page.getByText('Planned with the demo’s kit').waitFor({ state: 'detached' });
    await bench.planned();
    const current = await bench.figure('Current');
    const opening = page.waitForEvent('popup');
    await bench.button('Print card').click();
    const card = await opening;
    await card.waitForLoadState();
    expect(new URL(card.url()).pathname).toMatch(/^\/jobs\/[^/]+\/card$/u);
    const words = await seenText(card.getByRole('main'));
    expect(words).toContain('Penstock section 7');
    expect(current).toMatch(/^\d+ A$/u);
    expect(words).toMatch(new RegExp(`Current\\s+${current}`, 'u'));
    const pdf = await card.pdf({ preferCSSPageSize: true, printBackground: true });
    expect(pdfPages(pdf)).toBe(2);
  });
});
