import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LeastFirst } from './least-first.ts';

/** Something that comes to a value, found by opening what holds it; nothing inside comes to less than the whole. */
interface Box {
  readonly least: number;
  readonly inside: readonly Box[];
}

const boxOf = (inside: fc.Arbitrary<Box[]>): fc.Arbitrary<Box> => fc.record({ least: fc.nat(9), inside });
/** Boxes in boxes in boxes, as ways in families on rigs. */
const boxes = boxOf(fc.array(boxOf(fc.array(boxOf(fc.constant([])), { maxLength: 4 })), { maxLength: 4 }));

/** Every value in a box whose bounds add up on the way in. */
function valuesOf({ least, inside }: Box, before = 0): number[] {
  const own = before + least;
  return inside.length === 0 ? [own] : inside.flatMap((each) => valuesOf(each, own));
}

describe('what comes to least first', () => {
  it('finds the least value, meets values in rising order, and opens nothing beyond', () => {
    fc.assert(
      fc.property(fc.array(boxes, { minLength: 1, maxLength: 8 }), (list) => {
        const found: number[] = [];
        const opened: number[] = [];
        const bounds = new LeastFirst<number>();
        const add = ({ least, inside }: Box, before: number): void => {
          const own = before + least;
          bounds.add(own, () => {
            opened.push(own);
            if (inside.length === 0) found.push(own);
            for (const each of inside) add(each, own);
          });
        };
        for (const each of list) add(each, 0);
        bounds.run(
          (value) => value,
          (value) => found.length > 0 && value > found[0]!,
        );
        const least = Math.min(...list.flatMap((each) => valuesOf(each)));
        expect(found[0]).toBe(least);
        expect(Math.max(...opened)).toBe(least);
        expect(opened).toEqual([...opened].sort((one, other) => one - other));
      }),
      { seed: 7 },
    );
  });

  it('goes on with another value where it stopped', () => {
    const met: string[] = [];
    const bounds = new LeastFirst<{ readonly time: number; readonly cost: number }>();
    bounds.add({ time: 3, cost: 1 }, () => met.push('cheap'));
    bounds.add({ time: 1, cost: 3 }, () => met.push('quick'));
    bounds.add({ time: 2, cost: 2 }, () => met.push('middling'));
    bounds.run(
      ({ cost }) => cost,
      (cost) => cost > 1,
    );
    expect(met).toEqual(['cheap']);
    bounds.run(
      ({ time }) => time,
      (time) => time > 1,
    );
    expect(met).toEqual(['cheap', 'quick']);
  });
});
