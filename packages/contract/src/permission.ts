/** What a person may be in a shop. */
export const ROLES = ['viewer', 'operator', 'engineer', 'inspector'] as const;

/** Who may ask: people by what they are, and machines. */
export const CALLERS = [...ROLES, 'administrator', 'machine'] as const;
export type Caller = (typeof CALLERS)[number];

/** What may be done, and who may do it. A right that is open asks for no sign-in. */
export const RIGHTS = {
  open: { meaning: 'find out who is signed in, and sign in', callers: CALLERS },
  own: {
    meaning: 'sign out, change the own password, go to another shop',
    callers: ['viewer', 'operator', 'engineer', 'inspector', 'administrator'],
  },
  look: {
    meaning: 'look at everything of the shop, plan, print',
    callers: ['viewer', 'operator', 'engineer', 'inspector', 'administrator'],
  },
  intake: {
    meaning: 'bring readings and files in',
    callers: ['operator', 'engineer', 'inspector', 'administrator', 'machine'],
  },
  run: {
    meaning: 'begin, keep, end and review runs, tick and read at the rig, count faults, describe loggers',
    callers: ['operator', 'engineer', 'administrator'],
  },
  measure: {
    meaning: 'write down what was run and gauged, with verdicts and gauge studies',
    callers: ['operator', 'engineer', 'inspector', 'administrator'],
  },
  release: {
    meaning: 'say that a paper was handed out',
    callers: ['engineer', 'inspector', 'administrator'],
  },
  engineer: {
    meaning: 'change jobs, the kit and what the shop knows, erase',
    callers: ['engineer', 'administrator'],
  },
  administer: {
    meaning: 'let people and machines in, open shops, see them side by side',
    callers: ['administrator'],
  },
} as const satisfies Readonly<
  Record<string, { readonly meaning: string; readonly callers: readonly Caller[] }>
>;
export type Right = keyof typeof RIGHTS;

/** The right that each request asks for: the one table of who may do what. A request that is not in it is refused. */
export const PERMISSIONS: Readonly<Record<string, Right>> = {
  'GET /api/session': 'open',
  'POST /api/session': 'open',
  'DELETE /api/session': 'own',
  'PUT /api/session/shop': 'own',
  'POST /api/session/link': 'open',
  'POST /api/session/password': 'own',
  'GET /api/accounts': 'administer',
  'POST /api/accounts': 'administer',
  'PUT /api/accounts/:id': 'administer',
  'POST /api/accounts/:id/link': 'administer',
  'DELETE /api/accounts/:id/sessions': 'administer',
  'GET /api/shops': 'administer',
  'POST /api/shops': 'administer',
  'PUT /api/shops/:id': 'administer',
  'GET /api/machines': 'administer',
  'POST /api/machines': 'administer',
  'DELETE /api/machines/:id': 'administer',
  'GET /api/history': 'look',
  'GET /api/company/history': 'administer',
  'GET /api/company/shops': 'administer',
  'GET /api/company/summary': 'administer',
  'GET /api/about': 'look',
  'GET /api/openapi.json': 'look',
  'GET /api/examples': 'look',
  'GET /api/examples/:name/papers': 'look',
  'GET /api/examples/:name/papers/:file': 'look',
  'POST /api/examples/:name/papers/:file': 'look',
  'GET /api/kit-examples': 'look',
  'GET /api/knowledge-examples': 'look',
  'GET /api/readings-examples': 'look',
  'GET /api/gauge-examples': 'look',
  'POST /api/plan': 'look',
  'POST /api/card': 'look',
  'GET /api/jobs': 'look',
  'POST /api/jobs': 'engineer',
  'GET /api/jobs/:id': 'look',
  'PUT /api/jobs/:id': 'engineer',
  'DELETE /api/jobs/:id': 'engineer',
  'GET /api/jobs/:id/revisions': 'look',
  'DELETE /api/jobs/:id/revisions': 'engineer',
  'GET /api/jobs/:id/revisions/:number': 'look',
  'POST /api/jobs/:id/duplicate': 'engineer',
  'POST /api/jobs/:id/restore': 'engineer',
  'GET /api/bin': 'look',
  'DELETE /api/bin/:id': 'engineer',
  'GET /api/jobs/:id/papers': 'look',
  'GET /api/jobs/:id/papers/:file': 'look',
  'POST /api/jobs/:id/papers/:file': 'look',
  'POST /api/jobs/:id/printed': 'release',
  'GET /api/jobs/:id/card.pdf': 'look',
  'GET /api/jobs/:id/commissioning': 'look',
  'PUT /api/jobs/:id/commissioning': 'run',
  'DELETE /api/jobs/:id/commissioning': 'engineer',
  'GET /api/jobs/:id/readings': 'look',
  'PUT /api/jobs/:id/readings': 'measure',
  'DELETE /api/jobs/:id/readings': 'engineer',
  'GET /api/jobs/:id/readings/revisions': 'look',
  'GET /api/jobs/:id/readings/revisions/:number': 'look',
  'GET /api/jobs/:id/originals/:sha256': 'look',
  'GET /api/jobs/:id/survey': 'look',
  'GET /api/jobs/:id/runs': 'look',
  'POST /api/jobs/:id/runs': 'run',
  'POST /api/jobs/:id/live': 'run',
  'GET /api/runs/:id': 'look',
  'DELETE /api/runs/:id': 'engineer',
  'POST /api/runs/:id/review': 'run',
  'GET /api/runs/:id/original': 'look',
  'GET /api/runs/:id/parquet': 'look',
  'POST /api/runs/:id/frames': 'intake',
  'GET /api/runs/:id/events': 'look',
  'POST /api/runs/:id/end': 'run',
  'POST /api/originals': 'intake',
  'GET /api/loggers': 'look',
  'POST /api/loggers': 'run',
  'DELETE /api/loggers/:revision': 'engineer',
  'GET /api/kit': 'look',
  'PUT /api/kit': 'engineer',
  'GET /api/kit/revisions': 'look',
  'DELETE /api/kit/revisions': 'engineer',
  'GET /api/kit/revisions/:number': 'look',
  'GET /api/knowledge': 'look',
  'PUT /api/knowledge': 'engineer',
  'GET /api/knowledge/revisions': 'look',
  'DELETE /api/knowledge/revisions': 'engineer',
  'GET /api/knowledge/revisions/:number': 'look',
  'GET /api/gauge': 'look',
  'PUT /api/gauge': 'measure',
  'GET /api/gauge/revisions': 'look',
  'DELETE /api/gauge/revisions': 'engineer',
  'GET /api/gauge/revisions/:number': 'look',
  'GET /api/fault-counts': 'look',
  'POST /api/fault-counts': 'run',
  'DELETE /api/fault-counts/:id': 'run',
  'GET /jobs/:id/card': 'look',
  'GET /jobs/:id/papers/:file': 'look',
  'GET /demo/:name/papers/:file': 'look',
};

/** Whether somebody may do what a right allows. */
export function mayDo(right: Right, caller: Caller): boolean {
  return (RIGHTS[right].callers as readonly Caller[]).includes(caller);
}
