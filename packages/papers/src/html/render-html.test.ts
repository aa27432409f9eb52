import { expect, test } from 'vitest';
import { cardDocument } from '../kinds/index.ts';
import { exampleJob, sampleAnswer, samplePlan } from '../sample-plan.test-data.ts';
import { PAPER_STYLESHEET } from './paper-stylesheet.ts';
import { renderHtml } from './render-html.ts';

const read = exampleJob('penstock-seam');
const plan = samplePlan(read, { tracks: 1, layers: 2, gauge: true });

function page(title: string): string {
  const titled = { ...read, job: { ...read.job, title } };
  return renderHtml(cardDocument(titled, sampleAnswer(titled, plan), { units: 'inch', paper: 'letter' }));
}

test('is one page that takes its style from the sheet alone', () => {
  const html = page('Seam 7');
  expect(html).toContain('<link rel="stylesheet" href="/paper.css">');
  expect(html).not.toMatch(/ style=|<style|<script|javascript:/);
  expect(html).toContain('<main class="paper paper-letter">');
  expect(html.match(/<h1/g)).toHaveLength(1);
});

test('shows markup in a title as text', () => {
  const html = page('<img src=x onerror="alert(1)"> & <b>bold</b>');
  expect(html).toContain('&lt;img src=x onerror=&quot;alert(1)&quot;&gt; &amp; &lt;b&gt;bold&lt;/b&gt;');
  expect(html).not.toMatch(/<img|<b>/);
});

test('keeps right-to-left text and emoji as written, with their own direction', () => {
  expect(page('שלום 12 מ״מ 😀')).toContain('<h1 dir="auto">שלום 12 מ״מ 😀</h1>');
});

test('styles every role that the drawings use', () => {
  const used = new Set([...page('Seam 7').matchAll(/mark mark-\w+ mark-([\w-]+)/g)].map(([, role]) => role));
  expect(used.size).toBeGreaterThan(10);
  for (const role of used) expect(PAPER_STYLESHEET).toContain(`.mark-${role} `);
});
