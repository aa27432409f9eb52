import type { SavedJob, SavedKit } from '@furrow/contract';
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { jobPath, PageLink } from '../../ui/route/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import type { PlanReply } from '../../work/index.ts';
import { CheckList } from './check-list.tsx';
import { ConnectionList } from './connection-list.tsx';
import { KitMissing } from './kit-missing.tsx';
import { rigChecks } from './rig-checks.ts';
import { RigFaults } from './rig-faults.tsx';
import { RigHeader } from './rig-header.tsx';
import { RigProgress } from './rig-progress.tsx';
import { SignOff } from './sign-off.tsx';
import type { ShopFaults } from './use-fault-counts.ts';
import { usePlan } from './use-plan.ts';

interface CommissionViewProps {
  readonly job: SavedJob;
  readonly kit: SavedKit;
  readonly shop: ShopFaults;
}

/** The rig before the first arc: connections, checks, faults, signatures. */
export function CommissionView({ job, kit, shop }: CommissionViewProps): VNode {
  const system = useUnits();
  const usable = kit.valid && kit.text !== '';
  const reply = usePlan(job.text, usable ? kit.text : undefined, system);
  const planned = reply?.is === 'answer' ? reply : undefined;
  const supply = planned?.answer.supply;
  const checks = useMemo(
    () => (planned === undefined ? [] : rigChecks(planned, shop.model, system)),
    [planned, shop.model, system],
  );
  const connections = supply?.connections ?? [];
  const changedAt = [job.saved_at, kit.saved_at ?? ''].sort().at(-1) ?? '';
  return (
    <div class="commission">
      <RigHeader title={job.title} />
      <main class="commission-page" id="result" tabIndex={-1}>
        <p class="commission-origin aside">
          Job revision {job.revision_number}
          {supply === undefined ? ', no kit' : `, kit: ${supply.kit.title} (revision ${kit.revision_number})`}
          . Local codes and those licensed for this work go before anything on this page.
        </p>
        <PlanWords reply={reply} job={job} />
        {reply === undefined ? null : (
          <RigProgress connections={connections} checks={checks} system={system} />
        )}
        <div class="commission-panes">
          <div class="commission-checks">
            {usable || reply === undefined ? null : <KitMissing draft={kit.text !== ''} />}
            {connections.length === 0 ? null : <ConnectionList connections={connections} system={system} />}
            {checks.length === 0 ? null : <CheckList checks={checks} system={system} changedAt={changedAt} />}
          </div>
          <div class="commission-faults">
            <RigFaults checks={checks} shop={shop} system={system} />
          </div>
        </div>
        {supply === undefined || supply.cautions.length === 0 ? null : (
          <section class="panel" aria-labelledby="rig-cautions-title">
            <header class="panel-head">
              <h2 id="rig-cautions-title">What the numbers do not know</h2>
            </header>
            <ul class="cautions">
              {supply.cautions.map((caution) => (
                <li key={caution}>{caution}</li>
              ))}
            </ul>
          </section>
        )}
        <SignOff />
      </main>
    </div>
  );
}

interface PlanWordsProps {
  readonly reply: PlanReply | undefined;
  readonly job: SavedJob;
}

/** Why there is nothing to commission yet, or that it is being worked out. */
function PlanWords({ reply, job }: PlanWordsProps): VNode | null {
  if (reply === undefined) return <p role="status">Planning the job with the kit.</p>;
  const toBench = <PageLink to={jobPath(job.id)}>open it on the bench</PageLink>;
  if (reply.is === 'failure')
    return (
      <p class="notice" role="alert">
        The planner failed: {reply.message}
      </p>
    );
  if (reply.is === 'issues')
    return (
      <p class="notice">
        The job has mistakes and cannot be planned, so there is nothing to set up for: {toBench}.
      </p>
    );
  const { plan, refusal, supply } = reply.answer;
  if (plan !== undefined) return null;
  return (
    <p class="notice">
      {supply?.time.says ?? refusal?.summary ?? 'No plan holds for this job.'} There is nothing to set up for
      until it has a plan: {toBench}.
    </p>
  );
}
