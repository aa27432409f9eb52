import {
  answerHazard,
  formatStated,
  type HazardReport,
  type StatedUnit,
  type UnitSystem,
} from '@furrow/engine';
import {
  crewTables,
  type Figure,
  fumeSources,
  fumeTable,
  mixtureBlocks,
  noiseTable,
  type PaperBlock,
  type PaperDocument,
  plateWords,
  ruleTable,
  type TableBlock,
  valueAndUnit,
  verdictTable,
} from '../blocks/index.ts';
import { fireZoneDrawing } from '../drawing/index.ts';
import { breachTexts, jobWords, shadeFigure } from '../words/index.ts';
import { framedPaper } from './paper-frame.ts';
import type { PaperOptions, PaperSubject } from './paper-subject.ts';

/** Time between two rounds of the fire watch [min], and rows for those while the arc burns [-] (judgement). */
const ROUND = 10;
const ROUNDS_DURING = 4;
const ROUNDS_MOST = 16;

/** Makes the hot-work and hazard sheet, with places for permit, checks, watch and signatures; it permits nothing. */
export function hotWorkDocument(subject: PaperSubject, options: PaperOptions): PaperDocument {
  const { read, answer, kit } = subject;
  const { units } = options;
  const report = answerHazard(read, answer, kit);
  return framedPaper(subject, options, {
    above: 'Hot-work and hazard sheet · air carbon-arc gouging',
    below: [jobWords(read.job, units)],
    fitted: false,
    roles: [],
    blocks: [
      { kind: 'paragraph', tone: 'lead', text: report.defers },
      {
        kind: 'fields',
        across: 4,
        items: [
          { label: 'Hot-work permit number' },
          { label: 'Place' },
          { label: 'Valid from' },
          { label: 'Valid until' },
        ],
      },
      ...breachBlocks(report, units),
      { kind: 'figures', size: 'big', items: figures(report, units) },
      ...zoneBlocks(report, subject, units),
      {
        kind: 'signatures',
        roles: ['Permit issued by', 'Operator', 'Fire watch', 'Responsible engineer'],
      },
      { kind: 'heading', level: 2, text: 'Checks and fire watch', new_page: true },
      checksBefore(report),
      watchRounds(report),
      { kind: 'heading', level: 2, text: 'Annex: what it rests on', new_page: true },
      { kind: 'list', tone: 'caution', items: report.cautions },
      ...report.noise.map((crew) => noiseTable(crew, units)),
      ...report.noise.map(
        (crew): PaperBlock => ({
          kind: 'paragraph',
          tone: 'plain',
          text: `${crew.name}: worn ${crew.protection.worn}. ${crew.protection.says}`,
        }),
      ),
      ...crewTables(report.noise, units),
      verdictTable(
        'Other figures against rules',
        report.sections.flatMap(({ rows }) => rows),
        units,
      ),
      fumeTable(report.fume, units),
      fumeSources(report.fume),
      ...mixtureBlocks(report.fume, units),
      ruleTable(report.sections, units),
    ],
  });
}

/** What is over or short of a figure named stands before everything else. */
function breachBlocks({ breaches }: HazardReport, units: UnitSystem): PaperBlock[] {
  if (breaches.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Over or short of a figure named' },
    { kind: 'list', tone: 'caution', items: breachTexts(breaches, units, 'brief') },
  ];
}

function figures(report: HazardReport, units: UnitSystem): Figure[] {
  const { fire_zone: zone, setting } = report;
  return [
    amount('Clear all round', zone.radius_m, 'm', units, 'and below'),
    amount('Clear ahead', zone.ahead_m, 'm', units, 'along the jet'),
    amount('Fire watch', zone.watch_min, 'min', units, 'after the last arc'),
    { label: 'Filter shade', ...shadeFigure(report) },
    amount(
      'Current',
      setting.current_A,
      'A',
      units,
      setting.of === 'plan' ? 'at most, by plan' : 'of the source',
    ),
    { label: 'Implant wearers', value: 'stay out', note: 'unless cleared in person' },
  ];
}

function amount(label: string, value: number, unit: StatedUnit, units: UnitSystem, note: string): Figure {
  return { label, ...valueAndUnit(formatStated(value, unit, units)), note };
}

function zoneBlocks(
  { fire_zone: zone, stop_work }: HazardReport,
  { kit, answer, read }: PaperSubject,
  units: UnitSystem,
): PaperBlock[] {
  const bay = kit === undefined ? undefined : answer.supply?.place?.bay;
  const reach = `${formatStated(zone.up_m, 'm', units)} upwards and ${formatStated(zone.down_m, 'm', units)} downwards`;
  return [
    {
      kind: 'columns',
      columns: [
        {
          weight: 1.15,
          blocks: [
            { kind: 'heading', level: 2, text: 'Fire zone' },
            {
              kind: 'drawing',
              drawing: fireZoneDrawing({ zone, bay, units, width: 420, heightMost: 230 }),
            },
          ],
        },
        {
          weight: 1,
          blocks: [
            { kind: 'heading', level: 2, text: 'Stop work' },
            { kind: 'list', tone: 'caution', items: stop_work },
            { kind: 'paragraph', tone: 'plain', text: `Set for this job. ${plateWords(read, units)}` },
            {
              kind: 'paragraph',
              tone: 'small',
              text: 'Any of these stops the run; stop and ask. A restart needs its reason in the record.',
            },
            { kind: 'paragraph', tone: 'plain', text: zone.direction },
            {
              kind: 'paragraph',
              tone: 'small',
              text: `Sparks may fly ${reach}. Where they are seen to fly farther, the zone grows. All round: 29 CFR 1910.252(a)(2), or more by working height. The lobe is the hull of the circle and the farthest point ahead; its width is a convention of the drawing.`,
            },
          ],
        },
      ],
    },
  ];
}

function checksBefore({ setting }: HazardReport): TableBlock {
  const closed = setting.place === 'closed_space';
  const checks = [
    'Fuel out of the zone, or covered; floor swept',
    'Far side of the plate, floors and openings below looked at',
    'Extinguisher ready, sprinklers in service, watch named',
    'Coating and closed volumes found out, vented, tested',
    'Extraction running, placed downstream of the jet',
    'Screens up, hearing protection and filters on, implant wearers out',
    'Leads, hoses and couplings whole, secured, clear of the zone',
    ...(closed ? ['Closed space: permit, air tested, attendant outside, source and cylinders outside'] : []),
  ];
  return {
    kind: 'table',
    caption: 'Before the first arc',
    hand: true,
    columns: [
      { title: 'Check', align: 'start', weight: 2.6 },
      { title: 'Done by', align: 'start', weight: 1, hand: true },
      { title: 'Time', align: 'start', weight: 0.6, hand: true },
    ],
    rows: checks.map((check) => [check, '', '']),
  };
}

/** Enough rows for the watch that is asked for. */
function watchRounds({ fire_zone: { watch_min } }: HazardReport): TableBlock {
  const after = Math.ceil(watch_min / ROUND);
  return {
    kind: 'table',
    caption: `Fire watch, during and for ${watch_min} min after: a round every ${ROUND} min or as the permit asks`,
    hand: true,
    columns: [
      { title: 'Time', align: 'start', weight: 0.6, hand: true },
      { title: 'Where, far side and below too', align: 'start', weight: 1.6, hand: true },
      { title: 'Seen', align: 'start', weight: 1.4, hand: true },
      { title: 'Watch', align: 'start', weight: 1, hand: true },
    ],
    rows: Array.from({ length: Math.min(ROUNDS_MOST, ROUNDS_DURING + after) }, () => ['', '', '', '']),
  };
}
