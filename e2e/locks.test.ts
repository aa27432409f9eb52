import { describe, expect, it } from 'vitest';
import { BenchPage } from './pages/bench-page.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

describe.skipIf(NO_BROWSER)('locks and candidates', () => {
  const stage = useStage();

  it('plans around a locked value and lets it go again', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const before = await bench.figure('Current');
    const current = await bench.field('Locks', 'Current');
    await bench.replanned(() => current.fill('700 A'));
    expect(before).not.toBe('700 A');
    expect(await bench.figure('Current')).toBe('700 A');
    const lock = bench.button('Lock current');
    expect(await lock.getAttribute('aria-pressed')).toBe('true');
    await bench.replanned(() => lock.click());
    expect(await bench.figure('Current')).toBe(before);
    expect(await bench.fileText()).not.toContain('locks');
  });

  it('holds a value of the plan while the job changes', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const electrode = await bench.figure('Electrode');
    await bench.replanned(() => bench.button('Lock electrode').click());
    expect(await bench.fileText()).toMatch(/locks:\s+electrode_diameter: \d+\/\d+ in/u);
    await bench.tab('Form').click();
    const depth = await bench.field('Groove', 'Depth');
    await bench.replanned(() => depth.fill('9 mm'));
    expect(await bench.figure('Electrode')).toBe(electrode);
  });

  it('uses another candidate by its locks', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const candidates = bench.rowsOf('Candidate plans');
    const wanted = candidates.filter({ has: page.getByRole('button', { name: /^Use this/u }) }).first();
    const [setup = ''] = (await seenText(wanted.getByRole('rowheader'))).split(' runs as set');
    const current = /(\d+) A/u.exec(setup)?.[0];
    await bench.replanned(() => wanted.getByRole('button').click());
    expect(await bench.figure('Current')).toBe(current);
    const inUse = candidates.filter({ hasText: 'in use' }).getByRole('rowheader');
    expect((await seenText(inUse)).split(',').slice(0, 2)).toEqual(setup.split(',').slice(0, 2));
    expect(await bench.fileText()).toContain('locks:');
  });
});
