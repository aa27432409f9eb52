import { formatAmount, formatStated, formatStatedBand, type Plan } from '@furrow/engine';
import { chanceWords, wayWords } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { Figure } from '../../ui/figure/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { LockButton } from './lock-button.tsx';
import { assuranceOf, counted, currentText, travelText } from './plan-words.ts';

/** The set-up in big numbers, each with its lock where the planner can plan around it. */
export function Headline({ plan }: { readonly plan: Plan }): VNode {
  const units = useUnits();
  const first = plan.passes[0];
  const { depth_reached, not_too_deep, ligament_kept } = plan.assurance;
  return (
    <dl class="headline">
      <Figure
        name="Electrode"
        value={formatStated(plan.electrode_diameter_mm, 'mm', units, 'length')}
        note={plan.electrode_kind}
      >
        <LockButton name="electrode_diameter" />
      </Figure>
      <Figure
        name="Current"
        value={currentText(plan, units)}
        note={first === undefined ? '' : `at ${formatStated(first.arc_voltage_V, 'V', units)}`}
      >
        <LockButton name="current" />
      </Figure>
      <Figure
        name="Travel"
        value={travelText(plan, units)}
        note={plan.kind === 'blind' ? 'as set' : 'adjusted after gauging'}
      >
        <LockButton name="travel" />
      </Figure>
      <Figure name="Passes" value={String(plan.passes.length)} note={wayWords(plan)} several>
        <LockButton name="tracks" label={counted(plan.tracks, 'track')} />
        <LockButton name="layers" label={counted(plan.layers, 'layer')} />
        {plan.tracks > 1 ? <LockButton name="track_spacing" label="spacing" /> : null}
      </Figure>
      <Figure
        name="Assurance"
        value={chanceWords(assuranceOf(plan))}
        note={`deep enough ${chanceWords(depth_reached)}, not too deep ${chanceWords(not_too_deep)}`}
      />
      <Figure
        name="Job time"
        value={duration(plan.job_time_s.p50)}
        note={`mean ${duration(plan.job_time_s.mean)}, 9 in 10 jobs within ${duration(plan.job_time_s.p90)}; arc ${duration(plan.arc_time_s.p50)}`}
      />
      <Figure
        name="Electrodes"
        value={String(Math.ceil(plan.electrodes_used.p50))}
        note={`mean ${plan.electrodes_used.mean.toFixed(1)}, 9 in 10 jobs use at most ${Math.ceil(plan.electrodes_used.p90)}`}
      />
      <Figure
        name="Floor depth"
        value={formatStatedBand(plan.least_depth_mm.p05, plan.floor_depth_mm.p95, 'mm', units)}
        note={`ligament kept ${chanceWords(ligament_kept)}; arc energy ${formatStated(plan.arc_energy_kJ, 'kJ', units)}`}
      />
    </dl>
  );
}

function duration(seconds: number): string {
  return formatAmount(seconds, 'time', 'metric');
}
