import { formatAmount, formatStated, fromUnit, shownNumber, type UnitSystem } from '@furrow/engine';
import { BESIDE_CUT, heatCourse } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { CourseBox, timeScale } from '../../ui/course/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { useHeat } from './heat-context.ts';
import { frameOf, type ShownHeat } from './heat-state.ts';

/** How hot the back face and the surface beside the groove get, over the whole time followed. */
export function CoursePanel({ shown }: { readonly shown: ShownHeat }): VNode {
  const time = useHeat((state) => state.time);
  const units = useUnits();
  const { field, report } = shown.heat;
  const course = useMemo(() => heatCourse(field), [field]);
  const scale = timeScale(course.time_s.at(-1) ?? 0);
  const now = frameOf(shown, time)?.time;
  const most = shown.planned.read.job.heat.back_face_most;
  const beside = `surface ${formatAmount(BESIDE_CUT, 'length', units)} beside the groove`;
  const highest = Math.max(...course.back_degC);
  return (
    <section class="panel" aria-labelledby="heat-course-title">
      <header class="panel-head">
        <h2 id="heat-course-title">Over time</h2>
        <p class="caption">
          hottest of the back face, and the {beside} at its hotter side; each pass where the torch comes by
        </p>
      </header>
      <CourseBox
        title="Temperatures over time"
        description={`Back face at most ${formatStated(highest, 'degC', units)}.`}
        unit={{ across: scale.unit, up: units === 'inch' ? '°F' : '°C' }}
        across={course.time_s.map((at) => at / scale.seconds)}
        courses={[
          { up: course.back_degC.map((value) => degrees(value, units)), text: 'back face' },
          { up: course.beside_degC.map((value) => degrees(value, units)), text: beside },
        ]}
        limit={
          most === undefined
            ? undefined
            : {
                value: shownNumber(most, 'temperature', units),
                text: `back face at most ${formatAmount(most, 'temperature', units)}`,
              }
        }
        events={report.passes.map((pass) => ({
          at: pass.at_station_s.middle / scale.seconds,
          text: `pass ${pass.number}`,
        }))}
        now={now === undefined ? undefined : now / scale.seconds}
      />
    </section>
  );
}

function degrees(celsius: number, units: UnitSystem): number {
  return shownNumber(fromUnit(celsius, 'degC'), 'temperature', units);
}
