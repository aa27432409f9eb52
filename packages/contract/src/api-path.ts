/** Address of every resource of the HTTP API; `:name` stands for a parameter. */
export const API_PATHS = {
  about: '/api/about',
  openapi: '/api/openapi.json',
  /** Who is signed in, in which shop. */
  session: '/api/session',
  sessionShop: '/api/session/shop',
  sessionLink: '/api/session/link',
  sessionPassword: '/api/session/password',
  /** To the provider that people sign in by, and back from it. */
  signInProvider: '/sign-in/provider',
  signInReturn: '/sign-in/return',
  /** People, shops, and the machines that bring readings. */
  accounts: '/api/accounts',
  account: '/api/accounts/:id',
  accountLink: '/api/accounts/:id/link',
  accountSessions: '/api/accounts/:id/sessions',
  shops: '/api/shops',
  shop: '/api/shops/:id',
  machines: '/api/machines',
  machine: '/api/machines/:id',
  /** Who changed what: of the shop, and of people, shops and machines. */
  history: '/api/history',
  companyHistory: '/api/company/history',
  /** The shops side by side, and what they have learned together. */
  companyShops: '/api/company/shops',
  companySummary: '/api/company/summary',
  examples: '/api/examples',
  plan: '/api/plan',
  card: '/api/card',
  jobs: '/api/jobs',
  job: '/api/jobs/:id',
  jobRevisions: '/api/jobs/:id/revisions',
  jobRevision: '/api/jobs/:id/revisions/:number',
  jobDuplicate: '/api/jobs/:id/duplicate',
  jobRestore: '/api/jobs/:id/restore',
  /** The papers and drawings of a job, and which of them were handed out. */
  jobPapers: '/api/jobs/:id/papers',
  jobPaper: '/api/jobs/:id/papers/:file',
  jobPrinted: '/api/jobs/:id/printed',
  /** The same for a demo job. */
  examplePapers: '/api/examples/:name/papers',
  examplePaper: '/api/examples/:name/papers/:file',
  jobCardPdf: '/api/jobs/:id/card.pdf',
  /** What was ticked, read and found at the rig for a job. */
  jobCommissioning: '/api/jobs/:id/commissioning',
  /** What was run and gauged on a job. */
  jobReadings: '/api/jobs/:id/readings',
  jobReadingsRevisions: '/api/jobs/:id/readings/revisions',
  jobReadingsRevision: '/api/jobs/:id/readings/revisions/:number',
  /** A file that was measured on it, byte for byte. */
  jobOriginal: '/api/jobs/:id/originals/:sha256',
  /** What that says of the groove. */
  jobSurvey: '/api/jobs/:id/survey',
  /** The runs of a job. */
  jobRuns: '/api/jobs/:id/runs',
  /** Begins a run whose readings come in as it is run. */
  jobLive: '/api/jobs/:id/live',
  run: '/api/runs/:id',
  runReview: '/api/runs/:id/review',
  /** The file as the logger wrote it, and what its rows are as Parquet. */
  runOriginal: '/api/runs/:id/original',
  runParquet: '/api/runs/:id/parquet',
  /** What comes in of a live run: frames sent, and everything as it arrives. */
  runFrames: '/api/runs/:id/frames',
  runEvents: '/api/runs/:id/events',
  runEnd: '/api/runs/:id/end',
  /** Files of runs, sent before the run is kept. */
  originals: '/api/originals',
  /** How the files of the shop's loggers are read. */
  loggers: '/api/loggers',
  logger: '/api/loggers/:revision',
  bin: '/api/bin',
  binnedJob: '/api/bin/:id',
  /** The shop's one kit. */
  kit: '/api/kit',
  kitRevisions: '/api/kit/revisions',
  kitRevision: '/api/kit/revisions/:number',
  /** Demo kits that come with the program. */
  kitExamples: '/api/kit-examples',
  /** What the shop has tried and gauged, which its knowledge is learned from. */
  knowledge: '/api/knowledge',
  knowledgeRevisions: '/api/knowledge/revisions',
  knowledgeRevision: '/api/knowledge/revisions/:number',
  /** The shop's gauge: its study and its checks. */
  gauge: '/api/gauge',
  gaugeRevisions: '/api/gauge/revisions',
  gaugeRevision: '/api/gauge/revisions/:number',
  /** The invented history of the demo shop. */
  knowledgeExamples: '/api/knowledge-examples',
  /** What was invented as run and gauged on the demo jobs. */
  readingsExamples: '/api/readings-examples',
  /** The invented gauge of the demo shop. */
  gaugeExamples: '/api/gauge-examples',
  /** The shop's own counts of faults found. */
  faultCounts: '/api/fault-counts',
  faultCase: '/api/fault-counts/:id',
  /** The card of a saved job as one page to look at and print. */
  jobCardPage: '/jobs/:id/card',
  /** A paper as pages to look at and print. */
  jobPaperPage: '/jobs/:id/papers/:file',
  examplePaperPage: '/demo/:name/papers/:file',
  /** Stylesheet of these pages. */
  paperStylesheet: '/paper.css',
} as const;

/** Header in which the app names the shop that its page was opened for, so that two windows do not mix two shops. */
export const SHOP_HEADER = 'furrow-shop';

/** An address of the HTTP API, parameters not filled in. */
export type ApiPath = (typeof API_PATHS)[keyof typeof API_PATHS];

type ParameterOf<Path extends string> = Path extends `${string}:${infer Name}/${infer Rest}`
  ? Name | ParameterOf<Rest>
  : Path extends `${string}:${infer Name}.${string}`
    ? Name
    : Path extends `${string}:${infer Name}`
      ? Name
      : never;

/** The parameters an address asks for, by name. */
export type PathParameters<Path extends string> = Readonly<Record<ParameterOf<Path>, string | number>>;

/** Fills the parameters of an address in: `fillPath(API_PATHS.job, { id })`. */
export function fillPath<Path extends ApiPath>(path: Path, parameters: PathParameters<Path>): string {
  const values = parameters as Readonly<Record<string, string | number>>;
  return path.replace(/:(\w+)/g, (_, name: string) => encodeURIComponent(String(values[name])));
}
