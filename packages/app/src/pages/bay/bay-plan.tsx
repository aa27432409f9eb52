import type { FireZoneReport, Kit, PlaceReport, PointReport } from '@furrow/engine';
import { bayDrawing, bayScale } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import type { KitDesk } from '../../job/kit/index.ts';
import { DrawingView, useSize } from '../../ui/drawing/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { BayHandle } from './bay-handle.tsx';
import { bayOfKit } from './bay-of-kit.ts';
import { type Movable, movables, movedKit, moveEdits } from './movable.ts';
import { reachOf } from './reach.ts';

/** Greatest height of the plan [px]. */
const HEIGHT_MOST = 640;

interface BayPlanProps {
  readonly desk: KitDesk;
  readonly kit: Kit;
  readonly place: PlaceReport | undefined;
  /** The fire zone around the seam; undefined until the job is planned. */
  readonly zone: FireZoneReport | undefined;
  /** Whether the ways drawn belong to the bay before the last change. */
  readonly outdated: boolean;
}

/** The bay to scale, with a handle on everything that can be moved. */
export function BayPlan({ desk, kit, place, zone, outdated }: BayPlanProps): VNode {
  const units = useUnits();
  const [box, { width }] = useSize<HTMLDivElement>();
  const [held, setHeld] = useState<{ readonly movable: Movable; readonly to: PointReport }>();
  const [zoneShown, showZone] = useState(true);
  const shownKit = held === undefined ? kit : movedKit(kit, held.movable, held.to);
  const bay = bayOfKit(shownKit);
  const found = place?.station?.at_m;
  const station = movables(shownKit, found).find(({ id }) => id === 'station')?.at;
  // the sheet keeps its scale while something is dragged towards its edge
  const still = bayOfKit(kit);
  const sheet = { width, heightMost: HEIGHT_MOST };
  const scale = still === undefined || width === 0 ? undefined : bayScale({ bay: still, ...sheet });
  const settle = (movable: Movable, to: PointReport): void => {
    setHeld(undefined);
    desk.change(moveEdits(movable, to, units));
  };
  const late = outdated || held !== undefined;
  return (
    <section class="panel bay-panel" aria-labelledby="bay-plan-title">
      <header class="panel-head">
        <h2 id="bay-plan-title">Plan of the bay</h2>
        <p class="caption">
          To scale. Drag what stands in it, or choose it and use the arrow keys, with Shift ten times as far;
          or type its place.
        </p>
        <label class="bay-switch">
          <input
            type="checkbox"
            checked={zoneShown}
            onChange={(event) => showZone(event.currentTarget.checked)}
          />
          Fire zone
        </label>
      </header>
      <div ref={box} class={`drawing-box bay-box${late ? ' routes-outdated' : ''}`}>
        {bay === undefined || scale === undefined ? null : (
          <>
            <DrawingView
              drawing={bayDrawing({
                bay,
                scale,
                station,
                routes: place?.routes ?? [],
                jets: late ? [] : (place?.jets_m ?? []),
                reach: place === undefined || late ? [] : reachOf(place),
                fireZone: zoneShown && !late ? zone : undefined,
                units,
                ...sheet,
              })}
            />
            {movables(kit, found).map((movable) => (
              <BayHandle
                key={movable.id}
                movable={movable}
                at={held?.movable.id === movable.id ? held.to : movable.at}
                scale={scale}
                onDrag={(to) => setHeld({ movable, to })}
                onSettle={(to) => settle(movable, to)}
                onGiveUp={() => setHeld(undefined)}
              />
            ))}
          </>
        )}
      </div>
    </section>
  );
}
