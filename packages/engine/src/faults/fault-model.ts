import { CHECKS } from './check-table.ts';
import { ELECTRIC_CAUSES } from './electric-causes.ts';
import type { FaultModel } from './model.ts';
import { MOTION_CAUSES } from './motion-causes.ts';
import { SYMPTOMS } from './symptom-table.ts';
import { TORCH_CAUSES } from './torch-causes.ts';

/** The table the program starts from: judgement, to be moved by the shop's own counts. */
export const FAULT_MODEL: FaultModel = {
  observables: [...SYMPTOMS, ...CHECKS],
  causes: [...ELECTRIC_CAUSES, ...TORCH_CAUSES, ...MOTION_CAUSES],
  weight_cases: 20,
  chance_cases: 10,
  source: 'judgement, no source; corrected by what the shop counts',
};
