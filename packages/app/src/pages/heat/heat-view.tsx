import { sentencesWritten } from '@furrow/engine';
import {
  coolingBlocks,
  endBlocks,
  hardnessBlocks,
  heatGround,
  heatPassTable,
  type PaperBlock,
  preheatBlocks,
  restList,
  skinBlock,
} from '@furrow/papers/blocks';
import type { ComponentChildren, VNode } from 'preact';
import { JobHeader, RestoredNotice } from '../../job/page/index.ts';
import { CautionPanel, ResultStatus } from '../../job/result/index.ts';
import { SeamStripView } from '../../job/seam-strip/index.ts';
import { isOutdated, useBenchState } from '../../job/state/index.ts';
import { GroupForm } from '../../sheet/form/index.ts';
import { BlockList, BlockPanel } from '../../ui/block/index.ts';
import { MarginList } from '../../ui/margins/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { DecisionPanel } from '../../ui/why/index.ts';
import { CoursePanel } from './course-panel.tsx';
import { useHeat } from './heat-context.ts';
import { heatDecisions } from './heat-decisions.ts';
import { HeatFigures } from './heat-figures.tsx';
import { HeatSection } from './heat-section.tsx';
import type { ShownHeat } from './heat-state.ts';
import { HeatStatus } from './heat-status.tsx';
import { useTorch } from './use-torch.ts';

/** Parts of the job that the heat rests on. */
const GROUPS = ['heat', 'reweld'];

/** The plate while it is gouged: temperatures through time, what follows from them, and what they rest on. */
export function HeatView(): VNode {
  const shown = useHeat((state) => state.shown);
  const current = useBenchState((state) => state.planned) === shown?.planned;
  const outdated = useBenchState(isOutdated) || !current;
  const torch = useTorch(shown);
  const units = useUnits();
  return (
    <>
      <JobHeader />
      <main class="wide-page heat-page" id="result" tabIndex={-1}>
        <div class="heat-state">
          <RestoredNotice />
          <ResultStatus />
          <HeatStatus />
        </div>
        {shown === undefined ? null : (
          <div class={`heat-decisions${outdated ? ' outdated' : ''}`}>
            <DecisionPanel decisions={heatDecisions(sentencesWritten(shown.heat.report, units), units)} />
          </div>
        )}
        <div class="heat-main">
          <SeamStripView torch={torch} />
          {shown === undefined ? null : (
            <div class={`heat-drawings${outdated ? ' outdated' : ''}`}>
              <HeatSection shown={shown} />
              <CoursePanel shown={shown} />
            </div>
          )}
        </div>
        <div class="heat-side">
          {shown === undefined ? null : (
            <div class={outdated ? 'outdated' : ''}>
              <HeatFigures
                report={sentencesWritten(shown.heat.report, units)}
                heat={shown.planned.read.job.heat}
              />
            </div>
          )}
          <section class="panel heat-inputs" aria-label="Heat and re-weld of the job">
            <GroupForm paths={GROUPS} name="Heat and re-weld of the job" />
          </section>
        </div>
        {shown === undefined ? null : (
          <div class={`heat-report${outdated ? ' outdated' : ''}`}>
            <HeatPanels shown={shown} />
          </div>
        )}
      </main>
    </>
  );
}

export function HeatPanels({ shown }: { readonly shown: ShownHeat }): VNode {
  const units = useUnits();
  const report = sentencesWritten(shown.heat.report, units);
  // what the planner held the plan to stands before what the field says of it
  const planner = shown.planned.answer.plan?.limits.filter(({ id }) => id === 'back_face') ?? [];
  const limits = [...planner, ...report.limits];
  const [cooling, coolingRemarks] = coolingBlocks(report, units);
  const stated = report.preheat?.gouging.stated ?? false;
  return (
    <>
      {limits.length === 0 ? null : <MarginList limits={limits} />}
      <BlockPanel
        id="pass-heat"
        table={heatPassTable(report, units)}
        note={heatGround(report, units).join(' ')}
      />
      {report.ends === undefined ? null : <Ends ends={endBlocks(report.ends, units)} />}
      <Part id="preheat" title="Preheat" blocks={preheatBlocks(report, units)}>
        {report.preheat === null ? null : (
          <p class="caption">
            {stated
              ? 'Clear the field “Preheat for gouging” to go back to that of the re-weld.'
              : 'Another one can be written into “Preheat for gouging”.'}
          </p>
        )}
      </Part>
      <BlockPanel id="cooling" table={cooling}>
        <BlockList blocks={[coolingRemarks]} />
      </BlockPanel>
      <div class="heat-pair">
        <Part id="hardness" title="Hardness" blocks={hardnessBlocks(report, units)} />
        <Part id="skin" title="Carburised skin and refill" blocks={[skinBlock(report, units)]} />
      </div>
      <Part id="rests" title="What it rests on" blocks={[restList(report, units)]} />
      <CautionPanel cautions={report.cautions} />
    </>
  );
}

function Ends({ ends: [table, note] }: { readonly ends: ReturnType<typeof endBlocks> }): VNode {
  return <BlockPanel id="heat-ends" table={table} lead={<BlockList blocks={[note]} />} />;
}

interface PartProps {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly PaperBlock[];
  readonly children?: ComponentChildren;
}

/** A part of the report in a panel of its own. */
function Part({ id, title, blocks, children }: PartProps): VNode {
  return (
    <section class="panel" aria-labelledby={`${id}-title`}>
      <header class="panel-head">
        <h2 id={`${id}-title`}>{title}</h2>
      </header>
      <BlockList blocks={blocks} />
      {children}
    </section>
  );
}
