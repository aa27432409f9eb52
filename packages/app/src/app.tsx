import type { VNode } from 'preact';
import { BenchPage } from './bench/index.ts';
import { JobsPage } from './jobs/index.ts';
import { useRoute } from './route/index.ts';
import { Waiting } from './site/index.ts';

/** Shows the page that the address names. */
export function App(): VNode {
  const { route, visit } = useRoute();
  switch (route.page) {
    case 'bench':
      return <BenchPage key={visit} id={route.id} demo={route.demo} />;
    case 'jobs':
      return <JobsPage key={visit} />;
    case 'unknown':
      return <Waiting title="Nothing here" text="There is no page at this address." trouble />;
  }
}
