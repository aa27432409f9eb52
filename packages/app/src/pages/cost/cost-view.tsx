import type { CostReport } from '@furrow/engine';
import type { VNode } from 'preact';
import { JobHeader, RestoredNotice } from '../../job/page/index.ts';
import { CautionPanel, ResultStatus } from '../../job/result/index.ts';
import { isOutdated, useBenchState } from '../../job/state/index.ts';
import { GroupForm } from '../../sheet/form/index.ts';
import { Said } from '../../ui/theme/index.ts';
import { AssumptionList } from './assumption-list.tsx';
import { ChangeTable } from './change-table.tsx';
import { CostHead } from './cost-head.tsx';
import type { CostState } from './cost-state.ts';
import { ExtraTable } from './extra-table.tsx';
import { ItemTable } from './item-table.tsx';
import { StepPanel } from './step-panel.tsx';
import { useCost } from './use-cost.ts';
import { WayTable } from './way-table.tsx';

/** Parts of the job that time and money rest on, in the order in which they matter. */
const GROUPS = ['rates', 'reweld', 'after'];

/** The whole job in time and money beside what they rest on. */
export function CostView(): VNode {
  const state = useCost();
  const outdated = useBenchState(isOutdated);
  const { cost, failure } = state;
  return (
    <>
      <JobHeader />
      <main class="wide-page beside-page" id="result" tabIndex={-1}>
        <div class="beside-status">
          <RestoredNotice />
          <ResultStatus />
          {failure === undefined ? null : (
            <p class="notice" role="alert">
              The cost could not be reckoned: {failure}. Change the job or reload the page; the text is kept.
            </p>
          )}
        </div>
        <section class="panel beside-inputs" aria-label="Rates and the work beside the arc">
          <GroupForm paths={GROUPS} name="Rates and the work beside the arc" />
        </section>
        <div class={`beside-result cost-result${outdated ? ' outdated' : ''}`}>
          {cost === undefined ? (
            <p role="status">Reckoning.</p>
          ) : cost.kind === 'no_plan' ? (
            <p class="notice">
              <Said sentence={cost.says} />
            </p>
          ) : (
            <Report cost={cost} state={state} />
          )}
        </div>
      </main>
    </>
  );
}

function Report({ cost, state }: { readonly cost: CostReport; readonly state: CostState }): VNode {
  return (
    <>
      <CostHead cost={cost} />
      <StepPanel cost={cost} />
      <ExtraTable cost={cost} />
      <ItemTable cost={cost} />
      <ChangeTable changes={state.changes} trying={state.trying} cost={cost} />
      <WayTable cost={cost} />
      <AssumptionList cost={cost} />
      <CautionPanel cautions={cost.cautions} />
    </>
  );
}
