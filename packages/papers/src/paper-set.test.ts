import { readFileSync } from 'node:fs';
import { answerJob, readKit, readReadings } from '@furrow/engine';
import { describe, expect, test } from 'vitest';
import { renderHtml } from './html/index.ts';
import { makePaper, PAPER_KINDS, type PaperSubject, paperWanting, subjectFor } from './kinds/index.ts';
import { pdfContent } from './pdf/pdf-text.test-data.ts';
import { renderPaperPdf } from './pdf/render-pdf.ts';
import { exampleJob } from './sample-plan.test-data.ts';

const EXAMPLES = new URL('../../../examples/', import.meta.url);

function readValue<Value>(
  outcome: { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly issues: object },
): Value {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

const read = exampleJob('penstock-seam');
const kit = readValue(readKit(readFileSync(new URL('yard-kit.yaml', EXAMPLES), 'utf8')));
const readings = readValue(
  readReadings(readFileSync(new URL('readings/penstock-seam.yaml', EXAMPLES), 'utf8')),
);
const whole: PaperSubject = subjectFor('procedure-sheet', {
  read,
  answer: answerJob({ job: read, version: '0.1.0', kit }),
  kit,
});
const refused: PaperSubject = (() => {
  const thin = { ...read, job: { ...read.job, plate: { ...read.job.plate, thickness: 0.021 } } };
  return { read: thin, answer: answerJob({ job: thin, version: '0.1.0', kit }), kit };
})();

describe.each(PAPER_KINDS)('%s', (kind) => {
  test.each([
    ['a4', 'metric'],
    ['letter', 'inch'],
  ] as const)(
    'on %s in %s has its revision and page number on every page, and is tagged',
    async (paper, units) => {
      const document = makePaper(kind, whole, { units, paper, revision_number: 3 });
      const pdf = await renderPaperPdf(document);
      const { pages, text, tags } = pdfContent(pdf.bytes);
      expect(pages).toBe(pdf.pages);
      if (kind === 'set-up-card') expect(pages).toBeLessThanOrEqual(2);
      expect(text.split(`job revision 3, ${read.revision.slice(0, 12)}`)).toHaveLength(pages + 1);
      for (let page = 1; page <= pages; page += 1) expect(text).toContain(`page ${page} of ${pages}`);
      expect(text).toContain(read.job.title);
      for (const tag of ['Document', 'H1', 'Table', 'TR', 'TH', 'TD', 'Figure']) expect(tags).toContain(tag);
      expect(text).not.toMatch(/NaN|undefined|Infinity|\[object/);
      expect(renderHtml(document)).not.toMatch(/NaN|undefined|Infinity|\[object/);
    },
  );

  test('carries no setting to run where the job is refused', async () => {
    expect(refused.answer.plan).toBeUndefined();
    const { bytes } = await renderPaperPdf(makePaper(kind, refused, { units: 'metric', paper: 'a4' }));
    expect(pdfContent(bytes).text).not.toMatch(/NaN|undefined|Infinity|travel \d/);
  });
});

test('without a kit there is nothing to connect and to read, so that paper is wanting', () => {
  const answer = answerJob({ job: read, version: '0.1.0' });
  expect(PAPER_KINDS.filter((kind) => paperWanting(kind, { answer }) !== undefined)).toEqual([
    'commissioning-sheet',
  ]);
});

describe('what was read is filled in', () => {
  const filled: PaperSubject = {
    ...whole,
    readings,
    checked: {
      current: { text: '600 A', value: 600, note: 'clamp meter' },
      polarity: { text: 'yes', value: null, note: '' },
    },
  };
  const html = (kind: (typeof PAPER_KINDS)[number], subject = filled): string =>
    renderHtml(makePaper(kind, subject, { units: 'metric', paper: 'a4' })).replaceAll('\u00a0', ' ');

  test('in the groove report, with a verdict for each place', () => {
    expect(html('groove-report')).toContain('6 places gauged: 5 hold, 0 tight, 1 fails');
    expect(html('groove-report')).toContain('depth 4.9 mm, at least 12.0 mm wanted; where the arc went out');
    expect(html('groove-report', whole)).toContain('to be filled in');
  });

  test('in the groove report, with the verdict along the seam, what mends it, and how it was measured', () => {
    const bytes = readFileSync(new URL('readings/penstock-seam.yaml', EXAMPLES));
    const subject = subjectFor('groove-report', { ...filled, measured: [{ name: 'readings', bytes }] });
    const report = html('groove-report', subject);
    expect(report).toContain('The groove fails: ');
    expect(report).toMatch(/To mend 3\.\d+ m to 3\.\d+ m/u);
    expect(report).toContain('Measured by: Second hand.');
    expect(report).toContain('Gauge against a block of 12.0 mm: off by 0.043 mm');
    expect(report).toContain('Checked by Second hand, 2026-03-04 07:40.');
    expect(report).toContain('One depth reading by hand');
    // what the job states of its gauge, with the little that the check adds
    const sd = read.job.kit.gauge.reading_sd;
    const told = Number(/One depth reading by hand.*?(0\.\d{3}) mm/su.exec(report)?.[1]);
    expect(told / 1000 / sd).toBeGreaterThan(1);
    expect(told / 1000 / sd).toBeLessThan(1.02);
    expect(report).toContain('and its check against a block');
    expect(html('groove-report')).not.toContain('Measured by');
  });

  test('in the run record, with what happened and who was there', () => {
    const record = html('run-record');
    expect(record).toContain('arc out for two seconds');
    expect(record).toContain('fire watch');
    expect(record).toContain('after layer 1');
    expect(record).toContain('9.7 mm');
    expect(record).toContain('4.30 m');
    expect(html('run-record', whole)).not.toContain('arc out for two seconds');
  });

  test('in the commissioning sheet, with what a reading says of its band', () => {
    const sheet = html('commissioning-sheet');
    expect(sheet).toContain('600 A (clamp meter)');
    expect(sheet).toContain('LOW');
    expect(html('commissioning-sheet', whole)).not.toContain('LOW');
  });

  test('and a record of another revision is told to be one', () => {
    const other = { ...readings, readings: { ...readings.readings, job_revision: 'abcdef123456' } };
    expect(html('groove-report', { ...filled, readings: other })).toContain(
      'The readings name revision abcdef123456 of the job',
    );
    const same = { ...readings.readings, job_revision: read.revision.slice(0, 8).toUpperCase() };
    expect(html('groove-report', { ...filled, readings: { ...readings, readings: same } })).not.toContain(
      'The readings name revision',
    );
  });
});
