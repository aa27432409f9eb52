import { describe, expect, it } from 'vitest';
import { airBore } from './air-sizes.ts';

describe('airBore', () => {
  it.each([
    ['hose', '1/2 in', 0.0127],
    ['hose', '3/4"', 0.01905],
    ['hose', '1-1/4  inch', 0.03175],
    ['hose', '13 mm', 0.013],
    ['pipe', '1/2 in', 0.622 * 0.0254],
  ] as const)('%s %s', (kind, size, bore) => {
    const outcome = airBore(kind, size);
    expect(outcome.ok && outcome.value).toBeCloseTo(bore, 12);
  });

  it('names what is known where a size is not', () => {
    const outcome = airBore('hose', '7/16 in');
    expect(outcome.ok ? '' : outcome.issues[0]!.message).toMatch(
      /No hose of size 7\/16 in .*3\/8 in, 1\/2 in/,
    );
    expect(airBore('hose', 'constructor').ok).toBe(false);
  });
});
