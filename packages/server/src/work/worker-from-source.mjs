// The worker where the sources run as they are, in tests: a thread knows nothing of TypeScript by itself.
import { register } from 'tsx/esm/api';

register();
export const { figures, companySummary, answer, cardPdf, cardPage, file, page, list, review, survey } =
  await import('./worker.ts');
