import type { VNode } from 'preact';
import { JobPage } from '../../job/page/index.ts';
import { HazardsView } from './hazards-view.tsx';
import './style.css';

/** What a job asks of the people around it, and the site that it rests on. */
export function HazardsPage(): VNode {
  return (
    <JobPage>
      <HazardsView />
    </JobPage>
  );
}
