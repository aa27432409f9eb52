import {
  formatAmount,
  formatStated,
  fromUnit,
  type RunReport,
  sentencesWritten,
  type UnitSystem,
  type Written,
} from '@furrow/engine';
import { elapsedWords, eventName, gaugePlaces, placeWords, runRecutWords } from '../words/index.ts';
import type { Figure } from './figure.ts';
import { gaugeTable } from './gauge-table.ts';
import type { PaperBlock, TableBlock } from './paper-document.ts';

/** A review with its sentences in the reader's units. */
type Told = Written<RunReport>;

/** What stands for a figure that the file cannot give. */
const UNTOLD = 'not told';

/** Events listed in a text or on a paper; the rest is counted. */
const EVENTS_TOLD = 60;

/** A review as blocks, what matters most first. */
export function runBlocks(report: RunReport, title: string, units: UnitSystem): readonly PaperBlock[] {
  const run = sentencesWritten(report, units);
  return [
    { kind: 'heading', level: 1, text: title, below: [run.reading.says] },
    ...run.verdict.map((text): PaperBlock => ({ kind: 'paragraph', tone: 'plain', text })),
    { kind: 'figures', size: 'plain', items: runFigures(run, units) },
    ...(run.stretches.length === 0 ? [] : [runStretchTable(run, units), ...runRecutTables(run, units)]),
    ...(run.events.length === 0 ? [] : [runEventTable(run, units, EVENTS_TOLD)]),
    ...causeBlocks(run),
    ...remainingBlocks(run, units),
    { kind: 'heading', level: 2, text: 'What this log cannot tell' },
    { kind: 'list', tone: 'plain', items: [...run.cannot_tell, ...run.reading.remarks] },
    {
      kind: 'paragraph',
      tone: 'small',
      text: 'A prediction is a chance, never a promise; a licensed person judges the groove, this program signs nothing.',
    },
  ];
}

/** Sums of a run; what the file cannot give is said to be unknown. */
export function runFigures({ totals }: Told, units: UnitSystem): Figure[] {
  const stated = (label: string, value: number | null, unit: Parameters<typeof formatStated>[1]): Figure => ({
    label,
    value: value === null ? UNTOLD : formatStated(value, unit, units),
  });
  const length = (label: string, value: number | null): Figure => ({
    label,
    value: value === null ? UNTOLD : formatAmount(fromUnit(value, 'mm'), 'length', units),
  });
  const planned =
    totals.electrode_planned_mm === null ? undefined : length('', totals.electrode_planned_mm).value;
  return [
    stated('Arc time', totals.arc_time_s, 's'),
    stated('Arc out', totals.arc_out_time_s, 's'),
    stated('Arc voltage, mean', totals.mean_arc_voltage_V, 'V'),
    stated('Current, mean', totals.mean_current_A, 'A'),
    stated('Arc energy', totals.arc_energy_kJ, 'kJ'),
    length('Travelled', totals.travelled_mm),
    length('Gouged', totals.gouged_mm),
    {
      ...length('Electrode used', totals.electrode_used_mm),
      ...(planned === undefined ? {} : { note: `${planned} planned for these passes` }),
    },
  ];
}

/** The stop from which the passes that remain are set, with its table; none where no reading is wanted. */
export function remainingBlocks({ remaining }: Told, units: UnitSystem): PaperBlock[] {
  const stop = remaining?.gauge ?? null;
  if (stop === null) return [];
  const now = remaining!.passes_to_run > 0 && remaining!.travel_mm_per_min === null;
  return [
    { kind: 'heading', level: 2, text: 'The passes that remain' },
    { kind: 'paragraph', tone: 'plain', text: gaugePlaces(stop, units) },
    {
      ...gaugeTable(stop, units),
      caption: now ? 'Reading now, and what to do' : 'Reading after that pass, and what to do',
    },
  ];
}

/** Stretches that are not as they ought to be, with the recut of each. */
export function runStretchTable({ stretches }: Pick<Told, 'stretches'>, units: UnitSystem): TableBlock {
  const start = (title: string, weight: number) => ({ title, align: 'start', weight }) as const;
  return {
    kind: 'table',
    caption: 'Stretches to look at',
    columns: [
      { ...start('Where', 3), strong: true },
      start('What', 2),
      { ...start('What to do', 4), below: 'by_row' },
      start('Recut', 4),
    ],
    rows: stretches.map((each) => [
      placeWords(each.from_mm, each.to_mm, units),
      each.kind,
      each.says,
      runRecutWords(each.recut, units),
    ]),
  };
}

/** By what is read at its stop, what to do in each recut that has one. */
export function runRecutTables({ stretches }: Pick<Told, 'stretches'>, units: UnitSystem): TableBlock[] {
  return stretches.flatMap(({ recut, from_mm: from, to_mm: to }): TableBlock[] => {
    if (recut === null || recut.gauge === null) return [];
    const when = recut.passes_before_gauge === 0 ? 'before the recut' : 'in the recut';
    const at = recut.gauge.station_positions_mm.map((mm) =>
      formatAmount(fromUnit(mm, 'mm'), 'seam_place', units),
    );
    return [
      {
        ...gaugeTable(recut.gauge, units),
        caption: `${placeWords(from, to, units)}: mean read at ${at.join(', ')} ${when}, and what to do`,
      },
    ];
  });
}

/** The first events of a run with time, place and words; what each may come from stands beside it where there is room. */
export function runEventTable(
  { events, events_not_listed: more }: Pick<Told, 'events' | 'events_not_listed'>,
  units: UnitSystem,
  most: number,
): TableBlock {
  const start = (title: string, weight: number) => ({ title, align: 'start', weight }) as const;
  const left = events.length - most + more;
  return {
    kind: 'table',
    caption: left > 0 && events.length > most ? `Events, the first ${most}; ${left} more` : 'Events',
    columns: [
      start('Time', 2),
      start('Place', 3),
      start('Event', 2),
      { ...start('What the log shows', 6), below: 'by_row' },
      start('Most likely', 4),
    ],
    rows: events
      .slice(0, most)
      .map((each) => [
        elapsedWords(each.start_s),
        each.from_mm === null || each.to_mm === null
          ? 'not told'
          : `${placeWords(each.from_mm, each.to_mm, units)}${each.pass === null ? '' : `, pass ${each.pass}`}`,
        eventName(each.kind),
        each.says,
        each.causes[0] === undefined ? '' : causeWords(each.causes[0]),
      ]),
  };
}

/** The likeliest cause with its chance. */
function causeWords({ title, probability }: Told['events'][number]['causes'][number]): string {
  return `${title} (${Math.round(100 * probability)} %)`;
}

/** What kinds of events may come from, each once with what mends it and the next check. */
export function causeBlocks({ events }: Pick<Told, 'events'>): PaperBlock[] {
  const seen = new Map<string, string>();
  for (const { kind, causes, next_check: check } of events) {
    const [first] = causes;
    if (first === undefined || seen.has(kind)) continue;
    const next = check === null ? '' : ` Next check: ${check.ask}`;
    seen.set(kind, `${eventName(kind)}: most likely ${causeWords(first)}. ${first.remedy}${next}`);
  }
  if (seen.size === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'What may be behind it' },
    { kind: 'list', tone: 'plain', items: [...seen.values()] },
  ];
}
