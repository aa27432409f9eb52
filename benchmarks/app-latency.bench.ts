/**
 * From a changed field to what the page shows, in a real Chromium with the built app: the section as soon as the
 * job reads, and the whole result once the worker has planned anew. Times run from the app's own marks: from the
 * edit coming in to the page's nodes being in place; the browser's painting of them comes on top.
 */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from 'playwright-core';
import { startBench } from '../e2e/bench-server.ts';
import { BenchPage } from '../e2e/pages/bench-page.ts';
import { findBrowser, launchFlags } from '../tools/find-browser.mjs';
import { machineLine } from './timing.ts';

const EDITS = 60;
const WARM_UP = 5;
/** One frame at 60 Hz, and what a person takes for at once [ms]. */
const FRAME = 1000 / 60;
const AT_ONCE = 100;

interface EditTimes {
  /** From the edit to the redrawn section and seam strip [ms]. */
  readonly section: number;
  /** From the edit to the result on the page [ms]. */
  readonly planned: number;
}

/** Types a depth into the field and waits for the result that belongs to it. */
async function timeEdit(page: Page, bench: BenchPage, depth: string): Promise<EditTimes> {
  await page.evaluate(() => performance.clearMarks());
  const field = await bench.field('Groove', 'Depth');
  await field.fill(depth);
  await page.waitForFunction(() => performance.getEntriesByName('furrow:planned').length > 0);
  const marks = await page.evaluate(() =>
    performance.getEntriesByType('mark').map(({ name, startTime }) => ({ name, startTime })),
  );
  const first = (name: string): number => {
    const mark = marks.find((each) => each.name === name);
    if (mark === undefined) throw new Error(`The app set no mark ${name}`);
    return mark.startTime;
  };
  const edit = first('furrow:edit');
  return { section: first('furrow:section') - edit, planned: first('furrow:planned') - edit };
}

function report(name: string, values: readonly number[], limit: number, what: string): void {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  const p95 = at(0.95);
  console.log(
    `${name}: median ${at(0.5).toFixed(1)} ms, 95th percentile ${p95.toFixed(1)} ms; asked: within ${what}: ` +
      `${p95 <= limit ? 'holds' : 'FALLS SHORT'} (${(p95 / limit).toFixed(2)} of it)`,
  );
}

const program = findBrowser();
if (program === undefined) {
  console.log('No Chromium here: nothing measured.');
} else if (!existsSync(fileURLToPath(new URL('../packages/app/dist/index.html', import.meta.url)))) {
  console.log('The app is not built: run `npm run build` first. Nothing measured.');
} else {
  console.log(machineLine());
  const server = await startBench();
  const browser = await chromium.launch({ executablePath: program, args: launchFlags() });
  try {
    console.log(`Chromium ${browser.version()}, the demo job, ${EDITS} edits of its depth`);
    const page = await browser.newPage({ baseURL: server.url, viewport: { width: 1440, height: 900 } });
    await page.request.get(server.entry);
    const bench = await new BenchPage(page).open();
    const times: EditTimes[] = [];
    for (let edit = 0; edit < WARM_UP + EDITS; edit += 1) {
      // Depths from 10 mm to 13.2 mm in mixed order: every edit is a job not planned before.
      const step = (edit * 7) % (WARM_UP + EDITS);
      const measured = await timeEdit(page, bench, `${(10 + 0.05 * step).toFixed(2)} mm`);
      if (edit >= WARM_UP) times.push(measured);
    }
    report(
      'Section and seam strip redrawn',
      times.map((each) => each.section),
      FRAME,
      'one frame at 60 Hz, 16.7 ms',
    );
    report(
      'Result of the new plan shown',
      times.map((each) => each.planned),
      AT_ONCE,
      '100 ms',
    );
  } finally {
    await browser.close();
    await server.stop();
  }
}
