import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import { chromium } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { RunPage } from './pages/run-page.ts';
import { serveFurrow } from './run-furrow.ts';
import { saveDemoJob } from './saved-demo.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** A log of a pass; the arc is out for a second at 10 s. */
function log(current: number): string {
  const lines = ['time [s],arc voltage [V],current [A],travel [mm/min]'];
  for (let n = 0; n < 300; n += 1) {
    const t = n / 10;
    const burns = t >= 2 && t < 28 && !(t >= 10 && t < 11);
    const wobble = Math.sin(n);
    lines.push([t, burns ? 42 + wobble : 75, burns ? current + 5 * wobble : 0, burns ? 420 : 0].join(','));
  }
  return `${lines.join('\n')}\n`;
}

describe.skipIf(NO_BROWSER)('runs of a saved job', () => {
  const stage = useStage();

  it('are kept, are there after a reload with what was found, lie under one another, and are erased', async () => {
    const { page, url } = await stage.visit();
    const job = await saveDemoJob(page, url);
    const run = await new RunPage(page).openSaved(job);
    for (const [name, amps] of [
      ['first.csv', 600],
      ['second.csv', 640],
    ] as const) {
      await run.take(name, log(amps));
      await run.reviewed(name);
      await page.getByRole('button', { name: 'Keep this run' }).click();
      await run.keptRun(name).waitFor();
    }
    await page.reload();
    await run
      .keptRun('first.csv')
      .filter({ hasText: /one pass, arc .*event.*version 0\.1\.0/u })
      .waitFor();
    await run.keptRun('first.csv').getByRole('button', { name: 'first.csv', exact: true }).click();
    await run.reviewed('first.csv');
    expect(await run.events().filter({ hasText: 'Arc out' }).count()).toBe(1);
    await page.getByText('Kept as a run of this job.').waitFor();
    const strip = run.region('Seam strip of the run').locator('canvas');
    const before = (await strip.boundingBox())?.height ?? 0;
    await page.getByRole('checkbox', { name: 'Passes of second.csv under the strip' }).check();
    await expect.poll(async () => (await strip.boundingBox())?.height ?? 0).toBeGreaterThan(before);
    await run.region('Section at the cursor').getByRole('img').waitFor();
    const { violations } = await new AxeBuilder({ page }).withTags(RULES).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
    await page.getByRole('button', { name: 'Erase second.csv' }).click();
    await page.getByRole('button', { name: 'Erase for good' }).click();
    await run.keptRun('second.csv').waitFor({ state: 'detached' });
  });

  it('of one logger are read by the description that was kept for it', async () => {
    const { page, url } = await stage.visit();
    const run = await new RunPage(page).openSaved(await saveDemoJob(page, url));
    await run.take('first.csv', log(600));
    await run.reviewed('first.csv');
    await page.getByText('How the log was read: 300 rows read').click();
    await page.getByRole('combobox', { name: 'Column 4 is' }).selectOption('none');
    await page.getByRole('textbox', { name: 'Name of the logger' }).fill('bay: 2');
    await run.reviewed('first.csv');
    await page.getByRole('button', { name: 'Keep for the next file of this logger' }).click();
    await page.getByRole('button', { name: 'Erase the logger description bay: 2' }).waitFor();
    await page.reload();
    await run.take('next.csv', log(610));
    await run.reviewed('next.csv');
    await page.getByRole('button', { name: 'Read as bay: 2' }).click();
    await page.getByText('Stall and slip: the log has neither travel nor position').waitFor();
  });

  it('of a rig that is played are marked as a rehearsal', async () => {
    const { page, url } = await stage.visit();
    const run = await new RunPage(page).openSaved(await saveDemoJob(page, url));
    await page.getByRole('button', { name: 'Play a rehearsal' }).click();
    await run.reviewed('Rehearsal 1');
    await page.getByRole('button', { name: 'Keep this run' }).click();
    await run.keptRun('Rehearsal: no rig was run').filter({ hasText: 'version' }).waitFor();
  });
});

describe.skipIf(NO_BROWSER)('a live run', () => {
  it('is followed as readings come in, and loses none where the program is killed and the page is loaded again', async () => {
    const data = mkdtempSync(join(tmpdir(), 'furrow-live-'));
    const browser = await chromium.connect(inject('browser') ?? '');
    let served = serveFurrow(['--port', '0', '--data', data]);
    try {
      const entry = await served.url;
      const { origin, port } = new URL(entry);
      const context = await browser.newContext({ baseURL: origin });
      await context.request.get(entry);
      const page = await context.newPage();
      const run = await new RunPage(page).openSaved(await saveDemoJob(page, origin));
      await page.getByText('Watch a run live').click();
      await page.getByRole('textbox', { name: 'Name of the run' }).fill('Rig 4');
      await page.getByRole('button', { name: 'Begin' }).click();
      const live = run.region('Live: Rig 4');
      const post = await live.getByText(/\/frames$/u).textContent();
      const frames = post?.match(/http\S+/u)?.[0] ?? '';
      const send = async (from: number, to: number): Promise<void> => {
        const lines = Array.from({ length: to - from }, (_, i) => {
          const t = (from + i) / 10;
          const burns = t >= 1 && !(t >= 10 && t < 11);
          return JSON.stringify({
            'time [s]': t,
            'arc voltage [V]': burns ? 42 + Math.sin(from + i) : 75,
            'current [A]': burns ? 600 : 0,
            'travel [mm/min]': burns ? 420 : 0,
          });
        });
        const reply = await context.request.post(frames, {
          headers: { 'content-type': 'application/x-ndjson' },
          data: Buffer.from(`${lines.join('\n')}\n`),
        });
        expect((await reply.json()).kept).toBe(to - from);
      };
      await send(0, 150);
      await live.getByText(/150 readings came in/u).waitFor();
      await live.getByRole('definition').filter({ hasText: '14.9' }).waitFor();
      await run.events().filter({ hasText: 'Arc out' }).waitFor();
      expect(await seenText(live)).toMatch(/\d\.\d s ago/u);

      await served.kill();
      await live.getByText('The line to the program is broken').waitFor();
      served = serveFurrow(['--port', port, '--data', data]);
      await served.url;
      await send(150, 250);
      await live.getByRole('definition').filter({ hasText: '24.9' }).waitFor();
      await page.reload();
      await live.getByRole('definition').filter({ hasText: '24.9' }).waitFor();
      await run.events().filter({ hasText: 'Arc out' }).waitFor();

      await live.getByRole('button', { name: 'End the run' }).click();
      await run.keptRun('Rig 4').filter({ hasText: 'version' }).waitFor();
      const href = await run.keptRun('Rig 4').getByRole('link', { name: 'as written' }).getAttribute('href');
      const kept = await (await context.request.get(href ?? '')).text();
      const times = kept
        .trim()
        .split('\n')
        .map((line) => JSON.parse(line)['time [s]']);
      expect(times).toEqual(Array.from({ length: 250 }, (_, i) => i / 10));
      await context.close();
    } finally {
      await served.stop();
      await browser.close();
      rmSync(data, { recursive: true, force: true });
    }
  });
});
