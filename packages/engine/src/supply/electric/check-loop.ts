import type { Issue } from '../../issue/index.ts';
import { dutyIssues, leadIssues } from './check-lead.ts';
import { sourceIssues } from './check-source.ts';
import { HOTTEST } from './copper.ts';
import type { Arc, ElectricLoop } from './electric-loop.ts';
import { outsideRange } from './supply-issue.ts';

/** Everything that keeps the sources and leads of a kit from being reckoned with. */
export function kitIssues(kit: Pick<ElectricLoop, 'sources' | 'leads' | 'ambient'>): readonly Issue[] {
  const none: readonly Issue[] =
    kit.sources.length > 0
      ? []
      : [
          {
            code: 'ELECTRIC_VALUE',
            message: 'There is no power source; give at least one.',
            path: 'sources',
            read: 'nothing',
            accepted: 'one or more power sources',
          },
        ];
  return [
    ...none,
    ...outsideRange(
      kit.ambient,
      { least: 233, most: 333, unit: 'K' },
      'The temperature around the leads',
      'ambient',
    ),
    ...kit.sources.flatMap(({ source, leads = [] }, i) => [
      ...sourceIssues(source, `sources[${i}].source`),
      ...leads.flatMap((lead, k) => leadIssues(lead, `sources[${i}].leads[${k}]`, kit.ambient)),
    ]),
    ...kit.leads.flatMap((lead, i) => leadIssues(lead, `leads[${i}]`, kit.ambient)),
  ];
}

/** Everything that keeps a loop from being solved, but for a working point that does not exist. */
export function loopIssues(loop: ElectricLoop): readonly Issue[] {
  return [
    ...kitIssues(loop),
    ...arcIssues(loop.arc),
    ...(loop.duty === undefined ? [] : dutyIssues(loop.duty, 'duty')),
    ...(loop.lead_temperature === undefined
      ? []
      : outsideRange(
          loop.lead_temperature,
          { least: 223, most: HOTTEST, unit: 'K' },
          'The temperature of the leads',
          'lead_temperature',
        )),
  ];
}

function arcIssues(arc: Arc): readonly Issue[] {
  const volts = { least: 0, most: 200, unit: 'V', above: true };
  if (arc.holds === 'voltage') return outsideRange(arc.voltage, volts, 'The arc voltage', 'arc.voltage');
  return [
    ...outsideRange(
      arc.current,
      { least: 0, most: 20_000, unit: 'A', above: true },
      'The current',
      'arc.current',
    ),
    ...(arc.voltage === undefined ? [] : outsideRange(arc.voltage, volts, 'The arc voltage', 'arc.voltage')),
  ];
}
