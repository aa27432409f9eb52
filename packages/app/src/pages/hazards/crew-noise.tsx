import { type CrewNoiseReport, formatStated } from '@furrow/engine';
import { rangeText } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { SourceText } from '../../ui/source/index.ts';
import { ColumnHeads, ScrollBox } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** Noise of one crew's shift, task by task, by both families. */
export function CrewNoise({ crew }: { readonly crew: CrewNoiseReport }): VNode {
  const units = useUnits();
  const { five_dB: five, three_dB: three, protection } = crew;
  const time = (minutes: number | null): string => formatStated(minutes, 'min', units);
  const id = `crew-${crew.name.toLowerCase().replace(/[^a-z0-9]+/gu, '-')}`;
  return (
    <section class="panel" aria-labelledby={`${id}-title`}>
      <header class="panel-head">
        <h2 id={`${id}-title`}>Noise: {crew.name}</h2>
        <p class="caption">
          {crew.stated ? '' : 'stands in for a crew that the job does not state; '}
          {crew.people === null ? '' : `${crew.people} people, `}shift {time(crew.shift_min)}
          {crew.quiet_min > 0 ? `, of it ${time(crew.quiet_min)} counted as quiet` : ''}
        </p>
      </header>
      <ScrollBox name={`Tasks of ${crew.name}, table`}>
        <table>
          <ColumnHeads
            names={[
              'Task',
              'Time',
              'Level at the ear',
              '5 dB rule sets against it',
              '3 dB rule sets against it',
              'Level from',
            ]}
          />
          <tbody>
            {crew.tasks.map((task, index) => (
              <tr key={`${index} ${task.name}`}>
                <th scope="row">{task.name}</th>
                <td>{time(task.time_min)}</td>
                <td>{rangeText(task.level_dBA, 'dBA', units)}</td>
                <td>{time(task.osha_time_min)}</td>
                <td>{time(task.niosh_time_min)}</td>
                <td class="words">
                  {task.measured ? (
                    'measured, stated in the job'
                  ) : task.level_dBA === null ? (
                    'not known'
                  ) : (
                    <SourceText source={task.source} />
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
      {crew.missing === null ? null : <p class="verdict-text">{crew.missing}</p>}
      {five === null || three === null ? null : (
        <dl class="family-figures">
          <div>
            <dt>5 dB family (OSHA)</dt>
            <dd>
              dose <b>{rangeText(five.pel_dose_percent, '%', units)}</b>, average of the action level{' '}
              {rangeText(five.action_average_dBA, 'dBA', units)}
            </dd>
          </div>
          <div>
            <dt>3 dB family (NIOSH, EU)</dt>
            <dd>
              dose <b>{rangeText(three.dose_percent, '%', units)}</b>, exposure level L_EX,8h{' '}
              {rangeText(three.exposure_level_dBA, 'dBA', units)}
            </dd>
          </div>
        </dl>
      )}
      <p>
        Worn: {protection.worn}
        {protection.attenuation_dB === null
          ? ''
          : `, ${formatStated(protection.attenuation_dB, 'dB', units)} counted on`}
        . {protection.says}{' '}
        {protection.gouging_time_min === null
          ? ''
          : `By the 3 dB rule ${time(protection.gouging_time_min)} at the loudest task bring 85 dBA under it: a planning figure, no permission.`}
      </p>
      <p class="caption">
        <SourceText source={protection.source} />
      </p>
    </section>
  );
}
