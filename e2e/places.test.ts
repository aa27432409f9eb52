import { describe, expect, it } from 'vitest';
import { BenchPage } from './pages/bench-page.ts';
import { Frame } from './pages/frame.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

describe.skipIf(NO_BROWSER)('the places of the app', () => {
  const stage = useStage();

  it('keep the job open from page to page, with what was changed and nothing said of an earlier visit', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const frame = new Frame(page);
    expect(await seenText(frame.place('Plan'))).toMatch(/pass(es)?$/u);
    await bench.replanned(async () => {
      const thickness = await bench.field('Plate', 'Thickness');
      await thickness.fill('35 mm');
      await thickness.blur();
    });
    const revision = await bench.revision();
    await frame.place('Check').click();
    await page.waitForURL('**/supply');
    await bench.planned();
    await frame.tab('Hazards').click();
    await page.waitForURL('**/hazards');
    await frame.place('Shop').click();
    await page.waitForURL('**/kit');
    await frame.place('Plan').click();
    await bench.planned();
    expect(await bench.revision()).toBe(revision);
    expect(await (await bench.field('Plate', 'Thickness')).inputValue()).toBe('35 mm');
    expect(await page.getByText('of your last visit').count()).toBe(0);
    expect(await page.getByText('kept in this browser only').count()).toBe(0);
    expect(await seenText(frame.place('Set up'))).toContain('not saved yet');
  });

  it('plan the job once for all pages', async () => {
    const { page } = await stage.visit({ afresh: true });
    const bench = await new BenchPage(page).open();
    const frame = new Frame(page);
    const workers = page.workers().length;
    await frame.place('Check').click();
    await bench.planned();
    await frame.place('Plan').click();
    await bench.planned();
    expect(page.workers()).toHaveLength(workers);
  });

  it('let a saved job live on under its own address', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const frame = new Frame(page);
    await bench.save(1);
    const revision = await bench.revision();
    await frame.place('Set up').click();
    await frame.tab('Commissioning').click();
    await page.waitForURL('**/jobs/*/commission');
    await frame.place('Plan').click();
    await page.waitForURL(/\/jobs\/[^/]+$/u);
    await bench.planned();
    expect(await bench.revision()).toBe(revision);
  });

  for (const screen of ['bench', 'tablet'] as const) {
    it(`stand in the same spot on every page, with the whole title below them, on a ${screen}`, async () => {
      const { page } = await stage.visit({ screen });
      const frame = new Frame(page);
      const seen = new Set<string>();
      for (const path of [
        '/demo/penstock-seam',
        '/demo/penstock-seam/supply',
        '/demo/penstock-seam/papers',
        '/demo/penstock-seam/groove',
        '/kit',
        '/jobs',
      ]) {
        await page.goto(path);
        await page.getByRole('main').waitFor();
        await page.getByRole('heading', { level: 1 }).waitFor();
        const boxes = await Promise.all(
          (['Plan', 'Check', 'Set up', 'Run', 'Groove', 'Shop'] as const).map((name) =>
            frame.place(name).boundingBox(),
          ),
        );
        const title = page.getByRole('heading', { level: 1 });
        expect(await title.evaluate((node) => node.scrollWidth <= node.clientWidth)).toBe(true);
        seen.add(JSON.stringify(boxes.map((box) => [box?.x, box?.y, box?.width, box?.height])));
      }
      expect([...seen]).toHaveLength(1);
    });
  }
});
