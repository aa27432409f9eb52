import { targetOutline } from '@furrow/engine';
import DxfParser, { type ILwpolylineEntity } from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { exampleJob, samplePlan } from '../sample-plan.test-data.ts';
import { scaleDrawingToDxf } from './scale-drawing-to-dxf.ts';
import { scaleDrawingToSvg } from './scale-drawing-to-svg.ts';
import { sectionAtScale } from './section-at-scale.ts';

const { job } = exampleJob('penstock-seam');
const plan = samplePlan(exampleJob('penstock-seam'), { tracks: 1, layers: 2, gauge: true });

function parsed(units: 'inch' | 'metric') {
  const dxf = new DxfParser().parseSync(scaleDrawingToDxf(sectionAtScale({ job, plan, units })));
  if (dxf === null) throw new Error('the reader found no drawing');
  const polylines = dxf.entities.filter(({ type }) => type === 'LWPOLYLINE') as ILwpolylineEntity[];
  return { dxf, on: (layer: string) => polylines.filter((line) => line.layer === layer) };
}

describe.each([
  ['metric', 4, 1000],
  ['inch', 1, 1 / 0.0254],
] as const)('the section as DXF in %s, read back by another program', (units, insunits, perMetre) => {
  const { dxf, on } = parsed(units);

  test('says its unit', () => {
    expect(dxf.header['$INSUNITS']).toBe(insunits);
  });

  test.each([
    ['WANTED', 'wanted'],
    ['LEAST_ACCEPTED', 'least'],
    ['MOST_ACCEPTED', 'most'],
  ] as const)('has %s as one closed line with the exact corners of the job', (layer, outline) => {
    const [line, ...more] = on(layer);
    expect(more).toEqual([]);
    expect(line?.shape).toBe(true);
    const corners = targetOutline(job.groove, outline);
    expect(line?.vertices).toHaveLength(corners.length);
    line?.vertices.forEach(({ x, y }, index) => {
      expect(x).toBeCloseTo(corners[index]!.offset * perMetre, 8);
      expect(y).toBeCloseTo(-corners[index]!.depth * perMetre, 8);
    });
  });

  test('has the plate as one closed line as thick as the plate, with the groove cut out of it', () => {
    const [plate] = on('PLATE');
    expect(plate?.shape).toBe(true);
    const ys = plate!.vertices.map(({ y }) => y);
    expect(Math.max(...ys)).toBe(0);
    expect(Math.min(...ys)).toBeCloseTo(-job.plate.thickness * perMetre, 8);
    const above = ys.filter((y) => y > -0.9 * job.plate.thickness * perMetre);
    expect(Math.min(...above)).toBeCloseTo(-job.groove.depth.wanted * perMetre, 8);
  });

  test('has the ligament where the job wants it, and the expected floor of the plan', () => {
    const [ligament] = on('LIGAMENT');
    expect(ligament?.shape).toBe(false);
    const height = (job.groove.ligament_least - job.plate.thickness) * perMetre;
    for (const { y } of ligament!.vertices) expect(y).toBeCloseTo(height, 8);
    const [floor] = on('EXPECTED');
    expect(floor?.shape).toBe(true);
    const deepest = Math.max(...plan.section.depth_p50_mm) / 1000;
    expect(Math.min(...floor!.vertices.map(({ y }) => y))).toBeCloseTo(-deepest * perMetre, 6);
  });
});

test('the section as SVG is at full size in millimetres', () => {
  const svg = scaleDrawingToSvg(sectionAtScale({ job, plan, units: 'inch' }));
  const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg)!;
  const box = /viewBox="([-\d.]+) ([-\d.]+) ([\d.]+) ([\d.]+)"/.exec(svg)!.slice(1).map(Number);
  expect(box.slice(2)).toEqual([Number(width), Number(height)]);
  const wanted = /<g id="WANTED"[^>]*>\n<polygon points="([^"]+)"/.exec(svg)![1]!.split(' ');
  const corners = targetOutline(job.groove, 'wanted');
  wanted.forEach((point, index) => {
    const [x, y] = point.split(',').map(Number);
    expect(x).toBeCloseTo(corners[index]!.offset * 1000, 5);
    expect(y).toBeCloseTo(corners[index]!.depth * 1000, 5);
  });
});
