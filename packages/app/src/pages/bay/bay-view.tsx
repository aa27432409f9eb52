import { bayOfJob, type FireZoneReport } from '@furrow/engine';
import { pickTable, routeTable } from '@furrow/papers/blocks';
import { fireZoneDrawing } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { type KitDesk, kitSaveWords } from '../../job/kit/index.ts';
import { KitNotice, ResultStatus } from '../../job/result/index.ts';
import { isOutdated, useBench, useBenchState } from '../../job/state/index.ts';
import { useHazards } from '../../job/use-hazards.ts';
import { isUnsaved, useLeaveGuard } from '../../sheet/keep/index.ts';
import { BlockPanel } from '../../ui/block/index.ts';
import { DrawingView, useSize } from '../../ui/drawing/index.ts';
import { PageLink } from '../../ui/route/index.ts';
import { SiteHeader } from '../../ui/site/index.ts';
import { useSelected } from '../../ui/store/index.ts';
import { Said, useUnits } from '../../ui/theme/index.ts';
import { BayPlan } from './bay-plan.tsx';
import { PlaceTable } from './place-table.tsx';

interface BayViewProps {
  readonly desk: KitDesk;
}

/** The plan of the bay, the places typed, and what is picked from stock. */
export function BayView({ desk }: BayViewProps): VNode {
  useLeaveGuard(useSelected(desk.store, isUnsaved));
  const words = useSelected(desk.store, kitSaveWords);
  const failed = useSelected(desk.store, (state) => state.save.is === 'failed');
  const kit = useSelected(desk.store, (state) => state.read?.kit);
  const job = useBenchState((state) => state.read?.job);
  const here = kit !== undefined && job !== undefined && bayOfJob(kit, job) !== undefined;
  const place = useBenchState((state) => state.planned?.answer.supply?.place ?? undefined);
  const issues = useBenchState((state) => state.planned?.answer.supply?.issues);
  const outdated = useBenchState(isOutdated);
  const zone = useHazards()?.fire_zone;
  const units = useUnits();
  const told = (issues ?? []).filter((issue) => place === undefined && issue.path.startsWith('bay'));
  return (
    <>
      <SiteHeader
        state={
          <p class={`save-state${failed ? ' save-failed' : ''}`} role="status" aria-label="Save state">
            Kit: {words}
          </p>
        }
      >
        <fieldset class="actions">
          <legend class="unseen">The kit as a whole</legend>
          <button type="button" class="primary" onClick={() => void desk.save()}>
            Save kit
          </button>
        </fieldset>
      </SiteHeader>
      <main class="wide-page" id="result" tabIndex={-1}>
        <ResultStatus />
        <KitNotice />
        {kit?.bay === undefined ? (
          <NoBay described={kit !== undefined} />
        ) : !here ? (
          <OtherBay desk={desk} name={kit.bay.name} stated={job?.site.bay} zone={zone} />
        ) : (
          <div class="bay-panes">
            <div class="result-details">
              <BayPlan desk={desk} kit={kit} place={place} zone={zone} outdated={outdated} />
              {place === undefined ? null : <BlockPanel id="ways" table={routeTable(place, units)} />}
            </div>
            <div class={`bay-side${outdated ? ' result-details outdated' : ' result-details'}`}>
              {place === undefined ? null : (
                <section class="panel" aria-labelledby="station-title">
                  <header class="panel-head">
                    <h2 id="station-title">Control station</h2>
                  </header>
                  <p class={place.station === null ? 'verdict-text' : ''}>
                    <Said sentence={place.says} />
                  </p>
                  {place.cautions.length === 0 ? null : (
                    <ul class="notice" aria-label="Cautions of the bay">
                      {place.cautions.map((caution) => (
                        <li key={caution}>{caution}</li>
                      ))}
                    </ul>
                  )}
                </section>
              )}
              {told.length === 0 ? null : (
                <ul class="notice" aria-label="Left out">
                  {told.map(({ path, message }) => (
                    <li key={`${path} ${message}`}>{message}</li>
                  ))}
                </ul>
              )}
              <PlaceTable desk={desk} kit={kit} />
              {place === undefined ? null : (
                <>
                  <BlockPanel id="picks" table={pickTable('From stock', place.picks, units)} />
                  <BlockPanel id="left" table={pickTable('Left in stock', place.left, units)} />
                </>
              )}
            </div>
          </div>
        )}
      </main>
    </>
  );
}

interface OtherBayProps {
  readonly desk: KitDesk;
  /** What the kit calls its bay. */
  readonly name: string | undefined;
  /** Bay that the job names. */
  readonly stated: string | undefined;
  readonly zone: FireZoneReport | undefined;
}

/** A job that is not done in the kit's bay: its seam alone, and how to say that it is done there after all. */
function OtherBay({ desk, name, stated, zone }: OtherBayProps): VNode {
  const bench = useBench();
  const units = useUnits();
  const [box, { width }] = useSize<HTMLDivElement>();
  const bay = name ?? 'Bay of the kit';
  return (
    <section class="panel" aria-labelledby="other-bay-title">
      <header class="panel-head">
        <h2 id="other-bay-title">Plan of the seam</h2>
      </header>
      <p>
        {stated === undefined
          ? `The job does not say in which bay it is done, so nothing but its own seam is drawn. The kit describes “${bay}”.`
          : `The job is done in “${stated}”; the kit describes “${bay}”. Nothing but the job’s own seam is drawn.`}{' '}
        <button
          type="button"
          onClick={() => {
            if (name === undefined) desk.change([{ do: 'set', path: ['bay', 'name'], value: bay }]);
            bench.change([{ do: 'set', path: ['site', 'bay'], value: bay }]);
          }}
        >
          This job is done in {bay}
        </button>
      </p>
      <div ref={box} class="drawing-box">
        {zone === undefined || width === 0 ? null : (
          <DrawingView drawing={fireZoneDrawing({ zone, units, width, heightMost: 480 })} />
        )}
      </div>
    </section>
  );
}

/** What there is to describe before the bay can be drawn. */
function NoBay({ described }: { readonly described: boolean }): VNode {
  return (
    <section class="panel" aria-labelledby="no-bay-title">
      <header class="panel-head">
        <h2 id="no-bay-title">No bay to draw</h2>
      </header>
      <p>
        {described
          ? 'The kit can be read, and describes no bay; it need not. To have the control station placed, describe:'
          : 'No kit that can be read is described yet. Power, leads and air come first; for a place of the control station, then:'}
      </p>
      <ul class="needed-list">
        <li>the outline of the bay, corner by corner;</li>
        <li>the workpiece, and the seam on it;</li>
        <li>where power and air come from;</li>
        <li>obstacles and walkways, where there are any;</li>
        <li>the leads and hoses in stock.</li>
      </ul>
      <p>
        <PageLink to="/kit" class="button">
          Describe the kit
        </PageLink>
      </p>
    </section>
  );
}
