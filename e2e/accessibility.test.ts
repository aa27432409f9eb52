import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { brokenRules } from './broken-rules.ts';
import { cutOff } from './cut-off.ts';
import { BenchPage } from './pages/bench-page.ts';
import { JobsPage } from './pages/jobs-page.ts';
import { NO_BROWSER, SCREENS, useStage } from './stage.ts';

/** Every page and state, and how to come to it. */
const STATES: readonly { readonly name: string; readonly reach: (page: Page) => Promise<void> }[] = [
  {
    name: 'bench with a plan, everything unfolded',
    async reach(page) {
      const bench = await new BenchPage(page).open();
      for (const title of ['Composition', 'Rates', 'Planning', 'Locks']) await bench.group(title);
      await bench.button('Help on Title').click();
      await page
        .getByRole('group')
        .filter({ hasText: 'defaults used' })
        .last()
        .getByText('defaults used')
        .click();
    },
  },
  {
    name: 'bench with many tracks',
    async reach(page) {
      const bench = await new BenchPage(page).open('/demo/casting-wash');
      await page.getByRole('radio', { name: 'inch' }).check();
      await bench.planned();
    },
  },
  {
    name: 'bench with mistakes and an outdated result',
    async reach(page) {
      const bench = await new BenchPage(page).open();
      await (await bench.field('Groove', 'Depth')).fill('1,500 mm');
      await (await bench.field('Groove', 'Assurance')).fill('many');
      await page.getByRole('textbox', { name: 'In stock, electrode 2' }).fill('some');
      await bench.summary.waitFor();
    },
  },
  {
    name: 'bench with a refusal',
    async reach(page) {
      const bench = await new BenchPage(page).open();
      await bench.replanned(async () => (await bench.field('Groove', 'Deeper by at most')).fill('0.5 mm'));
      await bench.refusal.waitFor();
    },
  },
  {
    name: 'text view with a broken layout',
    async reach(page) {
      const bench = await new BenchPage(page).open('/demo/defect-pocket');
      await bench.edit('seam:', 'seam: [');
      await bench.summary.waitFor();
    },
  },
  {
    name: 'paste dialog',
    async reach(page) {
      const bench = await new BenchPage(page).open('/demo/defect-pocket');
      await bench.button('Paste').click();
      await page.getByRole('dialog').waitFor();
    },
  },
  {
    name: 'empty list of jobs',
    async reach(page) {
      await new JobsPage(page).open();
    },
  },
  {
    name: 'list of jobs with a bin',
    async reach(page) {
      await (await new BenchPage(page).open()).save(1);
      const title = 'Penstock section 7, long seam, second side';
      const jobs = await new JobsPage(page).open();
      await jobs.duplicate(title);
      await jobs.moveToBin(title);
      await jobs.bin.waitFor();
    },
  },
  {
    name: 'card to print',
    async reach(page) {
      await (await new BenchPage(page).open()).save(1);
      await page.goto(`${page.url()}/card`);
    },
  },
  {
    name: 'no such page',
    async reach(page) {
      await page.goto('/nowhere/at/all');
      await page.getByRole('alert').waitFor();
    },
  },
];

describe.skipIf(NO_BROWSER)('accessibility', () => {
  const stage = useStage();

  it('is looked at: what breaks a rule is found, and of colours alone nothing else', async () => {
    const { page } = await stage.visit();
    await page.setContent(
      '<html lang="en"><title>t</title><main><input><p style="color: #ddd; background: #fff">pale</p></main></html>',
    );
    const found = async (which: 'all' | 'colours'): Promise<string[]> =>
      (await brokenRules(page, which)).map(({ id, nodes }) => `${id} at ${nodes[0]?.target.join(' ')}`);
    expect(await found('all')).toEqual(['color-contrast at p', 'label at input']);
    expect(await found('colours')).toEqual(['color-contrast at p']);
  });

  it.each(STATES)('$name: no rule of WCAG 2.2 AA broken, no sideways scrolling', async ({ reach }) => {
    const { page } = await stage.visit();
    await reach(page);
    const wrong: string[] = [];
    for (const [screen, size] of Object.entries(SCREENS)) {
      await page.setViewportSize(size);
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
        const violations = await brokenRules(page, colorScheme === 'light' ? 'all' : 'colours');
        for (const { id, nodes } of violations) {
          wrong.push(...nodes.map((node) => `${screen} ${colorScheme}: ${id} at ${node.target.join(' ')}`));
        }
      }
      wrong.push(...(await cutOff(page)).map((name) => `${screen}: ${name} is cut off`));
    }
    expect(wrong).toEqual([]);
  });
});
