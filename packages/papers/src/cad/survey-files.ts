import type { SurveyReport } from '@furrow/engine';

/** A file of a survey. */
export interface SurveyFile {
  readonly name: string;
  /** Number of the section it draws, from 1; undefined for a file of all. */
  readonly section?: number;
  /** Writes it: of a scanned seam there are hundreds, of which one is wanted. */
  readonly content: () => string;
}

/** A line through points [mm], on a layer of a drawing. */
interface Polyline {
  readonly layer: string;
  readonly points: readonly (readonly [x: number, y: number])[];
}

/** Sections and depth curve of a survey as CSV (one row per section, one per place), DXF and SVG in millimetres. */
export function surveyFiles(report: SurveyReport): readonly SurveyFile[] {
  const { sections, seam } = report;
  return [
    ...(sections.length === 0 ? [] : [{ name: 'sections.csv', content: () => sectionsCsv(report) }]),
    ...sections.flatMap(({ outline, station_mm }, i) => {
      if (outline === null) return [];
      const name = `section-${i + 1}${station_mm === null ? '' : `-at-${Math.round(station_mm)}mm`}`;
      const lines: Polyline[] = [
        {
          layer: 'PLATE',
          points: [
            [outline.offset_mm[0]!, 0],
            [outline.offset_mm.at(-1)!, 0],
          ],
        },
        { layer: 'MEASURED', points: outline.offset_mm.map((x, k) => [x, -outline.depth_mm[k]!] as const) },
      ];
      return [
        { name: `${name}.dxf`, section: i + 1, content: () => dxf(lines) },
        { name: `${name}.svg`, section: i + 1, content: () => svg(lines, name, 1) },
      ];
    }),
    ...(seam === null ? [] : curveFiles(seam)),
  ];
}

function curveFiles(seam: NonNullable<SurveyReport['seam']>): SurveyFile[] {
  const { curve, limits } = seam;
  const last = curve.at(-1)!.at_mm;
  const level = (layer: string, depth: number): Polyline => ({
    layer,
    points: [
      [curve[0]!.at_mm, -depth],
      [last, -depth],
    ],
  });
  const course = (layer: string, of: 'p05' | 'p50' | 'p95'): Polyline => ({
    layer,
    points: curve.map(({ at_mm, depth_mm }) => [at_mm, -depth_mm[of]] as const),
  });
  const lines = [
    level('LEAST', limits.least_mm),
    level('MOST', limits.most_mm),
    course('DEPTH_P05', 'p05'),
    course('DEPTH_P50', 'p50'),
    course('DEPTH_P95', 'p95'),
  ];
  const rows = curve.map(({ at_mm, depth_mm, remaining_mm }) =>
    [at_mm, depth_mm.p05, depth_mm.p50, depth_mm.p95, remaining_mm.p05, remaining_mm.p50, remaining_mm.p95]
      .map((each) => each.toFixed(4))
      .join(','),
  );
  return [
    {
      name: 'depth-curve.csv',
      content: () =>
        `${['at_mm,depth_p05_mm,depth_p50_mm,depth_p95_mm,remaining_p05_mm,remaining_p50_mm,remaining_p95_mm', ...rows].join('\r\n')}\r\n`,
    },
    { name: 'depth-curve.dxf', content: () => dxf(lines) },
    { name: 'depth-curve.svg', content: () => svg(lines, 'depth along the seam', last / 400) },
  ];
}

const QUANTITIES = [
  'depth_mm',
  'width_mm',
  'root_radius_mm',
  'wall_left_deg',
  'wall_right_deg',
  'area_mm2',
  'plate_step_mm',
  'tilt_deg',
] as const;

function sectionsCsv({ sections }: SurveyReport): string {
  const head = [
    'file',
    'station_mm',
    ...QUANTITIES.flatMap((name) => [name, `${name}_u95`, `${name}_declined`]),
    'points_read',
    'points_missing',
    'outlier_rows',
  ];
  const rows = sections.map((section) => [
    section.file,
    section.station_mm === null ? '' : section.station_mm.toFixed(3),
    ...QUANTITIES.flatMap((name) => {
      const quantity = section[name];
      return 'declined' in quantity
        ? ['', '', quantity.declined]
        : [quantity.value.toFixed(5), quantity.u95.toFixed(5), ''];
    }),
    String(section.points.read),
    String(section.points.missing),
    section.points.outliers.join(' '),
  ]);
  return `${[head, ...rows].map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`;
}

/** A cell that a spreadsheet takes as text, never as a formula. */
function cell(text: string): string {
  const safe = /^[=+@\t\r]/u.test(text) ? `'${text}` : text;
  return /[",\r\n]/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Polylines as DXF (R12: what every program reads), drawing unit millimetre. */
function dxf(lines: readonly Polyline[]): string {
  const pairs: (string | number)[] = [
    '0',
    'SECTION',
    '2',
    'HEADER',
    '9',
    '$ACADVER',
    '1',
    'AC1009',
    '0',
    'ENDSEC',
    '0',
    'SECTION',
    '2',
    'ENTITIES',
  ];
  for (const { layer, points } of lines) {
    pairs.push('0', 'POLYLINE', '8', layer, '66', '1', '10', '0.0', '20', '0.0', '30', '0.0', '70', '0');
    for (const [x, y] of points)
      pairs.push('0', 'VERTEX', '8', layer, '10', x.toFixed(4), '20', y.toFixed(4), '30', '0.0');
    pairs.push('0', 'SEQEND', '8', layer);
  }
  pairs.push('0', 'ENDSEC', '0', 'EOF');
  return `${pairs.join('\n')}\n`;
}

const STROKES: Readonly<Record<string, string>> = {
  PLATE: 'stroke="#555" stroke-dasharray="2 1"',
  LEAST: 'stroke="#555" stroke-dasharray="2 1"',
  MOST: 'stroke="#555" stroke-dasharray="2 1"',
  DEPTH_P05: 'stroke="#888"',
  DEPTH_P95: 'stroke="#888"',
};

/** Polylines as SVG at full size; `squeeze` shortens the way along, which is then said. */
function svg(lines: readonly Polyline[], title: string, squeeze: number): string {
  const all = lines.flatMap(({ points }) => points.map(([x, y]) => [x / squeeze, -y] as const));
  const xs = all.map(([x]) => x);
  const ys = all.map(([, y]) => y);
  const [left, right] = [xs.reduce((a, b) => Math.min(a, b)) - 2, xs.reduce((a, b) => Math.max(a, b)) + 2];
  const [top, bottom] = [ys.reduce((a, b) => Math.min(a, b)) - 2, ys.reduce((a, b) => Math.max(a, b)) + 2];
  const note =
    squeeze === 1 ? 'full size, mm' : `depth at full size, the way along shortened 1:${squeeze.toFixed(1)}`;
  const paths = lines.map(
    ({ layer, points }) =>
      `<polyline fill="none" stroke-width="0.2" ${STROKES[layer] ?? 'stroke="#000"'} points="${points.map(([x, y]) => `${(x / squeeze).toFixed(3)},${(-y).toFixed(3)}`).join(' ')}"><title>${layer}</title></polyline>`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${(right - left).toFixed(2)}mm" height="${(bottom - top).toFixed(2)}mm" viewBox="${left.toFixed(3)} ${top.toFixed(3)} ${(right - left).toFixed(3)} ${(bottom - top).toFixed(3)}"><title>${title}: ${note}</title>${paths.join('')}</svg>\n`;
}
