import { formatAmount, type Plan } from '@furrow/engine';
import type { ComponentChildren, VNode } from 'preact';
import { shownBand, shownChance, shownSize } from '../amount/index.ts';
import { useUnits } from '../theme/index.ts';
import { LockButton } from './lock-button.tsx';
import type { LockName } from './lock-edits.ts';
import { assuranceOf, counted, currentText, energyText, kindText, travelText } from './plan-words.ts';

/** The set-up in big numbers, each with its lock where the planner can plan around it. */
export function Headline({ plan }: { readonly plan: Plan }): VNode {
  const units = useUnits();
  const first = plan.passes[0];
  const { depth_reached, not_too_deep, ligament_kept } = plan.assurance;
  return (
    <dl class="headline">
      <Figure name="Electrode" note={plan.electrode_kind} lock="electrode_diameter">
        {shownSize(plan.electrode_diameter_mm, units)}
      </Figure>
      <Figure
        name="Current"
        note={first === undefined ? '' : `at ${first.arc_voltage_V.toFixed(0)} V`}
        lock="current"
      >
        {currentText(plan, units)}
      </Figure>
      <Figure name="Travel" note={plan.kind === 'blind' ? 'as set' : 'adjusted after gauging'} lock="travel">
        {travelText(plan, units)}
      </Figure>
      <Figure name="Passes" note={kindText(plan)}>
        {plan.passes.length}
        <span class="figure-locks">
          <LockButton name="tracks" label={counted(plan.tracks, 'track')} />
          <LockButton name="layers" label={counted(plan.layers, 'layer')} />
          {plan.tracks > 1 ? <LockButton name="track_spacing" label="spacing" /> : null}
        </span>
      </Figure>
      <Figure
        name="Assurance"
        note={`deep enough ${shownChance(depth_reached)}, not too deep ${shownChance(not_too_deep)}`}
      >
        {shownChance(assuranceOf(plan))}
      </Figure>
      <Figure
        name="Job time"
        note={`arc ${duration(plan.arc_time_s.p50)}; 9 in 10 within ${duration(plan.job_time_s.p90)}`}
      >
        {duration(plan.job_time_s.p50)}
      </Figure>
      <Figure name="Electrodes" note={`9 in 10 jobs use at most ${Math.ceil(plan.electrodes_used.p90)}`}>
        {Math.ceil(plan.electrodes_used.p50)}
      </Figure>
      <Figure
        name="Floor depth"
        note={`ligament kept ${shownChance(ligament_kept)}; arc energy ${energyText(plan.arc_energy_kJ)}`}
      >
        {shownBand(plan.least_depth_mm.p05, plan.floor_depth_mm.p95, 'mm', units)}
      </Figure>
    </dl>
  );
}

interface FigureProps {
  readonly name: string;
  readonly note: string;
  readonly lock?: LockName;
  readonly children: ComponentChildren;
}

function Figure({ name, note, lock, children }: FigureProps): VNode {
  return (
    <div class="figure">
      <dt>{name}</dt>
      <dd>
        <span class="figure-value">{children}</span>
        {lock === undefined ? null : <LockButton name={lock} />}
        <span class="figure-note">{note}</span>
      </dd>
    </div>
  );
}

function duration(seconds: number): string {
  return formatAmount(seconds, 'time', 'metric');
}
