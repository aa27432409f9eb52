import { readFileSync } from 'node:fs';
import { answerJob, type PlaceReport, readKit } from '@furrow/engine';
import DxfParser, { type ILwpolylineEntity, type ITextEntity } from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { exampleJob, samplePlan } from '../sample-plan.test-data.ts';
import { bayAtScale } from './bay-at-scale.ts';
import { scaleDrawingToDxf } from './scale-drawing-to-dxf.ts';
import { scaleDrawingToSvg } from './scale-drawing-to-svg.ts';
import { seamStripAtScale } from './seam-strip-at-scale.ts';

const read = exampleJob('defect-pocket');

function entities(dxf: string) {
  const drawing = new DxfParser().parseSync(dxf);
  if (drawing === null) throw new Error('the reader found no drawing');
  return {
    lines: (layer: string) =>
      drawing.entities.filter(
        (entity) => entity.type === 'LWPOLYLINE' && entity.layer === layer,
      ) as ILwpolylineEntity[],
    texts: (drawing.entities.filter(({ type }) => type === 'TEXT') as ITextEntity[]).map(({ text }) => text),
  };
}

describe('the seam strip at scale', () => {
  const plan = samplePlan(read, { tracks: 2, layers: 2, gauge: true });
  const drawing = seamStripAtScale({ job: read.job, plan, units: 'metric' });
  const { lines, texts } = entities(scaleDrawingToDxf(drawing));
  const { length } = read.job.seam;

  test('has the seam at full length, and a closed bar for each pass', () => {
    expect(lines('SEAM')[0]?.vertices.map(({ x }) => x)).toEqual([0, length * 1000]);
    expect(lines('PASS')).toHaveLength(4);
    for (const bar of lines('PASS')) {
      expect(bar.shape).toBe(true);
      expect(Math.max(...bar.vertices.map(({ x }) => x))).toBeCloseTo(length * 1000, 6);
    }
  });

  test('has stations and run-outs where the plan puts them', () => {
    const tips = lines('GAUGE_STATION').map(({ vertices }) => vertices[2]!.x);
    const stations = plan.gauge_stops.flatMap((stop) => stop.station_positions_mm);
    expect(tips).toHaveLength(stations.length);
    tips.forEach((tip, index) => {
      expect(tip).toBeCloseTo(stations[index]!, 6);
    });
    const runOut = (plan.pass_length_mm - length * 1000) / 2;
    expect(Math.min(...lines('RUN_OUT').flatMap(({ vertices }) => vertices.map(({ x }) => x)))).toBeCloseTo(
      -runOut,
      6,
    );
    expect(texts).toContain('pass 1, layer 1, 700 mm/min');
  });
});

test('electrode changes lie where electrodes run out', () => {
  const long = exampleJob('penstock-seam');
  const plan = samplePlan(long, { tracks: 1, layers: 1, gauge: false });
  const { lines } = entities(scaleDrawingToDxf(seamStripAtScale({ job: long.job, plan, units: 'inch' })));
  const places = lines('ELECTRODE_CHANGE').map(({ vertices }) => vertices[0]!.x);
  expect(places).toHaveLength(plan.electrode_changes.length);
  places.forEach((place, index) => {
    expect(place).toBeCloseTo(plan.electrode_changes[index]!.at_mm / 25.4, 6);
  });
});

describe('the bay at scale', () => {
  const kit = readKit(readFileSync(new URL('../../../../examples/yard-kit.yaml', import.meta.url), 'utf8'));
  if (!kit.ok) throw new Error(kit.issues[0]?.message);
  const answer = answerJob({ job: exampleJob('penstock-seam'), version: '0.1.0', kit: kit.value });
  const place = answer.supply?.place as PlaceReport;
  const dxf = scaleDrawingToDxf(bayAtScale(place, 'a job', 'metric'));
  const { lines, texts } = entities(dxf);

  test('has the bay, the seam and the ways as the kit states them', () => {
    const [bay] = lines('BAY');
    expect(bay?.shape).toBe(true);
    expect(bay?.vertices.map(({ x, y }) => [x, y])).toEqual(
      place.bay.outline_m.map(({ x_m, y_m }) => [x_m * 1000, y_m * 1000]),
    );
    expect(lines('SEAM')[0]?.vertices.map(({ x, y }) => [x, y])).toEqual(
      place.bay.seam_m.map(({ x_m, y_m }) => [x_m * 1000, y_m * 1000]),
    );
    const routes = ['ELECTRODE_LEAD', 'WORK_LEAD', 'AIR_HOSE'].flatMap(lines);
    expect(routes).toHaveLength(place.routes.length);
    expect(texts).toContain('control station');
  });

  test('keeps the station as far from the seam as the kit asks', () => {
    const [band] = lines('KEEP_CLEAR');
    const [start] = place.bay.seam_m;
    const distances = band!.vertices.map(({ x, y }) =>
      Math.hypot(x / 1000 - start!.x_m, y / 1000 - start!.y_m),
    );
    expect(Math.min(...distances)).toBeCloseTo(place.bay.keep_out_m, 6);
  });

  test('is the same bytes twice', () => {
    expect(scaleDrawingToDxf(bayAtScale(place, 'a job', 'metric'))).toBe(dxf);
    expect(scaleDrawingToSvg(bayAtScale(place, 'a job', 'metric'))).not.toMatch(/NaN|Infinity/);
  });
});
