import type { VNode } from 'preact';
import { BayPage } from '../pages/bay/index.ts';
import { BenchPage } from '../pages/bench/index.ts';
import { CommissionPage } from '../pages/commission/index.ts';
import { CostPage } from '../pages/cost/index.ts';
import { HazardsPage } from '../pages/hazards/index.ts';
import { HeatPage } from '../pages/heat/index.ts';
import { JobsPage } from '../pages/jobs/index.ts';
import { KitPage } from '../pages/kit/index.ts';
import { PapersPage } from '../pages/papers/index.ts';
import { SupplyPage } from '../pages/supply/index.ts';
import { useRoute } from '../ui/route/index.ts';
import { Waiting } from '../ui/site/index.ts';

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
