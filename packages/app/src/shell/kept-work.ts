import { draftNames, draftOf, isHeld, type KeptEnd } from '../sheet/keep/index.ts';
import { jobPath } from '../ui/route/index.ts';

/** Something that is entered on this device and not with the server. */
export interface KeptWork {
  /** Under what name it is kept. */
  readonly name: string;
  readonly is: 'rig' | 'readings' | 'gauge' | 'trials' | 'kit' | 'job' | 'new job';
  /** Identifier of the saved job that it is of. */
  readonly job?: string;
  /** The page on which it is entered. */
  readonly path: string;
}

/** What of a person's work waits on this device, changes of demo jobs aside. */
export function keptWork(memory: Storage): readonly KeptWork[] {
  return draftNames(memory).flatMap((name): readonly KeptWork[] => {
    if (name === 'gauge' || name === 'kit') return [{ name, is: name, path: `/${name}` }];
    if (name === 'trials') return [{ name, is: 'trials', path: '/knowledge' }];
    const [, part, job = ''] = /^(?:(rig|readings)\.)?(.+)$/u.exec(name) ?? [];
    if (job === 'new' || job.startsWith('demo.')) {
      const own = part === undefined && draftOf(memory, name)?.demo !== true;
      return own ? [{ name, is: 'new job', path: '/' }] : [];
    }
    const path = jobPath(job);
    if (part === 'rig') return [{ name, is: part, job, path: `${path}/commission` }];
    if (part === 'readings') return [{ name, is: part, job, path: `${path}/record` }];
    return [{ name, is: 'job', job, path }];
  });
}

/** Whether it is sent by itself; kit and job are saved when the person says so. */
export function isSentByItself({ is }: KeptWork): boolean {
  return is !== 'kit' && is !== 'job' && is !== 'new job';
}

/** Sends what waits and is open on no page; what became of each. Its code is brought in where there is something to send. */
export async function sendKeptWork(
  memory: Storage,
  work: readonly KeptWork[],
): Promise<ReadonlyMap<string, KeptEnd>> {
  const ends = new Map<string, KeptEnd>();
  for (const { name, is, job = '' } of work) {
    if (isHeld(name)) continue;
    if (is === 'rig')
      ends.set(name, await (await import('../pages/commission/page.tsx')).sendRig(job, memory));
    if (is === 'readings')
      ends.set(name, await (await import('../job/readings/send-readings.ts')).sendReadings(job, memory));
    if (is === 'gauge') ends.set(name, await (await import('../pages/gauge/page.tsx')).sendGauge(memory));
    if (is === 'trials')
      ends.set(name, await (await import('../pages/knowledge/page.tsx')).sendTrials(memory));
  }
  return ends;
}

/** What waits, in words: `readings of 2 jobs, the rig of one job`. */
export function keptWords(work: readonly KeptWork[]): string {
  const count = (is: KeptWork['is']): number => work.filter((one) => one.is === is).length;
  const jobs = (number: number): string => (number === 1 ? 'one job' : `${number} jobs`);
  const parts = [
    ...(count('rig') > 0 ? [`ticks and readings at the rig of ${jobs(count('rig'))}`] : []),
    ...(count('readings') > 0 ? [`what was run and gauged on ${jobs(count('readings'))}`] : []),
    ...(count('trials') > 0 ? ['trials'] : []),
    ...(count('gauge') > 0 ? ['the gauge'] : []),
    ...(count('kit') > 0 ? ['changes of the kit'] : []),
    ...(count('new job') > 0 ? ['a job that was never saved'] : []),
    ...(count('job') > 0 ? [`changes of ${jobs(count('job'))}`] : []),
  ];
  return parts.join(', ');
}
