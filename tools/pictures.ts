import { writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { type BenchServer, startBench } from '../e2e/bench-server.ts';
import { BenchPage } from '../e2e/pages/bench-page.ts';
import { CommissionPage } from '../e2e/pages/commission-page.ts';
import { CostPage } from '../e2e/pages/cost-page.ts';
import { GroovePage } from '../e2e/pages/groove-page.ts';
import { HeatPage } from '../e2e/pages/heat-page.ts';
import { RunPage } from '../e2e/pages/run-page.ts';
import { SupplyPages } from '../e2e/pages/supply-pages.ts';
import { findBrowser, launchFlags } from './find-browser.mjs';
import { smallPng } from './small-png.ts';

const FOLDER = fileURLToPath(new URL('../docs/pictures/', import.meta.url));
const WIDE = { width: 1440, height: 900 };
const TABLET = { width: 820, height: 1180 };

/** One picture of the README: the size of its page, and what is done before it is taken. */
interface Picture {
  readonly name: string;
  readonly size: { readonly width: number; readonly height: number };
  readonly theme: 'light' | 'dark';
  readonly take: (page: Page) => Promise<Buffer>;
}

const PICTURES: readonly Picture[] = [
  { name: 'bench', size: WIDE, theme: 'light', take: wholeBench },
  { name: 'bench-inch', size: WIDE, theme: 'light', take: inchBench },
  { name: 'bench-dark', size: WIDE, theme: 'dark', take: wholeBench },
  { name: 'tablet', size: TABLET, theme: 'light', take: wholeBench },
  { name: 'section', size: WIDE, theme: 'light', take: section },
  { name: 'wash', size: WIDE, theme: 'light', take: washSection },
  { name: 'refusal', size: WIDE, theme: 'light', take: refusal },
  { name: 'card', size: { width: 840, height: 1190 }, theme: 'light', take: card },
  { name: 'kit', size: WIDE, theme: 'light', take: kit },
  { name: 'commissioning', size: WIDE, theme: 'light', take: commissioning },
  { name: 'papers', size: WIDE, theme: 'light', take: papers },
  { name: 'supply', size: WIDE, theme: 'light', take: supply },
  { name: 'heat', size: WIDE, theme: 'light', take: heat },
  { name: 'hazards', size: WIDE, theme: 'light', take: hazards },
  { name: 'cost', size: WIDE, theme: 'light', take: cost },
  { name: 'run', size: WIDE, theme: 'light', take: run },
  { name: 'groove', size: WIDE, theme: 'light', take: groove },
];

async function wholeBench(page: Page): Promise<Buffer> {
  await new BenchPage(page).open();
  return page.screenshot();
}

/** The same to a reader in inches. */
async function inchBench(page: Page): Promise<Buffer> {
  await page.goto('/');
  await page.getByRole('radio', { name: 'inch' }).check({ force: true });
  return wholeBench(page);
}

/** The demo kit in its form, not saved. */
async function kit(page: Page): Promise<Buffer> {
  await page.goto('/kit');
  await page.getByRole('button', { name: 'Begin with Penstock yard, bay 2' }).click();
  await page.getByRole('heading', { level: 1, name: 'Penstock yard, bay 2' }).waitFor();
  return page.screenshot();
}

async function commissioning(page: Page): Promise<Buffer> {
  await new CommissionPage(page).open('/demo/penstock-seam/commission');
  return page.screenshot();
}

async function papers(page: Page): Promise<Buffer> {
  await page.goto('/demo/penstock-seam/papers');
  await page.frameLocator('iframe').getByRole('heading', { level: 1 }).waitFor();
  return page.screenshot();
}

async function section(page: Page): Promise<Buffer> {
  const bench = await new BenchPage(page).open();
  return bench.region('Section').screenshot();
}

async function washSection(page: Page): Promise<Buffer> {
  const bench = await new BenchPage(page).open('/demo/casting-wash');
  return bench.region('Section').screenshot();
}

/** A tolerance that no plan holds, and no stop to gauge. */
async function refusal(page: Page): Promise<Buffer> {
  const bench = await new BenchPage(page).open();
  const plus = await bench.field('Groove', 'Deeper by at most');
  await bench.replanned(() => plus.fill('1 mm'));
  await plus.blur();
  return page.screenshot();
}

/** Power and air with the demo kit, which stays the shop's kit for the pictures after it. */
async function supply(page: Page): Promise<Buffer> {
  const pages = new SupplyPages(page);
  await pages.saveDemoKit();
  await pages.open('supply');
  return page.screenshot();
}

/** The heat at the moment of the last pass. */
async function heat(page: Page): Promise<Buffer> {
  await new HeatPage(page).open('penstock-seam');
  return page.screenshot();
}

async function hazards(page: Page): Promise<Buffer> {
  const pages = new SupplyPages(page);
  await page.goto('/demo/penstock-seam/hazards');
  await pages.planned();
  return page.screenshot();
}

async function cost(page: Page): Promise<Buffer> {
  await new CostPage(page).open();
  return page.screenshot();
}

/** The rehearsal that a demo job opens with. */
async function run(page: Page): Promise<Buffer> {
  await new RunPage(page).open('penstock-seam');
  return page.screenshot();
}

/** The invented readings of the demo job, judged. */
async function groove(page: Page): Promise<Buffer> {
  await new GroovePage(page).open();
  return page.screenshot();
}

/** The card as it is printed. */
async function card(page: Page): Promise<Buffer> {
  const bench = await new BenchPage(page).open();
  await bench.save(1);
  const path = new URL(page.url()).pathname;
  await page.emulateMedia({ media: 'print' });
  await page.goto(`${path}/card?units=metric&paper=a4`);
  return page.getByRole('main').screenshot();
}

async function take(browser: Browser, { url, entry }: BenchServer, picture: Picture): Promise<void> {
  const context = await browser.newContext({
    baseURL: url,
    viewport: picture.size,
    colorScheme: picture.theme,
    reducedMotion: 'reduce',
    locale: 'en-GB',
  });
  await context.request.get(entry);
  const bytes = smallPng(await picture.take(await context.newPage()));
  await writeFile(`${FOLDER}${picture.name}.png`, bytes);
  await context.close();
  console.log(`docs/pictures/${picture.name}.png: ${Math.ceil(bytes.length / 1024)} kB`);
}

/** Names of the pictures to take; all where none is given. */
const asked = process.argv.slice(2);
const program = findBrowser();
if (program === undefined) throw new Error('No Chromium was found; set FURROW_CHROMIUM to the path of one.');
const server = await startBench();
const browser = await chromium.launch({ executablePath: program, args: launchFlags() });
try {
  for (const picture of PICTURES)
    if (asked.length === 0 || asked.includes(picture.name)) await take(browser, server, picture);
} finally {
  await browser.close();
  await server.stop();
}
