import {
  formatAmount,
  formatStated,
  type HeatReport,
  type Job,
  sentencesWritten,
  type UnitSystem,
} from '@furrow/engine';
import { rangeText } from '../words/index.ts';
import { labelTable } from './label-table.ts';
import type { PaperBlock } from './paper-document.ts';

/** Preheat, waits and grinding; without a report what the job itself states. */
export function heatBlocks(job: Job, heat: HeatReport | undefined, units: UnitSystem): PaperBlock[] {
  const report = heat === undefined ? undefined : sentencesWritten(heat, units);
  const kelvin = (value: number): string => formatAmount(value, 'temperature', units);
  const celsius = (value: number): string => formatStated(value, 'degC', units);
  const stated: (readonly [string, string])[] = [
    ['Greatest interpass temperature', kelvin(job.heat.interpass_most)],
    ['Grind off the gouged face', formatAmount(job.heat.skin_allowance, 'depth', units)],
    ...(job.heat.back_face_most === undefined
      ? []
      : [
          [
            `Back of the plate${job.heat.back_face === undefined ? '' : ` (${job.heat.back_face})`}`,
            `at most ${kelvin(job.heat.back_face_most)}`,
          ] as const,
        ]),
  ];
  if (report === undefined) {
    const preheat = job.heat.preheat === undefined ? 'not stated' : kelvin(job.heat.preheat);
    return [labelTable('Heat, as the job states it', [['Preheat for gouging', preheat], ...stated])];
  }
  const { preheat, back_face_degC: back, hardness, skin } = report;
  const waits = report.passes.filter(({ wait_s }) => wait_s.most >= 1);
  const rows: (readonly [string, string])[] = [
    ...(preheat === null
      ? [['Preheat for gouging', report.preheat_missing ?? 'not covered'] as const]
      : [
          [
            'Preheat for gouging',
            preheat.gouging.known
              ? `${celsius(preheat.gouging.temperature_degC)} (${preheat.gouging.stated ? 'as the job states' : `as for the re-weld, ${preheat.gouging.source.provenance}`})`
              : 'not known: state the composition, or the preheat itself',
          ] as const,
          ...preheat.methods.map(
            ({ method, temperature_degC, source, inside_range }) =>
              [
                `Preheat for the re-weld, ${method}`,
                temperature_degC === null
                  ? 'cannot be used here'
                  : `${celsius(temperature_degC)} (${source.provenance}${inside_range ? '' : ', outside its range'})`,
              ] as const,
          ),
        ]),
    ...stated,
    ['Back of the plate, expected', rangeText(back, 'degC', units)],
    [
      'Waits between passes',
      waits.length === 0
        ? 'none asked for'
        : waits
            .map(({ number, wait_s }) => `before pass ${number}: ${rangeText(wait_s, 's', units)}`)
            .join('; '),
    ],
    [
      'Hardness beside the groove',
      hardness === null
        ? (report.hardness_missing ?? 'not covered')
        : rangeText({ least: hardness.least_HV, most: hardness.most_HV }, 'HV', units),
    ],
    [
      'Weld metal to fill it again',
      `${formatStated(skin.refill_kg, 'kg', units)}, ${formatStated(skin.added_kg, 'kg', units)} of it for the grinding`,
    ],
  ];
  return [
    labelTable(
      `Heat: what the plate feels (${report.quality === 'quick' ? 'a quick look' : 'refined'})`,
      rows,
    ),
    { kind: 'list', tone: 'caution', items: report.cautions },
  ];
}
