/**
 * Redrawing the strip of a long run in Chromium, over the built app: how long the page draws when the strip is moved or
 * zoomed. A log of any length is drawn by 131 072 groups of rows at most, so one of 262 000 rows by six readings is as
 * heavy as one of 1e8.
 */
import { chromium } from 'playwright-core';
import { startBench } from '../e2e/bench-server.ts';
import { RunPage } from '../e2e/pages/run-page.ts';
import { findBrowser, launchFlags } from '../tools/find-browser.mjs';
import { machineLine } from './timing.ts';

const ROWS = 262_000;
/** Time between two frames of the screen [ms]. */
const FRAME = 16;
const KEYS = ['+', '+', 'PageDown', 'PageDown', '+', 'PageUp', '-', '-', 'PageUp', '-'];

function log(): string {
  const lines = ['time_s,voltage_V,current_A,travel_mm_per_min,position_mm,feed_mm_per_min,air_pressure_kPa'];
  for (let row = 0; row < ROWS; row += 1) {
    const [u, i] = [41 + ((row * 37) % 101) / 100, 765 + ((row * 53) % 201) / 10];
    lines.push(
      `${(row / 1000).toFixed(3)},${u},${i},${340 + (row % 5)},${(row * 0.00598).toFixed(3)},${110 + (row % 7)},${550 + (row % 3)}`,
    );
  }
  return `${lines.join('\n')}\n`;
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
  const run = await new RunPage(page).open('penstock-seam');
  await run.take('long.csv', log());
  await run.reviewed('long');
  await page.evaluate(() => {
    const times: number[] = [];
    Object.assign(window, { times });
    const proto = CanvasRenderingContext2D.prototype;
    const [setTransform, fillText] = [proto.setTransform, proto.fillText];
    let began = 0;
    // the strip begins each drawing by its scale, and ends it by the name of its last lane
    proto.setTransform = function (...given: unknown[]) {
      began = performance.now();
      times.push(0);
      return Reflect.apply(setTransform, this, given);
    };
    proto.fillText = function (...given) {
      Reflect.apply(fillText, this, given);
      times[times.length - 1] = performance.now() - began;
    };
  });
  await page
    .getByRole('button', { name: 'Along time' })
    .click()
    .catch(() => undefined);
  await run.cursor.focus();
  for (let round = 0; round < 4; round += 1) for (const key of KEYS) await run.cursor.press(key);
  const times = await page.evaluate(() => (window as unknown as { times: number[] }).times);
  const sorted = times.filter((time) => time > 0).sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  console.log(machineLine());
  console.log(
    `${sorted.length} redraws of ${ROWS} rows x 6 on 1440 px: median ${at(0.5).toFixed(1)} ms, 95 % within ${at(0.95).toFixed(1)} ms, most ${at(1).toFixed(1)} ms (a frame: ${FRAME} ms)`,
  );
} finally {
  await browser.close();
  await bench.stop();
}
