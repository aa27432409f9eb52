import type { HazardReport } from '@furrow/engine';
import type { VNode } from 'preact';
import { JobHeader, RestoredNotice } from '../../job/page/index.ts';
import { CautionPanel, ResultStatus } from '../../job/result/index.ts';
import { isOutdated, useBenchState } from '../../job/state/index.ts';
import { useHazards } from '../../job/use-hazards.ts';
import { GroupForm } from '../../sheet/form/index.ts';
import { MarginList } from '../../ui/margins/index.ts';
import { BreachPanel } from './breach-panel.tsx';
import { CrewNoise } from './crew-noise.tsx';
import { CrewTable } from './crew-table.tsx';
import { FieldTable } from './field-table.tsx';
import { FumeTable } from './fume-table.tsx';
import { HazardHead } from './hazard-head.tsx';
import { SectionPanel } from './section-panel.tsx';
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
          {report === undefined ? <p role="status">Reckoning.</p> : <Report report={report} />}
        </div>
      </main>
    </>
  );
}

function Report({ report }: { readonly report: HazardReport }): VNode {
  const { noise, sections, fume, field, limits, fire_zone: zone, stop_work: stop, cautions } = report;
  return (
    <>
      <BreachPanel breaches={report.breaches} />
      <HazardHead report={report} />
      <StopWork conditions={stop} />
      <ZonePanel zone={zone} />
      {noise.map((crew) => (
        <CrewNoise key={crew.name} crew={crew} />
      ))}
      {noise.length === 0 ? null : <CrewTable crews={noise} />}
      {sections.map((section) => (
        <SectionPanel key={section.id} section={section}>
          {section.id === 'fume' ? <FumeTable fume={fume} /> : null}
          {section.id === 'field' ? <FieldTable field={field} /> : null}
        </SectionPanel>
      ))}
      {limits.length === 0 ? null : <MarginList limits={limits} />}
      <CautionPanel cautions={cautions} />
    </>
  );
}
