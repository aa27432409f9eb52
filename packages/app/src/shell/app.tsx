import type { VNode } from 'preact';
import { BayPage } from '../pages/bay/page.tsx';
import { BenchPage } from '../pages/bench/page.tsx';
import { CommissionPage } from '../pages/commission/page.tsx';
import { CostPage } from '../pages/cost/page.tsx';
import { HazardsPage } from '../pages/hazards/page.tsx';
import { HeatPage } from '../pages/heat/page.tsx';
import { JobsPage } from '../pages/jobs/page.tsx';
import { KitPage } from '../pages/kit/page.tsx';
import { PapersPage } from '../pages/papers/page.tsx';
import { SupplyPage } from '../pages/supply/page.tsx';
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
