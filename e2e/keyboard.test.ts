import { describe, expect, it } from 'vitest';
import { BenchPage } from './pages/bench-page.ts';
import { NO_BROWSER, useStage } from './stage.ts';

describe.skipIf(NO_BROWSER)('keyboard alone', () => {
  const stage = useStage();

  it.each(['bench', 'tablet'] as const)(
    'reaches the result, edits, moves the cut and saves (%s)',
    async (screen) => {
      const { page } = await stage.visit({ screen });
      const bench = await new BenchPage(page).open();
      await page.keyboard.press('Tab');
      const skip = page.getByRole('link', { name: 'Skip to the result' });
      expect(await bench.isFocused(skip)).toBe(true);
      expect(await skip.evaluate((node) => node.getBoundingClientRect().top >= 0)).toBe(true);
      await page.keyboard.press('Enter');
      await expect.poll(() => bench.isFocused(page.getByRole('main'))).toBe(true);

      await bench.goTo(bench.cursor, 'Tab');
      await page.keyboard.press('Home');
      await bench.region('Section').getByText('Cut across at the start').waitFor();
      const start = Number(await bench.cursor.getAttribute('aria-valuenow'));
      await page.keyboard.press('ArrowRight');
      await expect
        .poll(async () => Number(await bench.cursor.getAttribute('aria-valuenow')))
        .toBeGreaterThan(start);
      await page.keyboard.press('End');
      await bench.region('Section').getByText('Cut across 6.00 m').waitFor();

      const depth = await bench.field('Groove', 'Depth');
      await bench.goTo(depth, screen === 'tablet' ? 'Tab' : 'Shift+Tab');
      await page.keyboard.press('ControlOrMeta+A');
      await bench.replanned(() => page.keyboard.type('7/16 in'));
      await bench.goTo(bench.button('Lock current'), screen === 'tablet' ? 'Shift+Tab' : 'Tab');
      await bench.replanned(() => page.keyboard.press('Space'));
      await bench.goTo(bench.button('Save'), 'Shift+Tab');
      await page.keyboard.press('Enter');
      await bench.saveState.filter({ hasText: 'saved as revision 1' }).waitFor();
    },
  );

  it('changes to the text and back, and leaves a dialog to where it was opened from', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    await bench.tab('Form').focus();
    await page.keyboard.press('ArrowRight');
    await bench.text.waitFor();
    expect(await bench.isFocused(bench.tab('Text'))).toBe(true);
    await page.keyboard.press('ArrowLeft');
    await page.getByRole('form', { name: 'Job' }).waitFor();
    const paste = bench.button('Paste');
    await paste.focus();
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Paste a job file' });
    await dialog.waitFor();
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    expect(await bench.isFocused(paste)).toBe(true);
  });

  it('shows where the focus is, on everything the keys reach', async () => {
    const { page } = await stage.visit();
    await new BenchPage(page).open();
    const unseen = new Set<string>();
    for (let presses = 0; presses < 150; presses += 1) {
      await page.keyboard.press('Tab');
      const blind = await page.evaluate(() => {
        const at = document.activeElement;
        if (at === null || at === document.body) return 'end';
        // a hidden radio shows its focus on the words beside it
        const shows = [at, at.nextElementSibling].some((node) => {
          if (node === null) return false;
          const { outlineStyle, outlineWidth } = getComputedStyle(node);
          return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
        });
        return shows ? undefined : `${at.tagName} ${at.textContent.slice(0, 40)}`;
      });
      if (blind === 'end') break;
      if (blind !== undefined) unseen.add(blind);
    }
    expect([...unseen]).toEqual([]);
  });
});
