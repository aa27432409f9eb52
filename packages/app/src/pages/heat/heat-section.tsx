import { formatStated, inUnit, metalOf } from '@furrow/engine';
import { heatDrawing } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { DrawingView, useSize } from '../../ui/drawing/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { useHeat } from './heat-context.ts';
import { frameOf, type ShownHeat } from './heat-state.ts';
import { MomentBar } from './moment-bar.tsx';

/** Greatest height of the section on the page [px]. */
const HEIGHT_MOST = 400;

/** The section at the moment looked at, with the time to go through. */
export function HeatSection({ shown }: { readonly shown: ShownHeat }): VNode {
  const time = useHeat((state) => state.time);
  const units = useUnits();
  const [box, { width }] = useSize<HTMLDivElement>();
  const frame = frameOf(shown, time);
  const { report, field } = shown.heat;
  const { groove, plate } = shown.planned.read.job;
  const drawing = useMemo(() => {
    if (frame === undefined || width === 0) return undefined;
    const marks = {
      ac1: report.transformation?.ac1_degC,
      ac3: report.transformation?.ac3_degC,
      melting: inUnit(metalOf(plate.material).meltingData.meltingPoint.value, 'degC'),
    };
    return heatDrawing({ field, frame, groove, plate, marks, units, width, heightMost: HEIGHT_MOST });
  }, [frame, report, groove, plate, units, width]);
  return (
    <section class="panel heat-section" aria-labelledby="heat-section-title">
      <header class="panel-head">
        <h2 id="heat-section-title">Section</h2>
        <p class="caption">
          {formatStated(report.station_mm, 'mm', units, 'length')} from the start, with the middle share of
          heat kept by the plate.
        </p>
      </header>
      <MomentBar shown={shown} />
      <div ref={box} class="drawing-box heat-box">
        {drawing === undefined ? null : <DrawingView drawing={drawing} />}
      </div>
    </section>
  );
}
