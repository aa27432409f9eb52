import type { HazardReport } from '@furrow/engine';
import { crewBlocks, crewTables, sectionBlocks } from '@furrow/papers/blocks';
import type { VNode } from 'preact';
import { JobHeader, RestoredNotice } from '../../job/page/index.ts';
import { CautionPanel, ResultStatus } from '../../job/result/index.ts';
import { isOutdated, useBenchState } from '../../job/state/index.ts';
import { useHazards } from '../../job/use-hazards.ts';
import { GroupForm } from '../../sheet/form/index.ts';
import { BlockList, BlockPanel } from '../../ui/block/index.ts';
import { MarginList } from '../../ui/margins/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { DecisionPanel } from '../../ui/why/index.ts';
import { BreachPanel } from './breach-panel.tsx';
import { hazardDecisions } from './hazard-decisions.ts';
import { HazardHead } from './hazard-head.tsx';
import { StopWork } from './stop-work.tsx';
import { ZonePanel } from './zone-panel.tsx';

/** The hazards of a job beside the site that they rest on. */
export function HazardsView(): VNode {
  const report = useHazards();
  const outdated = useBenchState(isOutdated);
  const wrong = useBenchState((state) => state.issues.length > 0);
  return (
    <>
      <JobHeader />
      <main class="wide-page beside-page" id="result" tabIndex={-1}>
        <div class="beside-status">
          <RestoredNotice />
          <ResultStatus />
          {wrong ? (
            <p class="notice">
              The job cannot be read as it stands; what is shown belongs to it as it was before.
            </p>
          ) : null}
        </div>
        <section class="panel beside-inputs" aria-label="The site and its crews">
          <GroupForm paths={['site']} name="The site and its crews" />
        </section>
        <div class={`beside-result hazard-result${outdated ? ' outdated' : ''}`}>
          {report === undefined ? <p role="status">Reckoning.</p> : <HazardPanels report={report} />}
        </div>
      </main>
    </>
  );
}

export function HazardPanels({ report }: { readonly report: HazardReport }): VNode {
  const { noise, sections, limits, fire_zone: zone, stop_work: stop, cautions } = report;
  const units = useUnits();
  return (
    <>
      <DecisionPanel decisions={hazardDecisions(report, units)} />
      <BreachPanel breaches={report.breaches} />
      <HazardHead report={report} />
      <StopWork conditions={stop} />
      <ZonePanel zone={zone} />
      {noise.map((crew, index) => {
        const [tasks, ...notes] = crewBlocks(crew, units);
        return (
          <BlockPanel key={crew.name} id={`crew-${index}`} table={tasks}>
            <BlockList blocks={notes} />
          </BlockPanel>
        );
      })}
      {crewTables(noise, units).map((table, index) => (
        <BlockPanel
          key={index}
          id={`crew-rules-${index}`}
          table={table}
          note="each rule names its family; the upper end of a band is held against the figure"
        />
      ))}
      {sections.map((section) => (
        <section key={section.id} class="panel" aria-labelledby={`hazard-${section.id}-title`}>
          <header class="panel-head">
            <h2 id={`hazard-${section.id}-title`}>{section.title}</h2>
          </header>
          <BlockList blocks={sectionBlocks(section, report, units)} />
        </section>
      ))}
      {limits.length === 0 ? null : <MarginList limits={limits} />}
      <CautionPanel cautions={cautions} />
    </>
  );
}
