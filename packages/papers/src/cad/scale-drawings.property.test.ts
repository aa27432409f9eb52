import DxfParser, { type ITextEntity } from 'dxf-parser';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exampleJob, samplePlan } from '../sample-plan.test-data.ts';
import { dxfText } from './dxf-text.ts';
import { scaleDrawingToDxf } from './scale-drawing-to-dxf.ts';
import { scaleDrawingToSvg } from './scale-drawing-to-svg.ts';
import { sectionAtScale } from './section-at-scale.ts';

const { job } = exampleJob('casting-wash');
const plan = samplePlan(exampleJob('casting-wash'), { tracks: 2, layers: 1, gauge: false });
const title = fc.oneof(
  fc.string({ unit: 'binary', minLength: 1, maxLength: 60 }),
  fc
    .array(
      fc.constantFrom(
        '\n0\nEOF\n',
        '\r',
        '\u2028',
        '%%c',
        '^J',
        '\\U+0041',
        '</text>',
        '<script>',
        '\u202e',
        'א',
        '😀',
        '&',
        '"',
      ),
      { minLength: 1, maxLength: 12 },
    )
    .map((parts) => parts.join('')),
);

test('no title changes what else a DXF file holds', () => {
  const layersOf = (name: string): { layers: string[]; texts: string[] } => {
    const drawing = sectionAtScale({ job: { ...job, title: name }, plan, units: 'metric' });
    const dxf = new DxfParser().parseSync(scaleDrawingToDxf(drawing));
    const entities = dxf?.entities ?? [];
    return {
      layers: entities.map((entity) => `${entity.type} ${entity.layer}`),
      texts: (entities.filter(({ type }) => type === 'TEXT') as ITextEntity[]).map(({ text }) => text),
    };
  };
  const plain = layersOf('a title').layers;
  expect(plain.length).toBeGreaterThan(10);
  fc.assert(
    fc.property(title, (name) => {
      const { layers, texts } = layersOf(name);
      expect(layers).toEqual(plain);
      expect(texts.join('')).not.toMatch(/[\p{Cc}\p{Cs}]/u);
    }),
    { seed: 7, numRuns: 100 },
  );
});

test('no title changes the elements of an SVG file', () => {
  const elements = (name: string): string[] => {
    const svg = scaleDrawingToSvg(sectionAtScale({ job: { ...job, title: name }, plan, units: 'inch' }));
    expect(svg).not.toMatch(/\p{Cs}/u);
    return [...svg.matchAll(/<\/?([a-z]+)/g)].map(([element]) => element);
  };
  const plain = elements('a title');
  fc.assert(
    fc.property(title, (name) => {
      expect(elements(name)).toEqual(plain);
    }),
    { seed: 8, numRuns: 100 },
  );
});

test.each([
  ['a%%c b', 'a%%%%%%c b'],
  ['50 % of', '50 % of'],
  ['x^J', 'x^ J'],
  ['\\U+0041', '\\ U+0041'],
  ['a\r\n0\nEOF', 'a 0 EOF'],
  ['שלום 12 😀', 'שלום 12 😀'],
])('%j is written as %j', (text, written) => {
  expect(dxfText(text)).toBe(written);
});
