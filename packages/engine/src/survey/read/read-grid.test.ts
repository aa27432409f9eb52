import { describe, expect, it } from 'vitest';
import { measureSection } from '../section/measure-section.ts';
import { isGrid, readGrid } from './read-grid.ts';
import { readSurveyFile } from './read-survey-file.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const HEAD = 'ncols 3\nnrows 2\nxllcorner 10\nyllcorner 20\ncellsize 2\nNODATA_value -1\n';

function messageOf(text: string): string | undefined {
  const outcome = readGrid(bytes(text));
  return outcome.ok ? undefined : outcome.issues[0]!.message;
}

describe('a height map as an ASCII grid', () => {
  it('begins with the row on the far side, cells at their middles, and leaves out what has no value', () => {
    const outcome = readGrid(bytes(`${HEAD}1 2 3\n4 -1 6\n`));
    if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
    const { x, y, z } = outcome.value;
    expect([...z]).toEqual([1, 2, 3, 4, 6]);
    expect([...x]).toEqual([11, 13, 15, 11, 15]);
    expect([...y]).toEqual([23, 23, 23, 21, 21]);
  });

  it('takes the middle of the first cell where the head states that', () => {
    const outcome = readGrid(bytes(`NCOLS 1 NROWS 1 XLLCENTER 5 YLLCENTER 6 CELLSIZE 2 7`));
    expect(outcome.ok && [outcome.value.x[0], outcome.value.y[0], outcome.value.z[0]]).toEqual([5, 6, 7]);
  });

  it('is cut into sections along its seam, as a cloud is', () => {
    const [columns, rows] = [200, 150];
    const lines = Array.from({ length: rows }, (_, j) =>
      Array.from({ length: columns }, (__, i) => {
        const t = Math.abs(-20 + 0.2 * i);
        const depth = t > 9.2 ? 0 : t < 5.8 ? 6 + Math.sqrt(36 - t * t) : (9.2 - t) * 2.2;
        const height = -Math.min(12, depth) + 0.01 * Math.sin(12.9898 * i + 78.233 * j);
        return (i * 7 + j * 13) % 97 === 0 ? '-9999' : height.toFixed(4);
      }).join(' '),
    );
    const text = `ncols ${columns}\nnrows ${rows}\nxllcorner 0\nyllcorner 0\ncellsize 0.2\n${lines.join('\n')}\n`;
    const outcome = readSurveyFile('floor.asc', bytes(text), { unit: 'mm' });
    if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
    const { kind, sections, choices, rows: read } = outcome.value;
    expect(kind).toBe('cloud');
    expect(read).toBeLessThan(columns * rows);
    expect(choices[0]).toMatchObject({ about: 'format', says: 'a height map as an ASCII grid' });
    expect(sections.length).toBeGreaterThan(3);
    const { depth } = measureSection(sections[2]!);
    expect('value' in depth && Math.abs(depth.value - 0.012)).toBeLessThan(1e-4);
  });

  it.each([
    ['a head without the size of a cell', 'ncols 2\nnrows 2\n1 2 3 4', /does not state/u],
    ['a cell that is no number', `${HEAD}1 2 3\n4 x 6\n`, /Cell 5 .*“x”/u],
    ['too few cells', `${HEAD}1 2 3\n`, /ends after 3 of its 6/u],
    ['too many cells', `${HEAD}1 2 3 4 5 6 7`, /more than its 3 by 2/u],
    ['a size beyond all measure', 'ncols 99999\nnrows 99999\ncellsize 1\n1', /9999800001 cells/u],
  ])('is refused with %s', (_, text, message) => {
    expect(isGrid(bytes(text))).toBe(true);
    expect(messageOf(text)).toMatch(message);
  });
});
