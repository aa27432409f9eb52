import { describe, expect, test } from 'vitest';
import { codeDrawing } from './code-drawing.ts';

describe('a QR code', () => {
  test('has the three finder squares, and empty modules around', () => {
    const drawing = codeDrawing('furrow:revision:0123456789abcdef', 'this revision')!;
    const dark = (x: number, y: number): boolean =>
      drawing.marks.some(
        (mark) =>
          mark.kind === 'area' && mark.points[0]!.x <= x && mark.points[1]!.x > x && mark.points[0]!.y === y,
      );
    const far = drawing.width - 5;
    for (const [x, y] of [
      [4, 4],
      [far, 4],
      [4, far],
    ] as const)
      expect(dark(x, y)).toBe(true);
    expect(dark(far, far)).toBe(false);
    for (let at = 0; at < drawing.width; at += 1) {
      for (const edge of [0, 3, drawing.width - 1]) {
        expect(dark(at, edge)).toBe(false);
        expect(dark(edge, at)).toBe(false);
      }
    }
    expect(drawing.description).toBe('this revision: furrow:revision:0123456789abcdef');
  });

  test('is the same for the same content, and left out where the content is too long', () => {
    expect(codeDrawing('a', 'b')).toEqual(codeDrawing('a', 'b'));
    expect(codeDrawing('x'.repeat(301), 'b')).toBeUndefined();
    expect(codeDrawing('', 'b')).toBeUndefined();
    expect(codeDrawing('Öl 😀', 'b')).toBeDefined();
  });
});
