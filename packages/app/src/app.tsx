import type { VNode } from 'preact';
import { BayPage } from './bay/index.ts';
import { BenchPage } from './bench/index.ts';
import { CommissionPage } from './commission/index.ts';
import { CostPage } from './cost/index.ts';
import { HazardsPage } from './hazards/index.ts';
import { HeatPage } from './heat/index.ts';
import { JobsPage } from './jobs/index.ts';
import { KitPage } from './kit/index.ts';
import { PapersPage } from './papers/index.ts';
import { useRoute } from './route/index.ts';
import { Waiting } from './site/index.ts';
import { SupplyPage } from './supply/index.ts';

/** Shows the page that the address names. */
export function App(): VNode {
  const { route, visit } = useRoute();
  switch (route.page) {
    case 'bench':
      return <BenchPage key={visit} id={route.id} demo={route.demo} />;
    case 'jobs':
      return <JobsPage key={visit} />;
    case 'kit':
      return <KitPage key={visit} />;
    case 'supply':
      return <SupplyPage key={visit} id={route.id} demo={route.demo} />;
    case 'heat':
      return <HeatPage key={visit} id={route.id} demo={route.demo} />;
    case 'cost':
      return <CostPage key={visit} id={route.id} demo={route.demo} />;
    case 'hazards':
      return <HazardsPage key={visit} id={route.id} demo={route.demo} />;
    case 'papers':
      return <PapersPage key={visit} id={route.id} demo={route.demo} />;
    case 'bay':
      return <BayPage key={visit} id={route.id} demo={route.demo} />;
    case 'commission':
      return <CommissionPage key={visit} id={route.id} />;
    case 'unknown':
      return <Waiting title="Nothing here" text="There is no page at this address." trouble />;
  }
}
