import { formatStated, type HazardReport, sentenceText, type UnitSystem } from '@furrow/engine';
import { shadeFigure } from '@furrow/papers/words';
import type { Decision } from '../../ui/why/index.ts';

/** What to do about the hazards, each with the figure of this job and where it comes from. */
export function hazardDecisions(report: HazardReport, units: UnitSystem): readonly Decision[] {
  const { fire_zone: zone, noise, sections, setting } = report;
  const shade = shadeFigure(report);
  const rulesOf = (id: HazardReport['sections'][number]['id']): string[] =>
    (sections.find((section) => section.id === id)?.rules ?? []).map(({ text }) => sentenceText(text, units));
  const [crew] = noise;
  return [
    {
      act: 'Stand and keep fuel',
      value: formatStated(zone.radius_m, 'm', units),
      note: `away all round and below; ${formatStated(zone.ahead_m, 'm', units)} ahead along the jet`,
      of: ['fireZone'],
      rests: [zone.direction, ...rulesOf('fire')],
    },
    {
      act: 'Watch for fire',
      value: formatStated(zone.watch_min, 'min', units),
      note: 'after the last arc, by a person with no other duty',
      of: ['fireZone'],
      rests: rulesOf('fire'),
    },
    {
      act: 'Wear a filter of',
      value: shade.value,
      note: shade.note,
      of: ['leastShade', 'suggestedShade', 'europeanShade'],
      rests: [`${formatStated(setting.current_A, 'A', units)} in the arc`, ...rulesOf('eyes')],
    },
    {
      act: 'Wear on the ears',
      value: crew?.protection.worn ?? 'not known',
      note: crew?.protection.says ?? 'no crew is known',
      of: ['oshaDose', 'nioshDose'],
      rests: rulesOf('noise'),
    },
    {
      act: 'Keep implant wearers out',
      value: 'always',
      note: 'unless cleared in person by those who are licensed to',
      of: ['fieldOfLead', 'fieldOfPair'],
      rests: rulesOf('field'),
    },
  ];
}
