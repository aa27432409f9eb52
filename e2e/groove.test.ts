import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import { API_PATHS, fillPath } from '@furrow/contract';
import type { SurveyReport } from '@furrow/engine';
import type { Download } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { cutOff } from './cut-off.ts';
import { GroovePage } from './pages/groove-page.ts';
import { RunPage } from './pages/run-page.ts';
import { saveDemoJob } from './saved-demo.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, SCREENS, useStage } from './stage.ts';

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** A scanned section: a round groove 14.5 mm deep in a level plate, one wild point, millimetres without a unit. */
function scan(): string {
  const rows = ['x;z'];
  for (let n = 0; n <= 240; n += 1) {
    const x = -24 + n * 0.2;
    const radius = 9;
    const inside = Math.abs(x) < radius;
    const depth = inside ? 5.5 + Math.sqrt(radius ** 2 - x ** 2) : 0;
    const wild = n === 30 ? 4 : 0;
    rows.push(`${x.toFixed(2)};${(wild - depth + 0.02 * Math.sin(7 * n)).toFixed(3)}`);
  }
  return `${rows.join('\n')}\n`;
}

/** A cloud of a round groove along x, 14 mm deep in a level plate, as PLY text in metres. */
function cloud(): string {
  const rows: string[] = [];
  for (let s = 0; s < 150; s += 1)
    for (let n = 0; n < 160; n += 1) {
      const y = -0.024 + n * 0.0003;
      const depth = Math.abs(y) < 0.009 ? 0.005 + Math.sqrt(0.009 ** 2 - y * y) : 0;
      const rough = 2e-5 * Math.sin(7 * n + 3 * s);
      rows.push(`${(0.004 * s).toFixed(4)} ${y.toFixed(5)} ${(rough - depth).toFixed(6)}`);
    }
  const head = `ply\nformat ascii 1.0\nelement vertex ${rows.length}\n`;
  return `${head}property float x\nproperty float y\nproperty float z\nend_header\n${rows.join('\n')}\n`;
}

/** The same groove on an even raster: rows of heights in metres, along the seam and across it. */
const RASTER = { along: 150, across: 100, step: 0.0005 } as const;

function rasterHeight(s: number, n: number): number {
  const y = (n - (RASTER.across - 1) / 2) * RASTER.step;
  const depth = Math.abs(y) < 0.009 ? 0.005 + Math.sqrt(0.009 ** 2 - y * y) : 0;
  return 2e-5 * Math.sin(7 * n + 3 * s) - depth;
}

/** Its points, row by row. */
function rasterPoints(): (readonly [number, number, number])[] {
  return Array.from({ length: RASTER.along * RASTER.across }, (_, i) => {
    const [s, n] = [Math.floor(i / RASTER.across), i % RASTER.across];
    return [s * RASTER.step, n * RASTER.step, rasterHeight(s, n)] as const;
  });
}

/** Its points as XYZ, without a header. */
function xyz(): Buffer {
  return Buffer.from(
    `${rasterPoints()
      .map((point) => point.map((each) => each.toFixed(6)).join(' '))
      .join('\n')}\n`,
  );
}

/** The same as binary PLY. */
function binaryPly(): Buffer {
  const points = rasterPoints();
  const head = `ply\nformat binary_little_endian 1.0\nelement vertex ${points.length}\nproperty float x\nproperty float y\nproperty float z\nend_header\n`;
  const body = Buffer.alloc(12 * points.length);
  points.forEach((point, i) => {
    for (const [k, value] of point.entries()) body.writeFloatLE(value, 12 * i + 4 * k);
  });
  return Buffer.concat([Buffer.from(head), body]);
}

/** The same as a height map, rows from the far side on. */
function heightMap(): Buffer {
  const rows = Array.from({ length: RASTER.across }, (_, row) =>
    Array.from({ length: RASTER.along }, (_each, s) =>
      rasterHeight(s, RASTER.across - 1 - row).toFixed(6),
    ).join(' '),
  );
  return Buffer.from(
    `ncols ${RASTER.along}\nnrows ${RASTER.across}\nxllcorner 0\nyllcorner 0\ncellsize ${RASTER.step}\nNODATA_value -9999\n${rows.join('\n')}\n`,
  );
}

/** A log of one pass over 6 m, its current as planned or not. */
function log(): string {
  const lines = ['time [s],arc voltage [V],current [A],travel [mm/min]'];
  for (let n = 0; n < 1300; n += 1) {
    const burns = n >= 20 && n < 1280;
    lines.push([n / 2, burns ? 42 : 75, burns ? 800 : 0, burns ? 571 : 0].join(','));
  }
  return `${lines.join('\n')}\n`;
}

/** What a download holds. */
async function textOf(taken: Download): Promise<string> {
  const parts: Buffer[] = [];
  for await (const part of await taken.createReadStream()) parts.push(part as Buffer);
  return Buffer.concat(parts).toString('utf8');
}

describe.skipIf(NO_BROWSER)('the groove', () => {
  const stage = useStage();

  it('takes a reading in a minute with gloves on: few touches, each on something large', async () => {
    const { page } = await stage.visit({ screen: 'tablet' });
    const groove = await new GroovePage(page).open('/demo/defect-pocket');
    await page.getByRole('textbox', { name: 'Who' }).fill('Second hand');
    const entry = groove.region('Enter a reading');
    const small = await entry.locator('button, input').evaluateAll((all) =>
      all.flatMap((each) => {
        const { width, height } = each.getBoundingClientRect();
        return Math.min(width, height) < 44 ? [`${each.textContent}${each.id}: ${width} x ${height}`] : [];
      }),
    );
    expect(small).toEqual([]);
    let touches = 0;
    const touch = async (name: string, role: 'button' | 'textbox' = 'button'): Promise<void> => {
      touches += 1;
      await entry.getByRole(role, { name, exact: role === 'button' }).click();
    };
    const readings = [
      ['0.05', '7.4', '14.5'],
      ['0.12', '7', '14'],
    ] as const;
    await touch('From the start', 'textbox');
    for (const [at, depth, width] of readings) {
      for (const key of at) await touch(key);
      await touch('Depth', 'textbox');
      for (const key of depth) await touch(key);
      await touch('Width', 'textbox');
      for (const key of width) await touch(key);
      const before = await groove.gauged().count();
      await touch('Keep this reading');
      await groove.gauged().nth(before).waitFor();
    }
    // fourteen of a reading with its width: at two seconds each half a minute
    expect(touches).toBeLessThanOrEqual(2 * 15);
    expect(await seenText(groove.gauged().first())).toContain('Second hand');
  });

  it('predicts by the log of a kept run where a person chooses it, here and for whoever asks', async () => {
    const { page, url } = await stage.visit();
    const job = await saveDemoJob(page, url);
    const run = await new RunPage(page).openSaved(job);
    await run.take('pass 1.csv', log());
    await run.reviewed('pass 1.csv');
    await page.getByRole('button', { name: 'Keep this run' }).click();
    await run.keptRun('pass 1.csv').waitFor();
    const groove = await new GroovePage(page).open(job);
    const predicted = groove.region('Predicted by');
    expect(await seenText(predicted)).toContain('Now: the plan');
    await predicted.getByRole('combobox').selectOption({ label: 'by the log pass 1.csv' });
    await predicted.getByText('Now: the log of the run').waitFor();
    await page
      .getByRole('status', { name: 'Readings kept' })
      .filter({ hasText: /saved as revision/u })
      .waitFor();
    const id = job.split('/').at(-1)!;
    const report = (await (
      await page.request.get(fillPath(API_PATHS.jobSurvey, { id }))
    ).json()) as SurveyReport;
    expect([report.seam!.prediction, report.inputs.run?.file]).toEqual(['run', 'pass 1.csv']);
    await page.reload();
    await groove.measured();
    await predicted.getByText('Now: the log of the run').waitFor();
    await predicted.getByRole('combobox').selectOption({ label: 'by the plan' });
    await predicted.getByText('Now: the plan').waitFor();
  });

  it('knows the gauge by a study that is entered once, and says so beside every reading', async () => {
    const { page, url } = await stage.visit();
    await page.goto('/gauge');
    await page.getByText('Nothing is told of the shop’s gauge yet').waitFor();
    const study = readFileSync(new URL('../examples/gauges/bridge-gauge.yaml', import.meta.url));
    await page
      .getByLabel('Gauge file to open')
      .setInputFiles({ name: 'gauge.yaml', mimeType: 'application/yaml', buffer: study });
    await page.getByText('bridge gauge 3: one reading is within 0.420 mm of the depth, 95 %.').waitFor();
    await page.getByText('analysis of variance, pooled').first().waitFor();
    await page
      .getByRole('status', { name: 'Gauge kept' })
      .filter({ hasText: /saved as revision 1/u })
      .waitFor();
    const { violations } = await new AxeBuilder({ page }).withTags(RULES).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
    const job = await saveDemoJob(page, url);
    const groove = await new GroovePage(page).open(job);
    await groove.enter({ 'From the start': '0.5', Depth: '14.5' });
    expect(await seenText(groove.region('Enter a reading'))).toContain(
      'One depth counts as good to ± 0.420 mm (95 %): bridge gauge 3: a crossed gauge study',
    );
  });

  it('unrolls a cloud in its worker, with its floor as a map and its sections', async () => {
    const { page } = await stage.visit();
    const groove = await new GroovePage(page).open('/demo/defect-pocket');
    await groove.take('pocket.ply', cloud());
    const floor = groove.region('Floor unrolled');
    await floor.waitFor();
    await groove.measured();
    expect(await seenText(floor)).toMatch(/Deepest on average 1[34]\.\d+ mm/u);
    const inked = await floor.locator('canvas').evaluate((canvas: HTMLCanvasElement) => {
      const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
      const strength = (row: number): number => data[4 * (row * canvas.width + 120) + 3]!;
      return [strength(2), strength(24)];
    });
    // the plate at the border is faint, the root in the middle strong
    expect(inked[0]!).toBeLessThan(40);
    expect(inked[1]!).toBeGreaterThan(150);
    expect(await seenText(groove.region('Section as scanned'))).toMatch(/Depth\s+1[34]\.\d+ ± 0\.\d+ mm/u);
    // its many drawings are folded away
    const handed = groove.region('Hand it over');
    expect(
      await handed
        .getByRole('button', { name: /^section-/u })
        .first()
        .isVisible(),
    ).toBe(false);
    await handed.getByText(/^Drawings of \d+ sections$/u).click();
    const [taken] = await Promise.all([
      page.waitForEvent('download'),
      handed.getByRole('button', { name: /^section-2-.*dxf$/u }).click(),
    ]);
    expect(await textOf(taken)).toMatch(/^\s*0\s+SECTION/u);
  });

  it('is entered, judged, cut again, measured again and reported, on a tablet', async () => {
    const { page, url } = await stage.visit({ screen: 'tablet' });
    const job = await saveDemoJob(page, url);
    const groove = await new GroovePage(page).open(job);
    expect(await seenText(groove.region('Verdict'))).toContain('Nothing was measured on the seam yet');
    await page.getByRole('textbox', { name: 'Who' }).fill('Second hand');
    const stations = [
      ['0.5', '14.5'],
      ['1.8', '14.4'],
      ['3', '9.5'],
      ['4.2', '14.5'],
      ['5.5', '14.6'],
    ] as const;
    for (const [at, depth] of stations) {
      await groove.enter({ 'From the start': at, Depth: depth, Width: '17' });
    }
    expect(await seenText(groove.verdict)).toMatch(/^The groove fails: /u);
    expect(await groove.gauged().count()).toBe(5);
    expect(await seenText(groove.gauged().nth(2))).toMatch(
      /depth 9\.5 mm, at least 12\.0 mm wanted.*Second hand/u,
    );

    // the place that takes most risk away goes into the form at a touch
    const next = groove.region('Measure next').getByRole('button').first();
    const place = await seenText(next);
    await next.click();
    const from = page.getByRole('textbox', { name: 'From the start' });
    await expect.poll(() => from.inputValue()).toBe(place);
    await groove.enter({ Depth: '14.5' });

    await groove.region('Mend it').getByRole('button', { name: 'It was cut again' }).click();
    await groove.region('What was said before').waitFor();
    await groove.measured();
    expect(await seenText(groove.region('What was said before'))).toContain('As first cut: fails');
    expect(await seenText(groove.verdict)).not.toMatch(/fails/u);
    expect(await seenText(groove.gauged().nth(2))).toContain('measured before it was cut again');
    await groove.enter({ 'From the start': '3', Depth: '14.5' });
    expect(await seenText(groove.region('What was said before'))).toMatch(/After recut 1: (holds|in doubt)/u);

    await page
      .getByRole('status', { name: 'Readings kept' })
      .filter({ hasText: /saved as revision/u })
      .waitFor();
    const id = job.split('/').at(-1)!;
    const report = (await (
      await page.request.get(fillPath(API_PATHS.jobSurvey, { id }))
    ).json()) as SurveyReport;
    expect(report.seam!.history.map(({ verdict }) => verdict)).toEqual(['fails']);
    await page.goto(`${fillPath(API_PATHS.jobPaperPage, { id, file: 'groove-report' })}?units=metric`);
    const paper = await seenText(page.locator('body'));
    expect(paper).toContain('As first cut: fails, by 6 readings. Then it was cut again from');
    expect(paper).toContain('Measured by: Second hand.');
  });

  it('reads a file that is handed in, shows the section over what is wanted, and keeps it byte for byte', async () => {
    const { page, url } = await stage.visit();
    const job = await saveDemoJob(page, url);
    const groove = await new GroovePage(page).open(job);
    await groove.take('section at 2000 mm.csv', scan());
    const section = groove.region('Section as scanned');
    await section.waitFor();
    expect(await seenText(section)).toMatch(/Depth\s+14\.\d+ ± 0\.\d+ mm/u);
    expect(await seenText(section)).toMatch(/1 stand apart and do not count: rows \d+\./u);
    await section.getByText('wild, does not count').waitFor();
    // what was taken wrongly is said otherwise: the depth follows
    await page.getByText(/^section at 2000 mm\.csv: scanned sections/u).click();
    const unit = page.getByRole('combobox', { name: 'Unit where none is stated of section at 2000 mm.csv' });
    if (!(await unit.isVisible()))
      await page.getByText(/^section at 2000 mm\.csv: scanned sections/u).click();
    await unit.selectOption('cm');
    await section
      .getByText(/14\d\.\d+ ± .*\smm/u)
      .first()
      .waitFor();
    await unit.selectOption('mm');
    await section
      .getByText(/14\.\d+ ± .*\smm/u)
      .first()
      .waitFor();
    await page
      .getByRole('status', { name: 'Readings kept' })
      .filter({ hasText: /saved as revision/u })
      .waitFor();
    // whoever opens the job elsewhere sees the same, from the original that is kept
    await page.evaluate(() => localStorage.clear());
    const elsewhere = await page.context().newPage();
    const again = await new GroovePage(elsewhere).open(job);
    await again.region('Section as scanned').waitFor();
  });

  it('takes every kind of file that is dropped on a tablet, and keeps how a person corrected one', async () => {
    const { page, url } = await stage.visit({ screen: 'tablet' });
    const job = await saveDemoJob(page, url);
    const groove = await new GroovePage(page).open(job);
    const dropped = [
      ['gauge.csv', Buffer.from('station (m);depth (mm);width (mm)\n1,5;14,5;9\n'), 'gauge table, 1 rows'],
      ['section at 2000 mm.csv', Buffer.from(scan()), 'scanned sections, 241 rows'],
      ['pocket.xyz', xyz(), `cloud, ${RASTER.along * RASTER.across} points`],
      ['pocket.ply', binaryPly(), `cloud, ${RASTER.along * RASTER.across} points`],
      ['pocket.asc', heightMap(), `cloud, ${RASTER.along * RASTER.across} points`],
    ] as const;
    for (const [name, content, kind] of dropped) {
      await groove.drop(name, content);
      await groove.file(name).filter({ hasText: kind }).waitFor();
      await groove.measured();
    }
    const report = async (): Promise<SurveyReport> => {
      await page
        .getByRole('status', { name: 'Readings kept' })
        .filter({ hasText: /saved as revision/u })
        .waitFor();
      const id = job.split('/').at(-1)!;
      return (await (await page.request.get(fillPath(API_PATHS.jobSurvey, { id }))).json()) as SurveyReport;
    };
    const { sections } = await report();
    for (const [name] of dropped.slice(2)) {
      const own = sections.filter(({ file }) => file === name);
      expect(own.length, name).toBeGreaterThan(10);
      for (const { depth_mm: depth } of own.slice(1, -1))
        expect('value' in depth && Math.abs(depth.value - 14), name).toBeLessThan(0.1);
    }
    expect((await report()).seam!.readings.find(({ file }) => file === 'gauge.csv')!.width_mm!.value).toBe(9);
    // that column is no width of the groove: said once, it stays so for whoever opens the job
    await groove.file('gauge.csv').click();
    await page.getByRole('combobox', { name: 'Column 3 of gauge.csv is' }).selectOption('none');
    await page.getByRole('button', { name: 'read gauge.csv as found again' }).waitFor();
    await groove.measured();
    await expect
      .poll(async () => (await report()).seam!.readings.find(({ file }) => file === 'gauge.csv')!.width_mm)
      .toBeNull();
    await page.evaluate(() => localStorage.clear());
    await page.reload();
    await groove.measured();
    await groove.file('gauge.csv').click();
    expect(await page.getByRole('combobox', { name: 'Column 3 of gauge.csv is' }).inputValue()).toBe('none');
    expect(await cutOff(page)).toEqual([]);
  });

  it('is recorded by a form that begins with the passes of the plan, and earlier revisions come back', async () => {
    const { page, url } = await stage.visit();
    const job = await saveDemoJob(page, url);
    await page.goto(`${job}/record`);
    await page.getByRole('button', { name: 'Begin with the passes of the plan' }).click();
    await page.getByRole('textbox', { name: 'Current, pass 1' }).fill('500');
    const kept = page.getByRole('status', { name: 'Readings kept' });
    await kept.filter({ hasText: /saved as revision/u }).waitFor();
    await page
      .getByRole('list', { name: 'Against the plan' })
      .getByText(/^Pass 1 was not run as planned here: 500 A against/u)
      .waitFor();
    const id = job.split('/').at(-1)!;
    const paper = `${fillPath(API_PATHS.jobPaperPage, { id, file: 'run-record' })}?units=metric`;
    const tab = await page.context().newPage();
    await tab.goto(paper);
    const record = await seenText(tab.locator('body'));
    expect(record).toContain('500 A');
    expect(record).toContain('Pass 1 was not run as planned here: 500 A against');
    // a revision before is told in words and comes back, as a new one
    await page.getByRole('textbox', { name: 'Current, pass 1' }).fill('510');
    await kept.filter({ hasText: /saved as revision 2/u }).waitFor();
    const changes = page.getByRole('region', { name: 'What changed' });
    await changes.getByText(/500 A before, 510 A now/u).waitFor();
    await changes.getByRole('button', { name: 'Put revision 1 back' }).click();
    await kept.filter({ hasText: /saved as revision 3/u }).waitFor();
    expect(await page.getByRole('textbox', { name: 'Current, pass 1' }).inputValue()).toMatch(/^500\b/u);
  });

  it('teaches a shop nothing from what is invented', async () => {
    const { page } = await stage.visit();
    const groove = await new GroovePage(page).open();
    expect(await seenText(groove.region('Verdict'))).toContain('These readings are invented');
    expect(await seenText(groove.region('What it teaches the shop'))).toContain(
      'Invented readings teach nothing.',
    );
    expect(await page.getByRole('button', { name: 'Add to what this shop knows' }).count()).toBe(0);
  });

  it.each(['groove', 'record'])(
    'has nothing on its page %s that the accessibility rules find',
    async (end) => {
      const { page } = await stage.visit();
      if (end === 'groove') await new GroovePage(page).open();
      else {
        await page.goto('/demo/penstock-seam/record');
        await page.getByRole('heading', { name: 'Record of the work' }).waitFor();
      }
      const wrong: unknown[] = [];
      for (const size of Object.values(SCREENS)) {
        await page.setViewportSize(size);
        for (const colorScheme of ['light', 'dark'] as const) {
          await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
          const { violations } = await new AxeBuilder({ page }).setLegacyMode().withTags(RULES).analyze();
          wrong.push(...violations.map(({ id, nodes }) => [id, nodes[0]?.html]));
        }
        wrong.push(...(await cutOff(page)).map((name) => [`${size.width}: ${name} is cut off`]));
      }
      expect(wrong).toEqual([]);
    },
  );
});
