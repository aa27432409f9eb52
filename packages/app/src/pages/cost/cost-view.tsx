import type { CostReport } from '@furrow/engine';
import {
  assumptionTable,
  changeNotes,
  changeTable,
  extraTable,
  itemTable,
  refillText,
  wayNotes,
  wayTable,
} from '@furrow/papers/blocks';
import type { VNode } from 'preact';
import { JobHeader, RestoredNotice } from '../../job/page/index.ts';
import { CautionPanel, ResultStatus } from '../../job/result/index.ts';
import { isOutdated, useBenchState } from '../../job/state/index.ts';
import { GroupForm } from '../../sheet/form/index.ts';
import { BlockList, BlockPanel } from '../../ui/block/index.ts';
import { Said, useUnits } from '../../ui/theme/index.ts';
import { CostHead } from './cost-head.tsx';
import type { CostState } from './cost-state.ts';
import { StepPanel } from './step-panel.tsx';
import { useCost } from './use-cost.ts';

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
              The cost could not be worked out: {failure}. Change the job or reload the page; the text is
              kept.
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
            <CostPanels cost={cost} state={state} />
          )}
        </div>
      </main>
    </>
  );
}

export function CostPanels({ cost, state }: { readonly cost: CostReport; readonly state: CostState }): VNode {
  const units = useUnits();
  const { changes, trying } = state;
  const [items] = itemTable(cost, units);
  const unpriced = cost.items.filter(({ part }) => cost.unpriced.includes(part));
  return (
    <>
      <CostHead cost={cost} />
      <StepPanel cost={cost} />
      <BlockPanel
        id="cost-extra"
        table={extraTable(cost, units)}
        note="over the whole seam, at the usual pace; the arc is not in it"
        lead={<p class="panel-lead">{refillText(cost, units)}</p>}
      />
      {items === undefined ? null : (
        <BlockPanel
          id="cost-items"
          table={items}
          note={
            unpriced.length === 0
              ? undefined
              : `without a price: ${unpriced.map(({ title }) => title.toLowerCase()).join(', ')}`
          }
        />
      )}
      <BlockPanel
        id="cost-changes"
        table={changeTable(changes, cost, units)}
        note={trying ? 'planning anew, one change after the other' : 'by the objective of the job'}
      >
        <BlockList blocks={[changeNotes(changes, units)]} />
      </BlockPanel>
      <BlockPanel
        id="cost-ways"
        table={wayTable(cost, units)}
        note="state your own rates under “Alternatives”"
      >
        <BlockList blocks={[wayNotes(cost)]} />
      </BlockPanel>
      <BlockPanel
        id="cost-assumptions"
        table={assumptionTable(cost, units)}
        note="besides the defaults, which stand in grey in the form"
      />
      <CautionPanel cautions={cost.cautions} />
    </>
  );
}
