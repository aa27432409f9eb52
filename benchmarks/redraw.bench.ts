/**
 * Redrawing the strip of a long run in Chromium, over the built app: how long the page draws when the strip is moved or
 * zoomed, and how long after a key the frame with it comes. A short log and one of 1e8 samples (six readings): any log is
 * drawn by at most 131 072 groups of rows and what they make together, so that both should take as long.
 */
import { closeSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { startBench } from '../e2e/bench-server.ts';
import { RunPage } from '../e2e/pages/run-page.ts';
import { findBrowser, launchFlags } from '../tools/find-browser.mjs';
import { machineLine } from './timing.ts';

/** Rows of the logs; the longer has 1e8 samples with its time and six readings. */
const LOGS = [262_000, 14_300_000];
/** Time between two frames of the screen [ms]. */
const FRAME = 16;
const KEYS = ['+', '+', 'PageDown', 'PageDown', '+', 'PageUp', '-', '-', 'PageUp', '-'];
const ROUNDS = 6;

function writeLog(path: string, rows: number): void {
  const file = openSync(path, 'w');
  const lines = ['time_s,voltage_V,current_A,travel_mm_per_min,position_mm,feed_mm_per_min,air_pressure_kPa'];
  for (let row = 0; row < rows; row += 1) {
    const [u, i] = [41 + ((row * 37) % 101) / 100, 765 + ((row * 53) % 201) / 10];
    const place = ((row * 1566) / rows).toFixed(3);
    lines.push(
      `${(row / 1000).toFixed(3)},${u},${i},${340 + (row % 5)},${place},${110 + (row % 7)},${550 + (row % 3)}`,
    );
    if (lines.length > 10_000) writeSync(file, `${lines.splice(0).join('\n')}\n`);
  }
  writeSync(file, `${lines.join('\n')}\n`);
  closeSync(file);
}

const program = findBrowser();
if (program === undefined) {
  console.log('No browser was found: nothing is measured.');
  process.exit(0);
}
const folder = mkdtempSync(join(tmpdir(), 'furrow-redraw-'));
const bench = await startBench();
const browser = await chromium.launch({ executablePath: program, args: launchFlags() });
try {
  const context = await browser.newContext({ baseURL: bench.url, viewport: { width: 1440, height: 900 } });
  await context.request.get(bench.entry);
  const page = await context.newPage();
  console.log(machineLine());
  await page.addInitScript(() => {
    // the strip begins each drawing by its scale, and ends it by the name of its last lane
    const times: { began: number; ended: number }[] = [];
    Object.assign(window, { times });
    const proto = CanvasRenderingContext2D.prototype;
    const [setTransform, fillText] = [proto.setTransform, proto.fillText];
    proto.setTransform = function (...given: unknown[]) {
      times.push({ began: performance.now(), ended: 0 });
      return Reflect.apply(setTransform, this, given);
    };
    proto.fillText = function (...given) {
      Reflect.apply(fillText, this, given);
      const last = times.at(-1);
      if (last !== undefined) last.ended = performance.now();
    };
  });
  for (const rows of LOGS) {
    const path = join(folder, `${rows}.csv`);
    writeLog(path, rows);
    const run = await new RunPage(page).open('penstock-seam');
    await page.getByLabel('Log to open').setInputFiles(path);
    await run.status.filter({ hasText: `${rows}.csv: reviewed` }).waitFor({ timeout: 600_000 });
    rmSync(path);
    for (const axis of ['Along the seam', 'Along time']) {
      await page.getByRole('button', { name: axis }).click();
      await run.cursor.focus();
      const { draws, waits } = await run.cursor.evaluate(
        async (cursor, { keys, rounds }) => {
          const { times } = window as unknown as { times: { began: number; ended: number }[] };
          const waits: number[] = [];
          times.length = 0;
          for (let round = 0; round < rounds; round += 1)
            for (const key of keys) {
              const drawn = times.length;
              const at = performance.now();
              cursor.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
              for (let n = 0; n < 30 && times.length === drawn; n += 1)
                await new Promise(requestAnimationFrame);
              if (times.length > drawn) waits.push(times.at(-1)!.ended - at);
              await new Promise(requestAnimationFrame);
            }
          return { draws: times.map(({ began, ended }) => ended - began), waits };
        },
        { keys: KEYS, rounds: ROUNDS },
      );
      const told = (list: number[]): string => {
        const sorted = [...list].sort((a, b) => a - b);
        const at = (share: number): string =>
          sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!.toFixed(1);
        return `median ${at(0.5)} ms, 95 % within ${at(0.95)} ms, most ${at(1)} ms`;
      };
      console.log(
        `${rows} rows x 7, ${axis.toLowerCase()}: ${draws.length} redraws on 1440 px, ${told(draws)} (a frame: ${FRAME} ms)`,
      );
      console.log(`  from the key to the end of the drawing, with the wait for the frame: ${told(waits)}`);
    }
  }
} finally {
  await browser.close();
  await bench.stop();
  rmSync(folder, { recursive: true });
}
