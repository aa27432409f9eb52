import { cp, mkdtemp, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { APP, passwordOf } from './bench-server.ts';
import { brokenRules } from './broken-rules.ts';
import { cutOff } from './cut-off.ts';
import { BenchPage } from './pages/bench-page.ts';
import { CommissionPage } from './pages/commission-page.ts';
import { Frame } from './pages/frame.ts';
import { GroovePage } from './pages/groove-page.ts';
import { KnowledgePage } from './pages/knowledge-page.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

const CONFLICT = 409;
const FLOWING = 'Flowing air pressure, the torch';
const UNREACHED = 'The server is not reached.';

const TRIAL = {
  Electrode: '12.7',
  Current: '850',
  Travel: '800',
  'Arc voltage': '42',
  Length: '300',
  'Depth readings': '11.6 12.1',
};

/** The built app as another build of it: its planner under another name, and a service worker that knows it. */
async function anotherBuild(): Promise<{
  readonly folder: string;
  readonly mark: string;
  readonly remove: () => Promise<void>;
}> {
  const folder = await mkdtemp(join(tmpdir(), 'furrow-build-'));
  await cp(APP, folder, { recursive: true });
  const assets = join(folder, 'assets');
  const names = await readdir(assets);
  const planner = names.find((name) => name.startsWith('plan-worker-'))!;
  const mark = 'plan-worker-another';
  await rename(join(assets, planner), join(assets, `${mark}.js`));
  // whatever names it is another file as well, up to the first page
  const renamed = new Map([[planner, `${mark}.js`]]);
  const texts = [
    ...names.filter((name) => name.endsWith('.js') && name !== planner).map((name) => join('assets', name)),
    'index.html',
    'service-worker.js',
  ];
  const content = new Map<string, string>();
  for (const name of texts) content.set(name, await readFile(join(folder, name), 'utf8'));
  const namesOne = (text: string): boolean => [...renamed.keys()].some((name) => text.includes(name));
  for (let found = true; found; ) {
    found = false;
    for (const [name, text] of content) {
      const file = basename(name);
      if (!name.startsWith('assets') || renamed.has(file) || !namesOne(text)) continue;
      renamed.set(file, file.replace('.js', 'another.js'));
      found = true;
    }
  }
  for (const [name, text] of content) {
    let changed = text;
    for (const [before, after] of renamed) changed = changed.replaceAll(before, after);
    const file = basename(name);
    const at = renamed.get(file);
    if (at !== undefined) await rm(join(folder, name));
    if (name === 'service-worker.js') changed = changed.replace(/"id":"\w+"/u, '"id":"another"');
    await writeFile(join(folder, at === undefined ? name : join('assets', at)), changed);
  }
  return { folder, mark, remove: () => rm(folder, { recursive: true, force: true }) };
}

describe.skipIf(NO_BROWSER)('a tablet whose network drops', () => {
  const stage = useStage();

  /** Waits until the app, and what its pages ask for of the job that is shown, are kept in the browser. */
  async function taken(page: Page, path: string, name = 'furrow.answers'): Promise<void> {
    const isTaken = (): Promise<boolean> =>
      page.evaluate(
        async ([asked, cache]) => {
          if (navigator.serviceWorker.controller === null || !(await caches.has(cache))) return false;
          return (await (await caches.open(cache)).match(asked)) !== undefined;
        },
        [path, name] as const,
      );
    await expect.poll(isTaken, { timeout: 60_000 }).toBe(true);
  }

  it('is installed with its own icons, and what is kept is held to the same policy', async () => {
    const { page, url } = await stage.visit({ keeps: true, console: /Content Security Policy/u });
    await new BenchPage(page).open();
    await taken(page, '/api/gauge-examples');
    const manifest = await (await page.request.get(`${url}/furrow.webmanifest`)).json();
    expect(manifest).toMatchObject({ name: 'Furrow', display: 'standalone', start_url: '/' });
    for (const { src, type } of manifest.icons) {
      const icon = await page.request.get(url + src);
      expect([src, icon.status(), icon.headers()['content-type']]).toEqual([src, 200, type]);
    }
    await page.context().setOffline(true);
    await page.reload();
    await page.getByText(UNREACHED).waitFor();
    const refused = await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'document.title = "taken over"';
      document.body.append(script);
      return document.title;
    });
    expect(refused).not.toBe('taken over');
  });

  it('goes on without the server, and sends what was entered once it is back, whatever page is open', async () => {
    const { page, url, elsewhere } = await stage.visit({ keeps: true, screen: 'tablet' });
    const rig = await new CommissionPage(page).start(url, true);
    const job = new URL(page.url()).pathname.replace('/commission', '');
    const { recordPath } = rig;
    await taken(page, `/api${job}/revisions`);
    await page.context().setOffline(true);
    await rig.reading(FLOWING).fill('5 psi');
    await rig.verdict(FLOWING).getByText('is below the band').waitFor();
    const told = page.getByText(UNREACHED).locator('xpath=..');
    await told.getByText('at the rig of one job').waitFor();
    expect(await brokenRules(page)).toEqual([]);
    expect(await cutOff(page)).toEqual([]);
    await page.reload();
    await rig.verdict(FLOWING).getByText('is below the band').waitFor();
    expect(await rig.reading(FLOWING).inputValue()).toBe('5 psi');
    // pages that were not opened before, and everything that is computed in the page
    const bench = await new BenchPage(page).open(job);
    await bench.replanned(async () => (await bench.field('Groove', 'Depth')).fill('10 mm'));
    const frame = new Frame(page);
    await frame.place('Check').click();
    await page.getByRole('heading', { name: /^Power and air/u }).waitFor();
    await frame.place('Run').click();
    await page.getByRole('button', { name: 'Play a rehearsal' }).click();
    await page
      .getByRole('status', { name: 'Review' })
      .filter({ hasText: /: reviewed$/u })
      .waitFor();
    await frame.place('Groove').click();
    await new GroovePage(page).measured();
    await page.context().setOffline(false);
    await told.waitFor({ state: 'detached' });
    const other = await elsewhere();
    await expect
      .poll(async () => (await (await other.request.get(url + recordPath)).json()).revision_number, {
        timeout: 45_000,
      })
      .toBe(1);
    const saved = await (await other.request.get(url + recordPath)).json();
    expect(JSON.stringify(saved)).toContain('5 psi');
  });

  it('shows where somebody else saved other readings meanwhile, and loses neither', async () => {
    const { page, url, elsewhere } = await stage.visit({ keeps: true, screen: 'tablet', expect: [CONFLICT] });
    const mine = await new CommissionPage(page).start(url, true);
    const { pathname } = new URL(page.url());
    await taken(page, `/api${pathname.replace('/commission', '')}/revisions`);
    await page.context().setOffline(true);
    await mine.reading(FLOWING).fill('5 psi');
    await mine.reading('Stick-out').fill('90 mm');
    await page.getByText(UNREACHED).waitFor();
    // the person goes on to another page: the readings are nobody's open page then
    await new Frame(page).place('Groove').click();
    await new GroovePage(page).measured();
    const theirs = await new CommissionPage(await elsewhere()).open(pathname);
    await theirs.reading(FLOWING).fill('6 bar');
    await theirs.save();
    await page.context().setOffline(false);
    const decide = page.getByText('To decide:').locator('xpath=..');
    await decide.getByRole('link').click();
    await page.getByText('Somebody else saved meanwhile, and one entry differ').waitFor();
    expect(await mine.reading(FLOWING).inputValue()).toBe('5 psi');
    await page.getByRole('button', { name: 'Keep mine where they differ' }).click();
    await mine.saveState.filter({ hasText: /^saved with the job, revision 2/u }).waitFor();
    await decide.waitFor({ state: 'detached' });
    await theirs.open(pathname);
    expect(await theirs.reading(FLOWING).inputValue()).toBe('5 psi');
    expect(await theirs.reading('Stick-out').inputValue()).toBe('90 mm');
  });

  it('keeps a trial over a reload, and enters it beside what somebody else tried', async () => {
    const { page, elsewhere } = await stage.visit({ keeps: true, expect: [CONFLICT] });
    const mine = await new KnowledgePage(page).open();
    await taken(page, '/api/gauge-examples');
    await page.context().setOffline(true);
    await page.reload();
    await mine.picture.waitFor();
    await page.getByRole('button', { name: 'Enter a trial' }).click();
    await mine.fill(TRIAL);
    await page.getByRole('button', { name: 'Enter', exact: true }).click();
    await mine.state.filter({ hasText: 'kept on this device' }).waitFor();
    await page.reload();
    await mine.row('t-01').filter({ hasText: '11.6 to 12.1' }).waitFor();
    const theirs = await new KnowledgePage(await elsewhere()).open();
    await theirs.enterTrial({ ...TRIAL, 'Depth readings': '12.4 12.6' });
    await page.context().setOffline(false);
    await mine.row('t-02').waitFor();
    await mine.state.filter({ hasText: 'saved as revision 2' }).waitFor();
    await theirs.open();
    expect(await seenText(theirs.row('t-01'))).toContain('12.4 to 12.6');
    expect(await seenText(theirs.row('t-02'))).toContain('11.6 to 12.1');
  });

  it('keeps what is of one person to that person, and nothing once they sign out', async () => {
    const { page, url } = await stage.visit({ keeps: true, people: ['anna', 'bert'], expect: [401] });
    const signIn = async (name: string): Promise<void> => {
      await page.getByLabel('Name').fill(name);
      await page.getByLabel('Password').fill(passwordOf(name));
      await page.getByRole('button', { name: 'Sign in' }).click();
      await page.getByText(`${name} engineer`).waitFor();
    };
    const kept = (): Promise<string[]> =>
      page.evaluate(async () => [
        ...(await caches.keys()).filter((name) => name.startsWith('furrow.answers')),
        ...Object.keys(localStorage).filter((key) => key.includes('furrow.draft')),
      ]);
    await page.goto(url);
    await signIn('anna');
    const bench = await new BenchPage(page).open();
    const title = await bench.field('Job', 'Title');
    await bench.replanned(() => title.fill('Seam of Anna'));
    await bench.save(1);
    const { pathname } = new URL(page.url());
    await expect.poll(kept).toEqual(['furrow.answers ["main","anna"]']);
    await taken(page, `/api${pathname}/revisions`, 'furrow.answers ["main","anna"]');
    await page.context().setOffline(true);
    await page.reload();
    await page.getByText('anna engineer').waitFor();
    await bench.planned();
    expect(await seenText(bench.title)).toBe('Seam of Anna');
    await bench.replanned(() => title.fill('Seam of Anna, changed'));
    await page.getByRole('button', { name: 'Sign out' }).click();
    const question = page.getByRole('dialog');
    await question.getByText('changes of one job').waitFor();
    page.on('dialog', (dialog) => void dialog.accept());
    await question.getByRole('button', { name: 'Sign out and lose it' }).click();
    await page.getByRole('heading', { name: 'Sign in to Furrow' }).waitFor();
    expect(await kept()).toEqual([]);
    await page.goto(url + pathname);
    await page.getByRole('heading', { name: 'Sign in to Furrow' }).waitFor();
    // the server is told once it is reached: the session does not outlive the person's word
    await page.context().setOffline(false);
    await page.reload();
    await page.getByRole('heading', { name: 'Sign in to Furrow' }).waitFor();
    expect((await page.request.get(`${url}/api/jobs`)).status()).toBe(401);
    await signIn('bert');
    await taken(page, `/api${pathname}/revisions`, 'furrow.answers ["main","bert"]');
    await page.context().setOffline(true);
    await page.reload();
    await page.getByText('bert engineer').waitFor();
    await bench.planned();
    expect(await seenText(bench.title)).toBe('Seam of Anna');
    expect(await kept()).toEqual(['furrow.answers ["main","bert"]']);
  });

  it('takes a new version up with the next page, leaves no older code, and loses nothing that was entered', async () => {
    const next = await anotherBuild();
    const { page, served } = await stage.visit({ keeps: true, afresh: true });
    const planners: string[] = [];
    page.on('worker', (worker) => planners.push(worker.url()));
    page.on('dialog', (dialog) => void dialog.accept());
    const bench = await new BenchPage(page).open();
    await taken(page, '/api/gauge-examples');
    expect(planners.some((one) => one.includes('plan-worker'))).toBe(true);
    await bench.replanned(async () => (await bench.field('Groove', 'Depth')).fill('11 mm'));
    await page.context().setOffline(true);
    await page.getByText(UNREACHED).waitFor();
    await served(next.folder);
    await page.context().setOffline(false);
    planners.length = 0;
    // unsaved work is not left by itself
    await page.getByRole('button', { name: 'Take it up' }).click();
    await bench.planned();
    expect(await (await bench.field('Groove', 'Depth')).inputValue()).toBe('11 mm');
    await page.context().setOffline(true);
    await page.reload();
    await bench.planned();
    expect(
      planners.filter((one) => one.includes('plan-worker')).map((one) => one.includes(next.mark)),
    ).toEqual([true, true]);
    await next.remove();
  });
});
