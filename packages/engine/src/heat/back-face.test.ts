import { expect, it } from 'vitest';
import { cutPass, flatFloor } from '../groove/index.ts';
import { type MetalFamily, thermalOf } from '../material/index.ts';
import { type BackFaceInput, backFaceEstimate } from './back-face.ts';
import type { SectionPass } from './section-heat.ts';
import { solveSection } from './solve-section.ts';

const BASE: Omit<BackFaceInput, 'metal'> = {
  thickness: 0.032,
  ligament: 0.016,
  width: 0.016,
  tracks: 1,
  kept: 0.5e6,
  start: 293.15,
  passes: 1,
  interval: 400,
  interpassMost: 1500,
};

/** Highest temperature of the back face in the field, each layer cut to an equal share of the depth. */
function fieldOf(input: BackFaceInput): number {
  const { metal, thickness, ligament, width, tracks, passes, interval, kept, start } = input;
  const depth = thickness - ligament;
  let floor = flatFloor(0.04, 1e-4);
  const list: SectionPass[] = [];
  for (let pass = 0; pass < passes; pass += 1) {
    const offset = ((pass % tracks) - (tracks - 1) / 2) * width * 0.6;
    floor = cutPass(floor, { offset, width, depth: (depth * tracks) / passes });
    const points = Array.from(floor.depth, (each, i) => ({
      offset: floor.first + i * floor.step,
      depth: Math.min(each, depth),
    }));
    const gouged = points.filter((_, i) => [i - 1, i, i + 1].some((near) => (points[near]?.depth ?? 0) > 0));
    list.push({ at: 1 + pass * interval, duration: 0.5, floor: gouged, keptPerLength: kept });
  }
  const solving = solveSection({
    metal,
    thickness,
    ambient: 293.15,
    start,
    losses: 'none',
    passes: list,
    until: list.at(-1)!.at + Math.max(60, (2 * thickness * thickness) / 3e-6),
    frameTimes: [],
    quality: 'quick',
  });
  for (let step = solving.next(); ; step = solving.next()) if (step.done) return step.value.backFacePeak;
}

// The field's own quick grid is good to a few per cent of the rise.
it.each<[MetalFamily, Partial<BackFaceInput>]>([
  ['carbon_steel', {}],
  ['carbon_steel', { passes: 3, interval: 300, start: 360 }],
  ['carbon_steel', { ligament: 0.006, kept: 0.3e6 }],
  ['carbon_steel', { ligament: 0.028, kept: 0.6e6 }],
  ['carbon_steel', { thickness: 0.012, ligament: 0.007, width: 0.014 }],
  ['carbon_steel', { tracks: 3, passes: 3, interval: 150 }],
  ['austenitic_stainless', { thickness: 0.011, ligament: 0.0025, width: 0.0128, kept: 0.26e6 }],
  ['copper_alloy', { passes: 2, kept: 0.3e6 }],
  ['cast_iron', { thickness: 0.034, ligament: 0.024, width: 0.021, passes: 2 }],
])('%s: stays above the field for %o', (family, change) => {
  const input: BackFaceInput = { ...BASE, ...change, metal: thermalOf(family) };
  const rise = backFaceEstimate(input) - input.start;
  const field = fieldOf(input) - input.start;
  expect(rise).toBeGreaterThan(0.97 * field);
  // and it is an estimate still
  expect(rise).toBeLessThan(4 * field);
});

it('rises with heat and start, and falls with ligament and time between passes', () => {
  const input: BackFaceInput = { ...BASE, passes: 2, metal: thermalOf('carbon_steel') };
  const of = (change: Partial<BackFaceInput>): number => backFaceEstimate({ ...input, ...change });
  const now = of({});
  expect(of({ kept: 0.6e6 })).toBeGreaterThan(now);
  expect(of({ start: 330 })).toBeGreaterThan(now);
  expect(of({ ligament: 0.012 })).toBeGreaterThan(now);
  expect(of({ interval: 900 })).toBeLessThan(now);
});

it('starts later passes no hotter than the interpass temperature lets them', () => {
  const input: BackFaceInput = { ...BASE, passes: 8, interval: 5, metal: thermalOf('carbon_steel') };
  const held = backFaceEstimate({ ...input, interpassMost: 373.15 });
  expect(held).toBeLessThan(backFaceEstimate(input));
  expect(held).toBeCloseTo(backFaceEstimate({ ...input, passes: 1, start: 373.15 }), 9);
});
