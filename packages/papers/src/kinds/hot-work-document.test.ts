import { readFileSync } from 'node:fs';
import { answerHazard, answerJob, readJob, readKit } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import type { PaperBlock } from '../blocks/index.ts';
import { pdfContent } from '../pdf/pdf-text.test-data.ts';
import { renderPdf } from '../pdf/render-pdf.ts';
import { hotWorkDocument } from './hot-work-document.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8');
const read = readJob(example('penstock-seam'));
const kit = readKit(example('yard-kit'));
if (!read.ok || !kit.ok) throw new Error('the examples cannot be read');
const subject = {
  read: read.value,
  answer: answerJob({ job: read.value, version: 'test', kit: kit.value }),
  kit: kit.value,
};
const report = answerHazard(read.value, subject.answer, kit.value);

const all = (blocks: readonly PaperBlock[]): readonly PaperBlock[] =>
  blocks.flatMap((block) =>
    block.kind === 'columns' ? block.columns.flatMap((column) => all(column.blocks)) : [block],
  );

describe.each(['metric', 'inch'] as const)('the hot-work sheet in %s units', (units) => {
  const paper = hotWorkDocument(subject, { units, paper: 'letter' });
  const blocks = all(paper.blocks);
  const lists = blocks.flatMap((block) => (block.kind === 'list' ? [block.items] : []));

  it('carries cautions and conditions to stop in full, and permits nothing', () => {
    expect(lists).toContainEqual(report.cautions);
    expect(lists).toContainEqual(report.stop_work);
    expect(JSON.stringify(blocks)).toContain('Nothing here permits work');
  });

  it('puts what is short of a figure named first, and the set minimum beside the conditions to stop', () => {
    const [first] = lists;
    for (const { of, verdict } of report.breaches) expect(first!.join(' ')).toContain(`${of}, ${verdict}: `);
    expect(first!.join(' ')).toMatch(/\d+ more rules in the annex/u);
    expect(JSON.stringify(first).length).toBeLessThan(1200);
    expect(first!.join(' ')).toMatch(
      /^Fire, short of the figure named: .*ahead along the jet (?:59 ft 1 in|18\.00 m)/u,
    );
    const text = JSON.stringify(blocks);
    expect(text).toContain(
      units === 'metric'
        ? 'Preheat: none stated; the figures assume a plate at 82 °C, as for the re-weld. Before each further pass: at most 250 °C'
        : 'Preheat: none stated; the figures assume a plate at 180 °F, as for the re-weld. Before each further pass: at most 482 °F',
    );
  });

  it('shows the shade that advice asks for beside the least', () => {
    const shade = blocks
      .flatMap((block) => (block.kind === 'figures' ? block.items : []))
      .find(({ label }) => label === 'Filter shade');
    expect(shade?.value).toMatch(/^14–15$|^15$/u);
  });

  it('tells implant wearers to stay out, in big letters, and no distance', () => {
    const figures = blocks.flatMap((block) => (block.kind === 'figures' ? block.items : []));
    expect(figures.find(({ label }) => label === 'Implant wearers')).toMatchObject({ value: 'stay out' });
  });

  it('leaves places for permit, checks, watch and signatures', () => {
    const fields = blocks.flatMap((block) => (block.kind === 'fields' ? block.items : []));
    expect(fields.map(({ label }) => label)).toContain('Hot-work permit number');
    expect(fields.every((field) => field.value === undefined)).toBe(true);
    const hand = blocks.flatMap((block) => (block.kind === 'table' && block.hand ? [block] : []));
    expect(hand.map(({ caption }) => caption)).toEqual([
      'Before the first arc',
      expect.stringContaining(`for ${report.fire_zone.watch_min} min after`),
    ]);
    // a round every ten minutes of the watch, and some while the arc burns
    expect(hand[1]!.rows.length).toBeGreaterThan(report.fire_zone.watch_min / 10);
    const signatures = blocks.find((block) => block.kind === 'signatures');
    expect(signatures?.roles).toContain('Fire watch');
  });

  it('is a permit on its first page, signed there, with checks and rules behind it', async () => {
    const { pages } = pdfContent(await renderPdf(paper));
    const kinds = paper.blocks.map((block) =>
      block.kind === 'heading' && block.new_page === true ? 'page' : block.kind,
    );
    const first = kinds.slice(0, kinds.indexOf('page'));
    expect(first.at(-1)).toBe('signatures');
    expect(first).not.toContain('table');
    expect(kinds.filter((kind) => kind === 'page')).toHaveLength(2);
    // the permit keeps to one page, and so do checks and watch
    const { pages: alone } = pdfContent(
      await renderPdf({ ...paper, blocks: paper.blocks.slice(0, kinds.lastIndexOf('page')) }),
    );
    expect([alone, pages >= 3]).toEqual([2, true]);
  });

  it('has a text in every cell of every table', () => {
    for (const block of blocks) {
      if (block.kind !== 'table') continue;
      for (const row of block.rows) expect(row).toHaveLength(block.columns.length);
    }
  });

  it('shows every wording of the report, each with its source', () => {
    const cells = blocks.flatMap((block) => (block.kind === 'table' ? block.rows.flat() : []));
    for (const { rule, verdict } of report.sections.flatMap(({ rows }) => rows)) {
      expect(cells).toContain(rule);
      expect(cells).toContain(verdict);
    }
  });
});

it('is made for a refused job and without a kit as well', () => {
  const refused = readJob(example('penstock-seam').replace('plus: 6 mm', 'plus: 0.2 mm'));
  if (!refused.ok) throw new Error('the refused job cannot be read');
  const paper = hotWorkDocument(
    { read: refused.value, answer: answerJob({ job: refused.value, version: 'test' }) },
    { units: 'metric', paper: 'letter' },
  );
  expect(JSON.stringify(paper.blocks)).toContain('no row');
});
