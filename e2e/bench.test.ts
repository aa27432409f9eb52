import { describe, expect, it } from 'vitest';
import { BenchPage } from './pages/bench-page.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

describe.skipIf(NO_BROWSER)('bench', () => {
  const stage = useStage();

  it('opens with the demo job, planned', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    expect(await seenText(bench.title)).toMatch(/^Penstock section 7/u);
    expect(await seenText(bench.saveState)).toBe('not saved yet');
    expect(await bench.figure('Electrode')).toMatch(/^\d.* mm$/u);
    expect(await bench.figure('Assurance')).toMatch(/^9\d in 100$/u);
    expect(await bench.sectionWords()).toMatch(/Wanted depth 12\.0 mm.*Expected deepest point/u);
    expect(await bench.rowsOf('Passes in the order of the work').count()).toBeGreaterThan(0);
    expect(await bench.rowsOf('Candidate plans').count()).toBeGreaterThan(1);
    expect(await seenText(bench.region('What this rests on'))).toMatch(/Seed\s+1/u);
  });

  it('opens each demo job from the list', async () => {
    const { page } = await stage.visit();
    for (const name of ['casting-wash', 'defect-pocket']) {
      const bench = await new BenchPage(page).open(`/demo/${name}`);
      expect(await bench.rowsOf('Passes in the order of the work').count()).toBeGreaterThan(0);
    }
  });

  it('reads amounts as people write them, and section, seam strip and plan follow', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const depth = await bench.field('Groove', 'Depth');
    const [section, strip] = [await bench.sectionWords(), await bench.seamStripWords()];
    await bench.replanned(() => depth.fill('1/2 in'));
    expect(await bench.sectionWords()).toContain('Wanted depth 12.7 mm');
    await bench.replanned(() => depth.fill('9,5 mm'));
    expect(await bench.sectionWords()).toContain('Wanted depth 9.5 mm');
    expect(await bench.sectionWords()).not.toBe(section);
    expect(await bench.seamStripWords()).not.toBe(strip);
    const travel = await bench.field('Kit', 'Greatest travel');
    await bench.replanned(() => travel.fill('40 ipm'));
    const heads = await bench
      .region('Passes in the order of the work')
      .getByRole('columnheader')
      .allInnerTexts();
    const at = heads.indexOf('Travel, mm/min');
    for (const row of await bench.rowsOf('Passes in the order of the work').all()) {
      const travel = await seenText(row.locator('th, td').nth(at));
      expect(travel === 'by gauge' ? 0 : Number(travel)).toBeLessThanOrEqual(1020);
    }
    const text = await bench.fileText();
    expect(text).toMatch(/wanted: ["']?9,5 mm/u);
    expect(text).toContain('most: 40 ipm');
  });

  it.each([
    { typed: '1,500 mm', says: /1\.5 mm.*1500 mm/su },
    { typed: '12 furlongs', says: /furlongs/u },
    { typed: '28 ipm', says: /length/u },
    { typed: '', says: /missing/u },
    { typed: '-3 mm', says: /-3 mm/u },
  ])('explains “$typed” beside the field and keeps the last good result', async ({ typed, says }) => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const depth = await bench.field('Groove', 'Depth');
    const [electrode, section] = [await bench.figure('Electrode'), await bench.sectionWords()];
    await depth.fill(typed);
    await bench.result.filter({ hasText: /one mistake; what is shown belongs to the job before/u }).waitFor();
    expect(await bench.explanation(depth)).toMatch(says);
    expect(await depth.getAttribute('aria-invalid')).toBe('true');
    expect(await depth.inputValue()).toBe(typed);
    expect(await bench.figure('Electrode')).toBe(electrode);
    expect(await bench.sectionWords()).toBe(section);
    await bench.summary.getByRole('button', { name: 'go to the field' }).click();
    await expect.poll(() => depth.evaluate((node) => node === document.activeElement)).toBe(true);
    await depth.fill('12 mm');
    await bench.planned();
    expect(await depth.getAttribute('aria-invalid')).toBe('false');
  });

  it('takes the nearest value over with one press', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    await bench.edit('straight', 'strait');
    await bench.summary.getByRole('button', { name: 'go to the field' }).click();
    await page
      .getByRole('form', { name: 'Job' })
      .getByRole('button', { name: 'Write straight', exact: true })
      .click();
    await bench.planned();
    expect(await bench.fileText()).toContain('path: straight');
  });

  it('keeps comments and layout whichever way the job is edited', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    await bench.edit('thickness: 32 mm', 'thickness: 1 1/4 in   # measured twice');
    await bench.planned();
    await bench.tab('Form').click();
    const thickness = await bench.field('Plate', 'Thickness');
    expect(await thickness.inputValue()).toBe('1 1/4 in');
    await bench.replanned(() => thickness.fill('30 mm'));
    const text = await bench.fileText();
    expect(text).toContain('thickness: 30 mm   # measured twice');
    expect(text).toMatch(/^# Demo scenario, our own invention/u);
    expect(text).toContain('composition: { C: 0.16, Si: 0.35, Mn: 1.4 }');
  });

  it('says where the layout of the text is broken and loses nothing of it', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const whole = await bench.fileText();
    await bench.text.fill(whole.replace('seam:', 'seam: ['));
    await bench.summary.waitFor();
    expect(await seenText(bench.summary)).toMatch(/line \d+/u);
    await bench.tab('Form').click();
    const depth = await bench.field('Groove', 'Depth');
    expect(await depth.inputValue()).toBe('12 mm');
    expect(await depth.isEditable()).toBe(false);
    expect(await bench.fileText()).toContain('seam: [');
    await bench.text.fill(whole);
    await bench.planned();
  });

  it('shows the same plan in inches, and remembers the choice', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const revision = await bench.revision();
    await page.getByRole('radio', { name: 'inch' }).check();
    expect(await bench.figure('Electrode')).toMatch(/^[\d/ ]+ in$/u);
    expect(await bench.figure('Travel')).toMatch(/in\/min$/u);
    expect(await bench.sectionWords()).toMatch(/Wanted depth 0\.47 in/u);
    expect(await bench.revision()).toBe(revision);
    await page.reload();
    await bench.planned();
    expect(await bench.figure('Electrode')).toMatch(/ in$/u);
    expect(await bench.fileText()).toContain('wanted: 12 mm');
  });

  it('adds and removes electrodes of the kit', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    await bench.replanned(() => bench.button('Add electrode').click());
    const added = page.getByRole('textbox', { name: 'Diameter, electrode 4' });
    expect(await added.inputValue()).toBe('1/2 in');
    await bench.replanned(() => added.fill('0.375"'));
    await bench.replanned(() => bench.button('Remove electrode 1').click());
    await expect.poll(() => added.count()).toBe(0);
    expect(await bench.fileText()).toMatch(/diameter: ['"]?0\.375"/u);
  });

  it('refuses what no plan holds, with the limit that binds and what frees it', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const plus = await bench.field('Groove', 'Deeper by at most');
    await bench.replanned(() => plus.fill('0.5 mm'));
    const words = await seenText(bench.refusal);
    expect(words).toMatch(/\S+ now, .+ would do/u);
    expect(words).toMatch(/What frees it\s+\S+/iu);
    // each change that was found can be tried, and taken back
    const before = await bench.fileText();
    await bench.tab('Form').click();
    await bench.replanned(() =>
      bench.refusal
        .getByRole('button', { name: /^Try it/u })
        .first()
        .click(),
    );
    await bench.planned();
    expect(await bench.refusal.count()).toBe(0);
    await bench.replanned(() => page.getByRole('button', { name: 'Undo', exact: true }).click());
    expect(await bench.fileText()).toBe(before);
    await bench.refusal.waitFor();
  });

  it('cuts the section where the seam strip’s cursor stands', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    expect(await seenText(bench.region('Section'))).toContain('Cut across 3.00 m');
    await bench.cursor.scrollIntoViewIfNeeded();
    const box = await bench.cursor.boundingBox();
    if (box === null) throw new Error('the cursor has no place on the page');
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 3, box.y + box.height / 2, { steps: 3 });
    await page.mouse.up();
    await bench.region('Section').getByText('Cut across 2.00 m').waitFor();
    expect(await bench.cursor.getAttribute('aria-valuetext')).toContain('2.00 m');
  });
});
