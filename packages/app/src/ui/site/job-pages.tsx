import type { VNode } from 'preact';
import { demoPath, jobPath, PageLink } from '../route/index.ts';

/** The pages of one job. */
export type JobRoom = 'bench' | 'heat' | 'cost' | 'hazards' | 'supply' | 'bay' | 'commission' | 'papers';

interface JobPagesProps {
  /** Id of the saved job; undefined for a demo job. */
  readonly id: string | undefined;
  /** Name of the demo job, where no saved one is shown. */
  readonly demo: string;
  /** The page that is shown. */
  readonly at: JobRoom;
}

const ROOMS: readonly { readonly room: JobRoom; readonly title: string }[] = [
  { room: 'bench', title: 'Bench' },
  { room: 'heat', title: 'Heat' },
  { room: 'cost', title: 'Cost and time' },
  { room: 'hazards', title: 'Hazards' },
  { room: 'supply', title: 'Power and air' },
  { room: 'bay', title: 'Bay plan' },
  { room: 'commission', title: 'Commissioning' },
  { room: 'papers', title: 'Papers' },
];

/** The way between the pages of one job. */
export function JobPages({ id, demo, at }: JobPagesProps): VNode {
  // readings are kept with a saved job
  const rooms = ROOMS.filter(({ room }) => room !== 'commission' || id !== undefined);
  const start = id === undefined ? demoPath(demo) : jobPath(id);
  return (
    <nav class="job-pages" aria-label="Pages of this job">
      {rooms.map(({ room, title }) =>
        room === at ? (
          <span key={room} aria-current="page">
            {title}
          </span>
        ) : (
          <PageLink key={room} to={room === 'bench' ? start : `${start}/${room}`}>
            {title}
          </PageLink>
        ),
      )}
    </nav>
  );
}
