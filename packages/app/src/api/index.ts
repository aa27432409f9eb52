export type { Reply } from './failure.ts';
export {
  binJob,
  createJob,
  duplicateJob,
  fetchBin,
  fetchCard,
  fetchExamples,
  fetchJob,
  fetchJobs,
  restoreJob,
  saveJob,
} from './jobs.ts';
