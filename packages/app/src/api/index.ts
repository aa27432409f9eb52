export {
  addAccount,
  addMachine,
  changePassword,
  eraseMachine,
  fetchAccounts,
  fetchMachines,
  fetchSession,
  fetchShops,
  lookAtShop,
  makePasswordLink,
  openShop,
  setAccountRights,
  signIn,
  signOut,
  usePasswordLink,
} from './account.ts';
export { fetchCommissioning, saveCommissioning } from './commissioning.ts';
export { fetchHistory, fetchShopFigures } from './company.ts';
export { failed, type Reply } from './failure.ts';
export { countFault, fetchFaultCounts, uncountFault } from './fault-counts.ts';
export { fetchGauge, fetchGaugeExamples, saveGauge } from './gauge.ts';
export { fetchHandbook, type HandbookEntry, type HandbookRoom } from './handbook.ts';
export {
  binJob,
  createJob,
  duplicateJob,
  eraseEarlierRevisions,
  eraseJob,
  fetchBin,
  fetchCard,
  fetchExamples,
  fetchJob,
  fetchJobs,
  fetchRevision,
  fetchRevisions,
  restoreJob,
  saveJob,
} from './jobs.ts';
export { forgetAnswers, keepAnswersFor } from './kept-answers.ts';
export {
  eraseEarlierKits,
  fetchKit,
  fetchKitExamples,
  fetchKitRevision,
  fetchKitRevisions,
  saveKit,
} from './kit.ts';
export { fetchTrials, fetchTrialsExamples, fetchTrialsRevisions, saveTrials } from './knowledge.ts';
export { fetchFilled, fetchPapers, type PapersOf, paperPage, paperPath, tellPrinted } from './papers.ts';
export { isReached, listenReach, noteReach } from './reach.ts';
export {
  fetchMeasured,
  fetchReadings,
  fetchReadingsExamples,
  fetchReadingsRevision,
  fetchReadingsRevisions,
  saveReadings,
} from './readings.ts';
export { pageOfShop } from './request.ts';
export {
  beginRun,
  endRun,
  eraseLogger,
  eraseRun,
  fetchLoggers,
  fetchOriginal,
  fetchRuns,
  keepLogger,
  keepRun,
  livePath,
  runFilePath,
  sendOriginal,
} from './runs.ts';
