import {
  breaksRule,
  type CrewNoiseReport,
  type FieldReport,
  type FumeReport,
  formatStated,
  type HazardRow,
  type HazardSection,
  type HazardWording,
  type SubstanceLimit,
  type SubstanceReport,
  sentenceText,
  type UnitSystem,
} from '@furrow/engine';
import { figureText, noteText, rangeText, sourceText } from '../words/index.ts';
import type { ListBlock, ParagraphBlock, TableBlock, TableMark } from './paper-document.ts';

/** A crew's noise: what it does, and by each family of rules what comes of it. */
export function noiseTable(crew: CrewNoiseReport, units: UnitSystem): TableBlock {
  const { five_dB: five, three_dB: three } = crew;
  const shift = formatStated(crew.shift_min, 'min', units);
  const people = crew.people === null ? '' : `, ${crew.people} people`;
  return {
    kind: 'table',
    caption: `Noise: ${crew.name}${people}, shift ${shift}${crew.stated ? '' : '; stands in for a crew that the job does not state'}`,
    small: true,
    columns: [
      { title: 'Task', align: 'start', weight: 1.6, strong: true },
      { title: 'Time', align: 'end', weight: 0.7 },
      { title: 'Level', align: 'end', weight: 1 },
      { title: '5 dB rule (OSHA)', align: 'end', weight: 1.2 },
      { title: '3 dB rule (NIOSH, EU)', align: 'end', weight: 1.4 },
    ],
    rows: [
      ...crew.tasks.map((task) => [
        task.name,
        formatStated(task.time_min, 'min', units),
        `${rangeText(task.level_dBA, 'dBA', units)}${task.measured ? ', measured' : ''}`,
        task.osha_time_min === null
          ? '–'
          : `${formatStated(task.osha_time_min, 'min', units)} set against it`,
        task.niosh_time_min === null
          ? '–'
          : `${formatStated(task.niosh_time_min, 'min', units)} set against it`,
      ]),
      [
        'Whole shift',
        shift,
        crew.quiet_min > 0 ? `${formatStated(crew.quiet_min, 'min', units)} quiet` : '',
        five === null ? '–' : `dose ${rangeText(five.pel_dose_percent, '%', units)}`,
        three === null ? '–' : `L_EX,8h ${rangeText(three.exposure_level_dBA, 'dBA', units)}`,
      ],
    ],
  };
}

/** The crews' noise against the rules, side by side; each rule names its family. */
export function crewTables(crews: readonly CrewNoiseReport[], units: UnitSystem): readonly TableBlock[] {
  const together = crews.flatMap((_crew, index) =>
    index % CREWS_BESIDE === 0 ? [crews.slice(index, index + CREWS_BESIDE)] : [],
  );
  return together.map(
    (some): TableBlock => ({
      kind: 'table',
      caption: 'Noise against the rules',
      small: true,
      columns: [
        { title: 'Rule', align: 'start', weight: 2.2, strong: true },
        { title: 'Figure named', align: 'end', weight: 0.9 },
        ...some.map(({ name }) => ({ title: name, align: 'start' as const, weight: 1.5 })),
        { title: 'Source', align: 'start', weight: 1.5 },
      ],
      rows: (some[0]?.rows ?? []).map((rule) => [
        rule.rule,
        figureText(rule, units),
        ...some.map(({ rows }) => {
          const own = rows.find(({ id }) => id === rule.id);
          return own === undefined
            ? '–'
            : `${own.value === null ? '' : `${formatStated(own.value, own.unit, units)}: `}${own.verdict}`;
        }),
        sourceText(rule.source),
      ]),
      marks: (some[0]?.rows ?? []).flatMap(({ id }, row) =>
        some.flatMap(({ rows }, index) => {
          const own = rows.find((each) => each.id === id);
          return own === undefined ? [] : verdictMark(own.verdict, row, index + 2);
        }),
      ),
    }),
  );
}

/** Crews that stand side by side on a sheet [-]. */
const CREWS_BESIDE = 3;

/** Values held against rules. */
export function verdictTable(caption: string, rows: readonly HazardRow[], units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption,
    small: true,
    columns: [
      { title: 'Rule', align: 'start', weight: 1.9, strong: true },
      { title: 'There is', align: 'end', weight: 0.8 },
      { title: 'Figure named', align: 'end', weight: 1.05 },
      { title: 'Verdict', align: 'start', weight: 1.35, strong: true },
      { title: 'Note and source', align: 'start', weight: 2.5, below: 'by_row' },
    ],
    rows: rows.map((row) => [
      row.rule,
      formatStated(row.value, row.unit, units),
      figureText(row, units),
      row.verdict,
      noteText(row),
    ]),
    marks: rows.flatMap(({ verdict }, row) => verdictMark(verdict, row, VERDICT_COLUMN)),
  };
}

/** Where the verdict stands in a table of values held against rules [-]. */
const VERDICT_COLUMN = 3;

/** What makes a verdict stand out on a screen. */
function verdictMark(verdict: HazardWording, row: number, column: number): TableMark[] {
  if (breaksRule(verdict)) return [{ row, column, mark: 'broken' }];
  return verdict === 'not covered by the source' ? [{ row, column, mark: 'open' }] : [];
}

/**
 * Substances to expect in the fume with their limits by every set, what was measured against each, and the air that
 * would keep to it; verdicts stand where something was measured, air flows where they can be worked out.
 */
export function fumeTable(fume: FumeReport, units: UnitSystem): TableBlock {
  const { set: flowsBy, substances } = fume;
  const sets = substances[0]?.limits.map(({ set }) => set) ?? [];
  const flows = substances.map(
    ({ limits }) => limits.find(({ set }) => set === flowsBy)?.flow_if_all_m3_per_min ?? null,
  );
  const withFlows = flows.some((flow) => flow !== null);
  return {
    kind: 'table',
    caption: 'Fume and gas to expect',
    small: true,
    columns: [
      { title: 'Substance', align: 'start', weight: 1.4, strong: true },
      ...sets.map((set) => ({ title: set, align: 'start' as const, weight: 1.3 })),
      { title: 'Measured', align: 'end', weight: 0.9 },
      ...(withFlows
        ? [{ title: `Air if all were it, by the ${flowsBy}`, align: 'end' as const, weight: 1.1 }]
        : []),
      { title: 'Why', align: 'start', weight: 1.8, below: 'by_row' },
    ],
    rows: substances.map((substance, index) => [
      substance.name,
      ...substance.limits.map((limit) => limitText(limit, substance)),
      measuredText(substance, units),
      ...(withFlows ? [formatStated(flows[index] ?? null, 'm3/min', units)] : []),
      substance.why,
    ]),
    marks: substances.flatMap(({ limits }, row) =>
      limits.flatMap(({ verdict }, index) =>
        breaksRule(verdict) ? [{ row, column: index + 1, mark: 'broken' } as const] : [],
      ),
    ),
  };
}

/** A limit as its set writes it, and how what was measured stands to it. */
function limitText({ written, source, verdict }: SubstanceLimit, substance: SubstanceReport): string {
  if (written === '') return 'not covered';
  const limit = `${written}${source?.provenance === 'memory' ? ' (memory)' : ''}`;
  return substance.measured_mg_per_m3 === null ? limit : `${limit}: ${verdict}`;
}

/** The mean over eight hours, and the highest where a ceiling is held against it. */
function measuredText(
  { measured_mg_per_m3: mean, highest_mg_per_m3: highest, limits }: SubstanceReport,
  units: UnitSystem,
): string {
  const ceiling = highest !== null && highest !== mean && limits.some(({ ceiling }) => ceiling);
  const told = formatStated(mean, 'mg/m3', units);
  return ceiling ? `${told}, highest ${formatStated(highest, 'mg/m3', units)}` : told;
}

/** Where the limits of the substances stand, each source once with its set. */
export function fumeSources({ substances }: FumeReport): ListBlock {
  const told = substances.flatMap(({ limits }) =>
    limits.flatMap(({ set, source }) => (source === null ? [] : [`${set}: ${sourceText(source)}`])),
  );
  return { kind: 'list', tone: 'plain', items: [...new Set(told)] };
}

/** What rules ask in words, with where they stand. */
export function ruleTable(sections: readonly HazardSection[], units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption: 'What the rules ask in words',
    small: true,
    columns: [
      { title: 'Hazard', align: 'start', weight: 0.8, strong: true },
      { title: 'Rule', align: 'start', weight: 3.4 },
      { title: 'Source', align: 'start', weight: 1.6 },
    ],
    rows: sections.flatMap(({ title, rules }) =>
      rules.map(({ text, source }, index) => [
        index === 0 ? title : '',
        sentenceText(text, units),
        sourceText(source),
      ]),
    ),
  };
}

/** How far the magnetic field reaches from the leads. */
export function fieldTable({ apart_mm, distances }: FieldReport, units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption: 'How far the field reaches',
    small: true,
    columns: [
      { title: 'Field', align: 'start', weight: 0.8 },
      { title: 'For', align: 'start', weight: 2 },
      { title: 'Single lead', align: 'end', weight: 1 },
      { title: `Pair, ${formatStated(apart_mm, 'mm', units)} apart`, align: 'end', weight: 1 },
      { title: 'Source', align: 'start', weight: 2 },
    ],
    rows: distances.map(({ field_mT, what, single_mm, pair_mm, source }) => [
      formatStated(field_mT, 'mT', units),
      what,
      formatStated(single_mm, 'mm', units),
      formatStated(pair_mm, 'mm', units),
      sourceText(source),
    ]),
  };
}

/** The additive index of what was measured, by each set of limits; nothing where nothing was. */
export function mixtureBlocks({ substances, mixtures }: FumeReport, units: UnitSystem): ParagraphBlock[] {
  if (substances.every(({ measured_mg_per_m3: measured }) => measured === null)) return [];
  const each = mixtures.map(({ set, index, verdict, not_covered }) => {
    const without = index === null || not_covered.length === 0 ? '' : ` (without ${not_covered.join(', ')})`;
    return `${set} ${formatStated(index, '-', units)}, ${verdict}${without}`;
  });
  const text = `Additive index of what was measured, at most 1: ${each.join('; ')}.`;
  return [{ kind: 'paragraph', tone: 'plain', text }];
}
