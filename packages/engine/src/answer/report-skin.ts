import { costPracticeOf, refillOf } from '../cost/index.ts';
import type { Job } from '../job/index.ts';
import { inUnit } from '../quantity/index.ts';
import type { Plan, SkinReport } from '../result/index.ts';
import { sectionOfPlan } from './arc-work-of-plan.ts';

/** Allowance of ASME PCC-2 [m]. */
const PCC2 = 1.5e-3;

/** What the grinding allowance takes off the section, and what it adds to the refill of the whole seam. */
export function reportSkin(job: Job, plan: Plan): SkinReport {
  const practice = costPracticeOf(job);
  const section = sectionOfPlan(plan, job);
  const allowance = practice.skinAllowance;
  const gouged = section.areaPerLength;
  const { area: ground, weldMetal } = refillOf(section, practice);
  const unground = refillOf(section, { ...practice, skinAllowance: 0 });
  return {
    allowance_mm: inUnit(allowance, 'mm'),
    source:
      Math.abs(allowance - PCC2) < 1e-9
        ? {
            text: 'ASME PCC-2 Article 304, 304-3.3: another 1.5 mm by mechanical means after carbon-arc gouging; stated for carbon steel pressure equipment',
            provenance: 'confirmed',
          }
        : { text: 'the job; ASME PCC-2 asks for 1.5 mm', provenance: 'job file' },
    gouged_area_mm2: inUnit(gouged, 'mm2'),
    ground_area_mm2: inUnit(ground, 'mm2'),
    added_percent: gouged > 0 ? (ground / gouged - 1) * 100 : 0,
    refill_kg: inUnit(weldMetal, 'kg'),
    added_kg: inUnit(weldMetal - unground.weldMetal, 'kg'),
  };
}
