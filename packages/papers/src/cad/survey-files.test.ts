import { answerJob, answerSurvey, type SurveyReport } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { exampleJob } from '../sample-plan.test-data.ts';
import { surveyFiles } from './survey-files.ts';

const read = exampleJob('penstock-seam');
const answer = answerJob({ job: read, version: '0' });

/** A U that is 12 mm deep, as a scan in millimetres; the name of the file is what it is given. */
function scanText(): string {
  const rows = Array.from({ length: 400 }, (_, i) => {
    const x = -20 + i / 10;
    const t = Math.abs(x);
    const depth = t > 9.2 ? 0 : t < 5.8 ? 6 + Math.sqrt(36 - t * t) : (9.2 - t) * 2.2;
    return `${x.toFixed(3)};${(-Math.min(12, depth) + 0.01 * Math.sin(37 * i)).toFixed(4)}`;
  });
  return ['x (mm);z (mm)', ...rows].join('\n');
}

function surveyed(): SurveyReport {
  const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
  const outcome = answerSurvey({
    files: [
      { name: '=cut, at 1200mm.csv', bytes: bytes(scanText()) },
      { name: 'gauge.csv', bytes: bytes('station (m);depth (mm)\n0.5;13\n3;14\n5;13.5\n') },
    ],
    job: { read, answer, knowledge: undefined },
    version: '0',
  });
  if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
  return outcome.value;
}

const report = surveyed();
const files = new Map(surveyFiles(report).map(({ name, content }) => [name, content()]));

/** Vertices of a DXF file by layer, from its pairs of group code and value. */
function vertices(text: string): Map<string, [number, number][]> {
  const lines = text.trimEnd().split('\n');
  const found = new Map<string, [number, number][]>();
  let entity = '';
  let layer = '';
  let x = Number.NaN;
  for (let i = 0; i < lines.length; i += 2) {
    const [code, value] = [lines[i]!, lines[i + 1]!];
    if (code === '0') entity = value;
    if (code === '8') layer = value;
    if (entity === 'VERTEX' && code === '10') x = Number(value);
    if (entity === 'VERTEX' && code === '20')
      found.set(layer, [...(found.get(layer) ?? []), [x, Number(value)]]);
  }
  return found;
}

describe('the files of a survey', () => {
  it('are named by what they hold', () => {
    expect([...files.keys()]).toEqual([
      'sections.csv',
      'section-1-at-1200mm.dxf',
      'section-1-at-1200mm.svg',
      'depth-curve.csv',
      'depth-curve.dxf',
      'depth-curve.svg',
    ]);
  });

  it('hold each section in a row, its uncertainties and its reasons, and never a formula', () => {
    const [head, row, rest] = files.get('sections.csv')!.split('\r\n');
    expect(rest).toBe('');
    expect(row!.startsWith('"\'=cut, at 1200mm.csv",1200.000,')).toBe(true);
    const names = head!.split(',');
    const cells = row!.replace(/^"[^"]*"/u, 'file').split(',');
    expect(cells).toHaveLength(names.length);
    const of = (name: string): string => cells[names.indexOf(name)]!;
    const [section] = report.sections;
    const depth = section!.depth_mm as { value: number; u95: number };
    expect(depth.value).toBeCloseTo(12, 1);
    expect(Number(of('depth_mm'))).toBeCloseTo(depth.value, 5);
    expect(Number(of('depth_mm_u95'))).toBeCloseTo(depth.u95, 5);
    expect(of('depth_mm_declined')).toBe('');
    expect(of('points_read')).toBe('400');
  });

  it('draw a section below its plate line, point for point, in millimetres', () => {
    const outline = report.sections[0]!.outline!;
    const drawn = vertices(files.get('section-1-at-1200mm.dxf')!);
    expect(drawn.get('MEASURED')).toEqual(
      outline.offset_mm.map((x, i) => [expect.closeTo(x, 3), expect.closeTo(-outline.depth_mm[i]!, 3)]),
    );
    expect(drawn.get('PLATE')!.map(([, y]) => y)).toEqual([0, 0]);
    const svg = files.get('section-1-at-1200mm.svg')!;
    const lowest = Math.max(...[...svg.matchAll(/(-?[\d.]+),(-?[\d.]+)/gu)].map(([, , y]) => Number(y)));
    // the drawing runs downwards, so that the root is its greatest number
    expect(lowest).toBeCloseTo(Math.max(...outline.depth_mm), 2);
    expect(svg).toContain('full size, mm');
  });

  it('tell the depth along the seam with its band, between its limits', () => {
    const { curve, limits } = report.seam!;
    const [head, ...rows] = files.get('depth-curve.csv')!.trimEnd().split('\r\n');
    expect(head).toBe(
      'at_mm,depth_p05_mm,depth_p50_mm,depth_p95_mm,remaining_p05_mm,remaining_p50_mm,remaining_p95_mm',
    );
    expect(rows).toHaveLength(curve.length);
    const [at, p05, p50, p95, r05, , r95] = rows[100]!.split(',').map(Number);
    const place = curve[100]!;
    expect([at, p05, p50, p95, r05, r95]).toEqual(
      [
        place.at_mm,
        place.depth_mm.p05,
        place.depth_mm.p50,
        place.depth_mm.p95,
        place.remaining_mm.p05,
        place.remaining_mm.p95,
      ].map((each) => expect.closeTo(each, 3)),
    );
    const drawn = vertices(files.get('depth-curve.dxf')!);
    expect([...drawn.keys()]).toEqual(['LEAST', 'MOST', 'DEPTH_P05', 'DEPTH_P50', 'DEPTH_P95']);
    expect(drawn.get('LEAST')![0]![1]).toBeCloseTo(-limits.least_mm, 3);
    expect(drawn.get('MOST')![0]![1]).toBeCloseTo(-limits.most_mm, 3);
    expect(drawn.get('DEPTH_P95')![100]![1]).toBeCloseTo(-place.depth_mm.p95, 3);
    expect(files.get('depth-curve.svg')).toContain('the way along shortened 1:15.0');
  });
});
