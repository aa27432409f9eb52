import { expect, test } from 'vitest';
import type { Drawing } from './drawing.ts';
import { drawingToSvg } from './drawing-to-svg.ts';

const drawing: Drawing = {
  width: 100,
  height: 50,
  title: 'A "title" <b>',
  description: `it's & more`,
  marks: [
    { kind: 'text', role: 'label', at: { x: 1, y: 2.34567 }, text: '<script>', anchor: 'end', size: 9 },
    { kind: 'line', role: 'surface', from: { x: 0, y: 0 }, to: { x: -0, y: 5 } },
    { kind: 'dimension', role: 'dimension', from: { x: 0, y: 0 }, to: { x: 0, y: 30 }, arrow: 6 },
  ],
};

test('escapes every text and names the drawing for those who cannot see it', () => {
  const svg = drawingToSvg(drawing);
  expect(svg).toContain('role="img"');
  expect(svg).toContain('<title>A &quot;title&quot; &lt;b&gt;</title>');
  expect(svg).toContain('<desc>it&#39;s &amp; more</desc>');
  expect(svg).toContain('&lt;script&gt;');
  expect(svg).not.toContain('<script');
});

test('carries classes by role and no style of its own', () => {
  const svg = drawingToSvg(drawing);
  expect(svg).toContain('class="mark mark-line mark-surface"');
  expect(svg).toContain('y="2.35"');
  expect(svg).not.toContain('style=');
  expect(svg).not.toContain('-0"');
});
