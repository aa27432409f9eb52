import { draftOf, dropDraft } from '../../sheet/keep/index.ts';

/** The demo job shown when nothing else is asked for. */
export const DEMO_JOB = 'penstock-seam';

/** Under what name changes of a demo job are kept in the browser. */
export function demoDraft(name: string): string {
  return name === DEMO_JOB ? 'new' : `demo.${name}`;
}

/** Under what names what is entered with a job is kept, before that of the job. */
const KEPT_WITH = ['rig.', 'readings.'];

/** Lets go of all that was changed of a demo job in this browser; a job of one's own under the same name stays. */
export function forgetDemo(memory: Storage, name: string): void {
  const draft = demoDraft(name);
  const kept = draftOf(memory, draft);
  if (kept !== undefined && kept.demo !== true) return;
  for (const key of [draft, ...KEPT_WITH.map((start) => start + draft)]) dropDraft(memory, key);
}

/** Where the arc of the demo's rehearsed run goes out, for how long: the place its readings find too shallow. */
const ARC_OUT = { at: '3.6 m', lasts: '2 s' };

/** The seed of all that is made up for the demo. */
export const DEMO_SEED = 1;

/** What goes wrong in the run of the demo job, as a rehearsal is told: the arc goes out in all passes but the first. */
export function demoFaults(name: string, passes: number): string | undefined {
  if (name !== DEMO_JOB) return undefined;
  const later = Array.from({ length: Math.max(1, passes - 1) }, (_, at) => passes - at).toReversed();
  const out = later.map((number) => `arc_out/${number}@${ARC_OUT.at}:${ARC_OUT.lasts}`);
  return [...out, 'low_air/1@1.2 m:4 s', `voltage_drift/${passes}@4.7 m`, 'spike/1@2.2 m'].join(', ');
}
