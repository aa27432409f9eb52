import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { planOf } from '../../testing/index.ts';
import { planAtDepth } from './run-section.tsx';

it('the section at a place is as deep as expected there, and keeps the shape that was planned', () => {
  const demo = readFileSync(new URL('../../../../../examples/defect-pocket.yaml', import.meta.url), 'utf8');
  const plan = planOf(demo).answer.plan!;
  const at = planAtDepth(plan, { at_mm: 100, p05_mm: 5, p50_mm: 8, p95_mm: 13 });
  const deepest = (depths: readonly number[]): number => Math.max(...depths);
  expect(deepest(at.section.depth_p05_mm)).toBeCloseTo(5, 9);
  expect(deepest(at.section.depth_p50_mm)).toBeCloseTo(8, 9);
  expect(deepest(at.section.depth_p95_mm)).toBeCloseTo(13, 9);
  const share = at.section.depth_p50_mm.map((each, i) => each / plan.section.depth_p50_mm[i]!);
  for (const each of share.filter(Number.isFinite)) expect(each).toBeCloseTo(share.find(Number.isFinite)!, 9);
  const plate = plan.ligament_mm.p50 + plan.floor_depth_mm.p50;
  expect(at.ligament_mm.p50).toBeCloseTo(plate - 8, 9);
  expect(at.ligament_mm.p05).toBeCloseTo(plate - 13, 9);
});
