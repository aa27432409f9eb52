import type { SupplyReport } from '@furrow/engine';
import type { VNode } from 'preact';
import { jobTitle } from '../../job/page/index.ts';
import { CautionPanel, KitNotice, ResultStatus } from '../../job/result/index.ts';
import { isOutdated, useBenchState } from '../../job/state/index.ts';
import { MarginList } from '../../ui/margins/index.ts';
import { jobPath, PageLink } from '../../ui/route/index.ts';
import { SiteHeader } from '../../ui/site/index.ts';
import { Said } from '../../ui/theme/index.ts';
import { AirPanel } from './air-panel.tsx';
import { DrawdownPanel } from './drawdown-panel.tsx';
import { HoseChangesPanel } from './hose-changes-panel.tsx';
import { LeadPanel } from './lead-panel.tsx';
import { LoopPanel } from './loop-panel.tsx';
import { NoKit } from './no-kit.tsx';
import { SupplyHead } from './supply-head.tsx';

interface SupplyViewProps {
  readonly id: string | undefined;
  readonly demo: string;
}

/** The supply of a job: whether the kit carries the plan, and what it makes of it. */
export function SupplyView({ id, demo }: SupplyViewProps): VNode {
  const title = useBenchState(jobTitle);
  const supply = useBenchState((state) => state.planned?.answer.supply);
  const planned = useBenchState((state) => state.planned !== undefined);
  const outdated = useBenchState(isOutdated);
  return (
    <>
      <SiteHeader title={title} />
      <main class="wide-page" id="result" tabIndex={-1}>
        <ResultStatus />
        <KitNotice />
        <JobNotReadable id={id} />
        {supply !== undefined ? (
          <div class={`result-details${outdated ? ' outdated' : ''}`}>
            <SupplyPanels
              supply={supply}
              bay={`${id === undefined ? `/demo/${encodeURIComponent(demo)}` : jobPath(id)}/bay`}
            />
          </div>
        ) : planned ? (
          <NoKit />
        ) : null}
      </main>
    </>
  );
}

function JobNotReadable({ id }: { readonly id: string | undefined }): VNode | null {
  const wrong = useBenchState((state) => state.issues.length > 0);
  if (!wrong) return null;
  return (
    <p class="notice">
      Power and air are worked out for a plan: put the job right{' '}
      <PageLink to={id === undefined ? '/' : jobPath(id)}>on the bench</PageLink> first.
    </p>
  );
}

export function SupplyPanels({
  supply,
  bay,
}: {
  readonly supply: SupplyReport;
  readonly bay: string;
}): VNode {
  const { electric, air, place, limits, issues, cautions } = supply;
  return (
    <>
      <SupplyHead supply={supply} />
      {issues.length === 0 ? null : (
        <section class="panel" aria-labelledby="supply-issues-title">
          <header class="panel-head">
            <h2 id="supply-issues-title">Left out</h2>
          </header>
          <ul>
            {issues.map(({ path, message }) => (
              <li key={`${path} ${message}`}>{message}</li>
            ))}
          </ul>
        </section>
      )}
      {limits.length === 0 ? null : <MarginList limits={limits} />}
      {electric === null ? null : electric.kind === 'no_operating_point' ? (
        <section class="panel" aria-labelledby="loop-title">
          <header class="panel-head">
            <h2 id="loop-title">Electric loop</h2>
          </header>
          <p class="verdict-text">{electric.reason}</p>
        </section>
      ) : (
        <>
          <LoopPanel loop={electric} />
          <div class="lead-panels">
            {electric.leads.map((lead) => (
              <LeadPanel key={lead.name} lead={lead} />
            ))}
          </div>
        </>
      )}
      {air === null ? null : (
        <>
          <AirPanel air={air} />
          <DrawdownPanel drawdown={air.drawdown} />
          {air.hose_changes === null ? null : <HoseChangesPanel changes={air.hose_changes} />}
        </>
      )}
      <section class="panel" aria-labelledby="place-title">
        <header class="panel-head">
          <h2 id="place-title">Place</h2>
        </header>
        <p>
          <Said
            sentence={place === null ? 'The kit describes no bay that could be worked with.' : place.says}
          />{' '}
          <PageLink to={bay}>Open the bay plan</PageLink>
        </p>
      </section>
      <CautionPanel
        cautions={[
          ...new Set([
            ...cautions,
            ...(electric?.kind === 'operating_point' ? electric.cautions : []),
            ...(air?.cautions ?? []),
          ]),
        ]}
      />
    </>
  );
}
