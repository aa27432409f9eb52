import { describe, expect, it } from 'vitest';
import { measureSection } from '../section/measure-section.ts';
import { scanGroove, uGroove } from '../section/profiler.test-support.ts';
import { readSurveyFile, type SurveyFile } from './read-survey-file.ts';

const U = uGroove(0.012, 0.006, 0.26);

function bytes(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

function read(name: string, text: string | Uint8Array, given = {}): SurveyFile {
  const outcome = readSurveyFile(name, typeof text === 'string' ? bytes(text) : text, given);
  if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
  return outcome.value;
}

function why(text: string): string {
  const outcome = readSurveyFile('file', bytes(text));
  if (outcome.ok) throw new Error('it was read');
  expect(outcome.issues[0]?.code).toBe('SURVEY_NOT_READABLE');
  return outcome.issues[0]!.message;
}

function scanText(scale: number, digits: number, header: string, sign = 1): string {
  const { across, height } = scanGroove(U, { noise: 2e-5, seed: 4, dropouts: 0.02 });
  const rows = [...across].map(
    (y, i) =>
      `${(y * scale).toFixed(digits)},${Number.isNaN(height[i]!) ? '-999' : (sign * height[i]! * scale).toFixed(digits)}`,
  );
  return [header, ...rows].join('\n');
}

function depthOf(file: SurveyFile, section = 0): number {
  const { depth } = measureSection(file.sections[section]!);
  if ('declined' in depth) throw new Error(depth.declined);
  return depth.value;
}

describe('a gauge table', () => {
  it('is read with decimal commas, units in the header, and gaps', () => {
    const { stations, kind } = read(
      'g.csv',
      'Station [mm];Depth [mm];Width [mm]\n100;12,4;19\n200;;18\n300;12,9;\n',
    );
    expect(kind).toBe('stations');
    expect(stations).toEqual([
      {
        at: expect.closeTo(0.1, 9),
        depth: expect.closeTo(0.0124, 9),
        width: expect.closeTo(0.019, 9),
        row: 1,
      },
      { at: expect.closeTo(0.3, 9), depth: expect.closeTo(0.0129, 9), row: 3 },
    ]);
  });

  it('without units takes the one that the numbers can be, says so, and lets a person correct it', () => {
    const file = read('g.csv', 'station,depth\n4,0.47\n9,0.49\n');
    expect(file.stations[0]!.depth).toBeCloseTo(0.47 * 0.0254, 9);
    expect(file.choices.find(({ about }) => about === 'unit')).toEqual({
      about: 'unit',
      says: 'no unit is stated: in taken by the size of the numbers',
      sure: false,
    });
    expect(read('g.csv', 'station,depth\n4,0.47\n9,0.49\n', { unit: 'cm' }).stations[0]!.depth).toBeCloseTo(
      0.0047,
      9,
    );
  });

  it('is also the stations of a readings file', () => {
    const { stations } = read('r.yaml', 'furrow_readings: 1\nstations:\n  - { at: 60 cm, depth: 12.4 mm }\n');
    expect(stations).toEqual([{ at: 0.6, depth: expect.closeTo(0.0124, 12), row: 1 }]);
  });
});

describe('scanned sections', () => {
  it.each([
    ['x [mm],z [mm]', 1000, 3, 1],
    ['x (in),height (in)', 1 / 0.0254, 5, 1],
    ['x_m,z_m', 1, 6, 1],
    ['x [mm],range [mm]', 1000, 3, -1],
  ])('%s', (header, scale, digits, sign) => {
    const file = read('section-1200mm.csv', scanText(scale, digits, header, sign));
    expect(file.kind).toBe('sections');
    expect(file.sections[0]!.station).toBeCloseTo(1.2, 9);
    expect(depthOf(file)).toBeCloseTo(0.012, 4);
    expect(measureSection(file.sections[0]!).points.missing).toBeGreaterThan(3);
  });

  it('are told apart by their station, and bare numbers are x and z', () => {
    const body = scanText(1000, 3, '').trim().split('\n');
    const two = [
      'station_mm,x_mm,z_mm',
      ...body.map((row) => `100,${row}`),
      ...body.map((row) => `250,${row}`),
    ];
    const file = read('s.csv', two.join('\n'));
    expect(file.sections.map(({ station }) => station)).toEqual([
      expect.closeTo(0.1, 9),
      expect.closeTo(0.25, 9),
    ]);
    expect(depthOf(file, 1)).toBeCloseTo(0.012, 4);
    expect(depthOf(read('bare.txt', body.join('\n')))).toBeCloseTo(0.012, 4);
  });
});

/** A cloud of a straight groove, turned about the upright and tilted. */
function cloud(turn: number): number[][] {
  const points: number[][] = [];
  for (let k = 0; k < 60; k += 1) {
    const { across, height } = scanGroove(U, { noise: 2e-5, seed: 100 + k, points: 220, tilt: 0.03 });
    across.forEach((y, i) => {
      const x = k * 0.004;
      points.push([
        1000 * (x * Math.cos(turn) - y * Math.sin(turn)),
        1000 * (x * Math.sin(turn) + y * Math.cos(turn)),
        1000 * height[i]!,
      ]);
    });
  }
  return points;
}

const HEADER = (format: string, count: number) =>
  `ply\nformat ${format} 1.0\ncomment made up\nelement vertex ${count}\nproperty float x\nproperty uchar red\nproperty float y\nproperty float z\nelement face 0\nproperty list uchar int vertex_indices\nend_header\n`;

function ply(points: readonly number[][], format: string): Uint8Array {
  const head = bytes(HEADER(format, points.length));
  if (format === 'ascii')
    return bytes(HEADER(format, points.length) + points.map(([x, y, z]) => `${x} 7 ${y} ${z}`).join('\n'));
  const out = new Uint8Array(head.length + 13 * points.length);
  out.set(head);
  const view = new DataView(out.buffer);
  points.forEach(([x, y, z], i) => {
    const at = head.length + 13 * i;
    const little = format === 'binary_little_endian';
    view.setFloat32(at, x!, little);
    view.setUint8(at + 4, 7);
    view.setFloat32(at + 5, y!, little);
    view.setFloat32(at + 9, z!, little);
  });
  return out;
}

describe('a cloud', () => {
  it.each(['ascii', 'binary_little_endian', 'binary_big_endian'])(
    'as PLY, %s, is cut into sections along its seam',
    (format) => {
      const file = read('c.ply', ply(cloud(0.6), format));
      expect(file.kind).toBe('cloud');
      const depths = file.sections.map((_, i) => depthOf(file, i));
      expect(depths.length).toBeGreaterThan(20);
      for (const depth of depths) expect(Math.abs(depth - 0.012)).toBeLessThan(6e-5);
      expect(file.sections.at(-1)!.station).toBeCloseTo(0.236 * (1 - 0.5 / depths.length), 2);
    },
  );

  it('as XYZ is the same', () => {
    const file = read(
      'c.xyz',
      cloud(0.6)
        .map((point) => point.join(' '))
        .join('\n'),
    );
    expect(file.kind).toBe('cloud');
    expect(depthOf(file, 5)).toBeCloseTo(0.012, 4);
  });
});

describe('points on a grid', () => {
  const grid = (alongStep: number, turned: boolean) =>
    Array.from({ length: 60 }, (_, i) =>
      Array.from({ length: 120 }, (_each, k) => {
        const [along, across] = [alongStep * i, -0.024 + 0.0004 * k];
        const depth = Math.max(0, Math.min(0.012, (0.012 - Math.abs(across)) * 2));
        const height = 2e-5 * Math.sin(7 * k + 3 * i) - depth;
        return (turned ? [across, along, height] : [along, across, height])
          .map((each) => each.toFixed(6))
          .join(' ');
      }),
    )
      .flat()
      .join('\n');

  it.each([false, true])(
    'far apart along the seam are its sections, whichever axis that is (turned: %s)',
    (turned) => {
      const file = read('g.xyz', grid(0.004, turned), { unit: 'm' });
      expect([file.kind, file.sections.length]).toEqual(['sections', 60]);
      expect(file.sections[3]!.station).toBeCloseTo(0.012, 9);
      expect(depthOf(file, 3)).toBeCloseTo(0.012, 4);
    },
  );

  it.each([false, true])(
    'as fine along as across are a cloud, whose seam is found (turned: %s)',
    (turned) => {
      const file = read('g.xyz', grid(0.0009, turned), { unit: 'm' });
      expect(file.kind).toBe('cloud');
      expect(depthOf(file, 2)).toBeCloseTo(0.012, 4);
    },
  );
});

describe('what is no survey', () => {
  it('says what the file has and what is accepted', () => {
    expect(why('')).toMatch(/empty/u);
    expect(why('a,b,c,d\nred,2,3,x\nblue,5,6,y\n')).toMatch(/The file has/u);
    expect(
      why(
        'ply\nformat ascii 1.0\nelement vertex 3\nproperty float x\nproperty float y\nproperty float z\nend_header\n1 2 3\n',
      ),
    ).toMatch(/promises 3 vertices and ends after 1/u);
    expect(why('ply\nformat ascii 1.0\nelement vertex 3\nproperty float x\nend_header\n')).toMatch(
      /no x, y and z/u,
    );
  });
});
