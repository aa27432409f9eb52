import { sentencesWritten } from '@furrow/engine';
import type { VNode } from 'preact';
import { JobHeader, RestoredNotice } from '../../job/page/index.ts';
import { CautionPanel, ResultStatus } from '../../job/result/index.ts';
import { SeamStripView } from '../../job/seam-strip/index.ts';
import { isOutdated, useBenchState } from '../../job/state/index.ts';
import { GroupForm } from '../../sheet/form/index.ts';
import { MarginList } from '../../ui/margins/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { CoolingPanel } from './cooling-panel.tsx';
import { CoursePanel } from './course-panel.tsx';
import { EndsPanel } from './ends-panel.tsx';
import { HardnessPanel } from './hardness-panel.tsx';
import { useHeat } from './heat-context.ts';
import { HeatFigures } from './heat-figures.tsx';
import { HeatSection } from './heat-section.tsx';
import type { ShownHeat } from './heat-state.ts';
import { HeatStatus } from './heat-status.tsx';
import { PassHeatTable } from './pass-heat-table.tsx';
import { PreheatPanel } from './preheat-panel.tsx';
import { RestsPanel } from './rests-panel.tsx';
import { SkinPanel } from './skin-panel.tsx';
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
            <Report shown={shown} />
          </div>
        )}
      </main>
    </>
  );
}

function Report({ shown }: { readonly shown: ShownHeat }): VNode {
  const units = useUnits();
  const report = sentencesWritten(shown.heat.report, units);
  // what the planner held the plan to stands before what the field says of it
  const planner = shown.planned.answer.plan?.limits.filter(({ id }) => id === 'back_face') ?? [];
  const limits = [...planner, ...report.limits];
  return (
    <>
      {limits.length === 0 ? null : <MarginList limits={limits} />}
      <PassHeatTable report={report} />
      {report.ends === undefined ? null : <EndsPanel ends={report.ends} />}
      <PreheatPanel report={report} />
      <CoolingPanel report={report} />
      <div class="heat-pair">
        <HardnessPanel report={report} />
        <SkinPanel report={report} />
      </div>
      <RestsPanel report={report} />
      <CautionPanel cautions={report.cautions} />
    </>
  );
}
