import {
  fetchCommissioning,
  fetchExamples,
  fetchFaultCounts,
  fetchGauge,
  fetchGaugeExamples,
  fetchJob,
  fetchJobs,
  fetchKit,
  fetchKitExamples,
  fetchLoggers,
  fetchReadings,
  fetchReadingsExamples,
  fetchRevisions,
  fetchRuns,
  fetchSession,
  fetchTrials,
  fetchTrialsExamples,
} from '../api/index.ts';

/** What the pages of the shop and of every job ask for. */
const OF_SHOP = [
  fetchSession,
  fetchJobs,
  fetchKit,
  fetchTrials,
  fetchGauge,
  fetchFaultCounts,
  fetchLoggers,
  fetchExamples,
  fetchKitExamples,
  fetchTrialsExamples,
  fetchReadingsExamples,
  fetchGaugeExamples,
];

/** What the pages of a saved job ask for. */
const OF_JOB = [fetchJob, fetchCommissioning, fetchReadings, fetchRuns, fetchRevisions];

/**
 * Asks for all that the pages of a job show, also those that nobody has opened yet, so that they open without the server: each
 * answer is kept as it comes. One after the other, for nobody waits for them.
 */
export async function takeAlong(job: string | undefined): Promise<void> {
  for (const ask of OF_SHOP) await ask();
  if (job !== undefined) for (const ask of OF_JOB) await ask(job);
}
