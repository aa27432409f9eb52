import { describe, expect, it } from 'vitest';
import { BenchPage } from './pages/bench-page.ts';
import { JobsPage } from './pages/jobs-page.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

const CONFLICT = 409;

describe.skipIf(NO_BROWSER)('saved jobs', () => {
  const stage = useStage();

  it('saves, reloads, reopens, duplicates, bins and restores', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const title = await bench.field('Job', 'Title');
    await bench.replanned(() => title.fill('Trial seam'));
    await bench.save(1);
    expect(new URL(page.url()).pathname).toMatch(/^\/jobs\/./u);
    await page.reload();
    await bench.planned();
    expect(await seenText(bench.title)).toBe('Trial seam');
    expect(await seenText(bench.saveState)).toBe('saved as revision 1');
    await bench.replanned(async () => (await bench.field('Groove', 'Depth')).fill('11 mm'));
    expect(await seenText(bench.saveState)).toContain('changed since revision 1');
    await bench.save(2);

    const jobs = await new JobsPage(page).open();
    expect(await jobs.rows().count()).toBe(1);
    await jobs.duplicate('Trial seam');
    await expect.poll(() => jobs.rows().count()).toBe(2);
    await jobs.moveToBin('Trial seam');
    await expect.poll(() => jobs.rows().count()).toBe(1);
    await jobs.restore('Trial seam');
    await jobs.bin.waitFor({ state: 'detached' });
    await expect.poll(() => jobs.rows().count()).toBe(2);
    await jobs.rows().last().getByRole('link').click();
    await bench.planned();
    expect(await bench.fileText()).toContain('wanted: 11 mm');

    await jobs.open();
    await jobs.moveToBin('Trial seam');
    await jobs.erase('Trial seam');
    await jobs.bin.waitFor({ state: 'detached' });
    await expect.poll(() => jobs.rows().count()).toBe(1);
  });

  it('refuses to overwrite what another tab saved, and keeps both', async () => {
    const { page, elsewhere } = await stage.visit({ expect: [CONFLICT] });
    const mine = await new BenchPage(page).open();
    await mine.save(1);
    const theirs = await new BenchPage(await elsewhere()).open(new URL(page.url()).pathname);
    await theirs.replanned(async () => (await theirs.field('Groove', 'Depth')).fill('10 mm'));
    await theirs.save(2);
    await mine.replanned(async () => (await mine.field('Groove', 'Depth')).fill('11 mm'));
    await mine.button('Save').click();
    await mine.saveState.filter({ hasText: /not saved:.*“Save as copy” keeps both/u }).waitFor();
    expect(await mine.fileText()).toContain('wanted: 11 mm');
    await mine.button('Save as copy').click();
    await mine.saveState.filter({ hasText: 'saved as revision 1' }).waitFor();
    const jobs = await new JobsPage(page).open();
    expect(await jobs.rows().count()).toBe(2);
  });

  it('keeps unsaved changes over a reload, and discards them when asked', async () => {
    const { page } = await stage.visit();
    page.on('dialog', (dialog) => void dialog.accept());
    const bench = await new BenchPage(page).open();
    const depth = await bench.field('Groove', 'Depth');
    await bench.replanned(() => depth.fill('11 mm'));
    await page.reload();
    await bench.planned();
    expect(await depth.inputValue()).toBe('11 mm');
    await bench.replanned(() => bench.button('Show the demo job instead').click());
    expect(await depth.inputValue()).toBe('12 mm');
  });

  it('strikes out what belongs to the job before a mistake, and asks before it saves a draft', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    await (await bench.field('Groove', 'Depth')).fill('twelve');
    await bench.summary.waitFor();
    const figure = page
      .getByRole('term')
      .filter({ hasText: /^Current$/u })
      .locator('xpath=following-sibling::dd')
      .first();
    expect(await figure.evaluate((node) => getComputedStyle(node).textDecorationLine)).toBe('line-through');
    await bench.button('Save').click();
    await bench.button('Go on writing').click();
    expect(new URL(page.url()).pathname).toBe('/');
    await bench.button('Save').click();
    await bench.button('Save as a draft').click();
    await bench.saveState.filter({ hasText: 'saved as revision 1' }).waitFor();
    const jobs = await new JobsPage(page).open();
    expect(await seenText(jobs.rows())).toContain('a draft with mistakes');
  });

  it('says that a saved job is not there, and that a page is not', async () => {
    const { page } = await stage.visit({ expect: [404] });
    await page.goto('/jobs/none');
    await page.getByRole('alert').waitFor();
    expect(await seenText(page.getByRole('alert'))).toMatch(/no .*job/iu);
    await page.goto('/nowhere/at/all');
    expect(await seenText(page.getByRole('alert'))).toContain('no page at this address');
    await page.getByRole('main').getByRole('link', { name: 'saved jobs' }).click();
    await page.getByText('Nothing saved yet.').waitFor();
  });
});
