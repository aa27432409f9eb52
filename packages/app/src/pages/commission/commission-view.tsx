import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { jobTitle } from '../../job/page/index.ts';
import { ResultStatus } from '../../job/result/index.ts';
import { useBench, useBenchState, usedKit } from '../../job/state/index.ts';
import { isUnsaved } from '../../sheet/keep/index.ts';
import { ownMemory } from '../../ui/session/index.ts';
import { Said, useUnits } from '../../ui/theme/index.ts';
import { CheckList } from './check-list.tsx';
import { ConnectionList } from './connection-list.tsx';
import { keepRoundPlace, RigRound, RoundChooser, type RoundPlace, roundPlaceOf } from './floor/index.ts';
import { KitMissing } from './kit-missing.tsx';
import { rigChecks } from './rig-checks.ts';
import { RigFaults, useNextCheck } from './rig-faults.tsx';
import { RigHeader } from './rig-header.tsx';
import { RigProgress } from './rig-progress.tsx';
import { SignOff } from './sign-off.tsx';
import { TorchPanel } from './torch-panel.tsx';
import type { ShopFaults } from './use-fault-counts.ts';

/** The rig before the first arc: connections, checks, faults, signatures. */
export function CommissionView({ shop }: { readonly shop: ShopFaults }): VNode {
  const system = useUnits();
  const title = useBenchState(jobTitle);
  const kit = useBenchState((state) => state.kit);
  const planned = useBenchState((state) => state.planned);
  const savedAt = useBenchState((state) => state.saved?.saved_at);
  const supply = planned?.answer.supply;
  const checks = useMemo(
    () => (planned === undefined ? [] : rigChecks(planned, shop.model)),
    [planned, shop.model],
  );
  const next = useNextCheck({ checks, shop });
  const { place, move } = useRoundPlace();
  const connections = supply?.connections ?? [];
  const changedAt = [savedAt ?? '', usedKit(kit)?.savedAt ?? ''].sort().at(-1) ?? '';
  return (
    <div class="commission">
      <RigHeader title={title} />
      <main class="commission-page" id="result" tabIndex={-1}>
        <Origin />
        <ResultStatus />
        <NothingToSetUp />
        <Invented />
        {planned === undefined ? null : <RigProgress connections={connections} checks={checks} />}
        {checks.length === 0 ? null : <RoundChooser place={place} onChange={move} />}
        {place.view === 'list' || checks.length === 0 ? null : (
          <RigRound
            depth={place.view}
            checks={checks}
            place={place}
            onMove={(check) => move({ ...place, check })}
          />
        )}
        <div class={`commission-panes${place.view === 'list' ? '' : ' only-on-paper'}`}>
          <div class="commission-checks">
            {typeof kit === 'string' ? <KitMissing draft={kit === 'mistakes'} /> : null}
            {planned?.answer.plan === undefined ? null : (
              <TorchPanel read={planned.read} answer={planned.answer} plan={planned.answer.plan} />
            )}
            {connections.length === 0 ? null : <ConnectionList connections={connections} system={system} />}
            {checks.length === 0 ? null : (
              <CheckList checks={checks} system={system} changedAt={changedAt} next={next} />
            )}
          </div>
          <div class="commission-faults">
            <RigFaults checks={checks} shop={shop} />
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

/** Where the person at this tablet is, kept from visit to visit. */
function useRoundPlace(): { readonly place: RoundPlace; readonly move: (place: RoundPlace) => void } {
  const { draftName } = useBench();
  const job = useBenchState((state) => state.saved?.id) ?? draftName ?? 'new';
  const [place, setPlace] = useState(() => roundPlaceOf(ownMemory(), job));
  const move = (next: RoundPlace): void => {
    setPlace(next);
    keepRoundPlace(ownMemory(), job, next);
  };
  return { place, move };
}

/** Which job and which kit the checks are for. */
function Origin(): VNode {
  const job = useBenchState((state) =>
    state.saved === undefined
      ? 'Job not saved yet'
      : isUnsaved(state)
        ? `Job revision ${state.revision} with changes that are not saved`
        : `Job revision ${state.revision}`,
  );
  const kit = usedKit(useBenchState((state) => state.kit));
  const { title } = kit?.read.kit ?? {};
  const words =
    kit === undefined
      ? 'no kit'
      : kit.of === 'demo'
        ? `the demo’s kit: ${title}`
        : `kit: ${title} (${kit.revision === 0 ? 'not saved' : `revision ${kit.revision}`})`;
  return (
    <p class="commission-origin aside">
      {job}, {words}. Local codes and those licensed for this work go before anything on this page.
    </p>
  );
}

/** Says that the readings of the demo's rig were made up. */
function Invented(): VNode | null {
  const bench = useBench();
  const demo = useBenchState((state) => state.saved === undefined && bench.isDemo());
  if (!demo) return null;
  return (
    <p class="notice">
      The rig of the demo is invented: connections ticked and readings here were made up, to show what a rig
      in order reads. Type over any of them.
    </p>
  );
}

/** Why there is nothing to commission yet. */
function NothingToSetUp(): VNode | null {
  const words = useBenchState(({ planned }) => {
    if (planned === undefined || planned.answer.plan !== undefined) return undefined;
    const { refusal, supply } = planned.answer;
    return supply?.time.says ?? refusal?.summary ?? 'No plan holds for this job.';
  });
  if (words === undefined) return null;
  return (
    <p class="notice">
      <Said sentence={words} /> There is nothing to set up for until it has a plan.
    </p>
  );
}
