import {
  formatAmount,
  formatStated,
  fromUnit,
  type LeadReport,
  shownNumber,
  type UnitSystem,
} from '@furrow/engine';
import { conductorWords } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { CourseBox, timeScale } from '../../ui/course/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** How hot a lead gets through the duty of the plan, against the limit of its insulation, and what its joints add. */
export function LeadPanel({ lead }: { readonly lead: LeadReport }): VNode {
  const units = useUnits();
  const id = `lead-${lead.name.toLowerCase().replace(/[^a-z0-9]+/gu, '-')}`;
  const { course } = lead;
  const scale = timeScale(course.time_s.at(-1) ?? 0);
  const degrees = (celsius: number): number => shownNumber(fromUnit(celsius, 'degC'), 'temperature', units);
  const limit = temperature(lead.insulation_limit_C, units);
  const highest = temperature(lead.temperature_C, units);
  return (
    <section class="panel lead-panel" aria-labelledby={`${id}-title`}>
      <header class="panel-head">
        <h2 id={`${id}-title`}>{lead.name}</h2>
        <p class="caption">
          {lead.side} lead, {lead.parallels === 1 ? '' : `${lead.parallels} × `}
          {conductorWords(lead.size, units)}, {formatAmount(lead.length_m, 'length', units)}:{' '}
          {formatStated(lead.current_A, 'A', units)}, {formatStated(lead.drop_V, 'V', units)} dropped
        </p>
      </header>
      <CourseBox
        title={`Temperature of ${lead.name}`}
        description={`At most ${highest} through the duty of the plan; the limit is ${limit}.`}
        unit={{ across: scale.unit, up: units === 'inch' ? '°F' : '°C' }}
        across={course.time_s.map((time) => time / scale.seconds)}
        courses={[{ up: course.temperature_C.map(degrees) }]}
        limit={{ value: degrees(lead.insulation_limit_C), text: `insulation limit ${limit}` }}
      />
      <p>
        At most {highest} in the duty of the plan. {steadyText(lead, units)}
      </p>
      {lead.joints.length === 0 ? null : (
        <ul class="plain-list">
          {lead.joints.map((joint, index) => (
            <li key={`${index} ${joint.name}`}>
              {joint.name}: {joint.resistance_mohm.toPrecision(2)} mΩ,{' '}
              {formatStated(joint.drop_mV, 'mV', units)}, {formatStated(joint.heat_W, 'W', units)}
              {joint.rise_K === null
                ? ''
                : `; up to ${rise(joint.rise_K, units)} hotter than the lead beside it`}
            </li>
          ))}
        </ul>
      )}
      <p class="caption">
        Limit of the insulation{' '}
        {lead.insulation_limit_provenance === 'job file' ? 'stated in the kit' : 'from memory'}; time constant{' '}
        {formatAmount(lead.time_constant_s, 'time', units)}.
      </p>
    </section>
  );
}

function steadyText(lead: LeadReport, units: UnitSystem): string {
  const steady =
    lead.steady_C === null
      ? (lead.steady_says ?? 'Under a current that never stops it would not settle.')
      : `Under a current that never stops it would settle at ${temperature(lead.steady_C, units)}.`;
  return lead.time_to_limit_s === null
    ? steady
    : `${steady} It would reach its limit after ${formatAmount(lead.time_to_limit_s, 'time', units)}.`;
}

function temperature(celsius: number, units: UnitSystem): string {
  return formatStated(celsius, 'degC', units);
}

/** A difference of temperatures. */
function rise(kelvin: number, units: UnitSystem): string {
  return formatStated(kelvin, 'K', units);
}
