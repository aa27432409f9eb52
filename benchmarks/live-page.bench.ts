/** How long a reading takes until it is drawn on the page of a live run, in a real browser over the built app. */
import { chromium, type Page } from 'playwright-core';
import { startBench } from '../e2e/bench-server.ts';
import { RunPage } from '../e2e/pages/run-page.ts';
import { saveDemoJob } from '../e2e/saved-demo.ts';
import { findBrowser, launchFlags } from '../tools/find-browser.mjs';

const FRAMES = 200;
const EVERY_MILLISECONDS = 100;
/** Each frame is told apart on the page by a number of its own, from here on. */
const FIRST_MARK = 9000;

/** Has the page note when a frame's number is drawn. */
function watchMarks(page: Page): Promise<void> {
  return page.evaluate(() => {
    const drawn: Record<string, number> = {};
    Object.assign(window, { drawn });
    // without a function of its own name: what names them is not there in the page
    new MutationObserver(() => {
      for (const figure of document.querySelectorAll('.live-figures dd')) {
        const mark = /^9\d{3}/u.exec(figure.textContent ?? '')?.[0];
        if (mark !== undefined)
          requestAnimationFrame(() => {
            drawn[mark] ??= Date.now();
          });
      }
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
}

const program = findBrowser();
if (program === undefined) {
  console.log('No browser was found: nothing is measured.');
  process.exit(0);
}
const bench = await startBench();
const browser = await chromium.launch({ executablePath: program, args: launchFlags() });
try {
  const context = await browser.newContext({ baseURL: bench.url, viewport: { width: 1440, height: 900 } });
  await context.request.get(bench.entry);
  const page = await context.newPage();
  const run = await new RunPage(page).openSaved(await saveDemoJob(page, bench.url));
  await page.getByText('Watch a run live').click();
  await page.getByRole('button', { name: 'Begin' }).click();
  const told = await run
    .region('Live: Rig')
    .getByText(/\/frames$/u)
    .textContent();
  const address = /http\S+/u.exec(told ?? '')?.[0] ?? '';
  await watchMarks(page);
  const sent: number[] = [];
  for (let n = 0; n < FRAMES; n += 1) {
    sent.push(Date.now());
    const burns = n > 10;
    const frame = {
      mark: FIRST_MARK + n,
      'time [s]': n / 10,
      'arc voltage [V]': burns ? 42 + Math.sin(n) : 75,
      'current [A]': burns ? 600 : 0,
      'travel [mm/min]': burns ? 420 : 0,
    };
    const headers = { 'content-type': 'application/x-ndjson' };
    await context.request.post(address, { headers, data: Buffer.from(`${JSON.stringify(frame)}\n`) });
    await new Promise((done) => setTimeout(done, EVERY_MILLISECONDS));
  }
  await new Promise((done) => setTimeout(done, 1000));
  const drawn = await page.evaluate(() => (window as unknown as { drawn: Record<string, number> }).drawn);
  const delays = sent
    .flatMap((at, n) => (drawn[FIRST_MARK + n] === undefined ? [] : [drawn[FIRST_MARK + n]! - at]))
    .sort((a, b) => a - b);
  const share = (part: number): number =>
    delays[Math.min(delays.length - 1, Math.floor(part * delays.length))]!;
  console.log(
    `${delays.length} of ${FRAMES} frames drawn; those that were overtaken by the next are left out`,
  );
  console.log(`sent to drawn: median ${share(0.5)} ms, 95 % within ${share(0.95)} ms, most ${share(1)} ms`);
} finally {
  await browser.close();
  await bench.stop();
}
