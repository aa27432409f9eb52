import { writeFileSync } from 'node:fs';
import { fitRemovalPrior, metalOf } from '@furrow/engine';
import { PROCESS_ROWS } from './process-rows.ts';

/** Fits the removal law's prior to the published rows and writes it into the engine: `npm run fit`. */
const belief = fitRemovalPrior(PROCESS_ROWS, metalOf('carbon_steel').meltingEnergy.value);
const target = new URL('../packages/engine/src/removal/published-prior.ts', import.meta.url);
writeFileSync(
  target,
  `import type { RowFit } from './fit-prior.ts';

/**
 * Prior of the removal law, fitted to the operating rows of published/process.json (all from memory).
 * Written by \`npm run fit\`; a test in published/ proves it fresh.
 */
export const PUBLISHED_PRIOR: RowFit = ${JSON.stringify(belief, null, 2)};
`,
);
