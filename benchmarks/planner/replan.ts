import { readFileSync } from 'node:fs';
import { answerJob, type ReadJob, type ReadKit, readJob, readKit } from '@furrow/engine';

const EDITS = 60;
const WARM_UP = 6;
/** What is asked of the 95th percentile, and aimed at [ms]. */
const [ASKED, AIMED] = [100, 60];
const DEMOS = ['penstock-seam', 'defect-pocket', 'casting-wash'] as const;

function example(name: string): string {
  return readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8');
}

function kitOf(text: string): ReadKit {
  const read = readKit(text);
  if (!read.ok) throw new Error(read.issues[0]?.message);
  return read.value;
}

/** The job with a depth that was not planned before. */
function edited({ job, ...read }: ReadJob, edit: number): ReadJob {
  const step = (edit * 7) % (EDITS + WARM_UP);
  const { groove } = job;
  return {
    ...read,
    job: {
      ...job,
      groove: { ...groove, depth: { ...groove.depth, wanted: groove.depth.wanted * (1 + 0.003 * step) } },
    },
  };
}

/** Processor time of a whole answer after an edit of the depth, in a process that has planned before. */
export function replanning(): void {
  console.log('\nReplanning after an edit of the depth: processor time of one answer');
  const kit = kitOf(example('yard-kit'));
  for (const name of DEMOS) {
    const read = readJob(example(name));
    if (!read.ok) throw new Error(read.issues[0]?.message);
    for (const own of [undefined, kit]) {
      const times: number[] = [];
      for (let edit = 0; edit < WARM_UP + EDITS; edit += 1) {
        const job = edited(read.value, edit);
        const start = process.cpuUsage();
        answerJob({ job, version: '', kit: own });
        const { user, system } = process.cpuUsage(start);
        if (edit >= WARM_UP) times.push((user + system) / 1000);
      }
      times.sort((a, b) => a - b);
      const at = (share: number): number => times[Math.min(EDITS - 1, Math.floor(share * EDITS))]!;
      const p95 = at(0.95);
      console.log(
        `${`${name}${own === undefined ? '' : ' with its kit'}`.padEnd(30)} median ${at(0.5).toFixed(0)} ms, 95th percentile ${p95.toFixed(0)} ms: ${(p95 / ASKED).toFixed(2)} of what is asked, ${(p95 / AIMED).toFixed(2)} of what is aimed at`,
      );
    }
  }
}
