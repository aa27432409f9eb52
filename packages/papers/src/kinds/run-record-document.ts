import {
  formatAmount,
  formatStated,
  type Plan,
  type PlanPass,
  type QuantityKind,
  type Readings,
  type UnitSystem,
} from '@furrow/engine';
import {
  type PaperBlock,
  type PaperDocument,
  plateWords,
  refusalBlocks,
  type TableBlock,
} from '../blocks/index.ts';
import { fineNumber, fineStated, fineUnit, jobWords } from '../words/index.ts';
import { framedPaper } from './paper-frame.ts';
import type { PaperOptions, PaperSubject } from './paper-subject.ts';
import { mismatchBlocks } from './readings-mismatch.ts';

/** Rows left empty for what nobody can know beforehand [-]. */
const EMPTY_EVENTS = 8;
const EMPTY_CREW = 4;

/** Makes the run record: empty, for the crew to write on, or filled from a readings file. */
export function runRecordDocument(subject: PaperSubject, options: PaperOptions): PaperDocument {
  const { read, answer } = subject;
  const { units } = options;
  const { plan } = answer;
  const readings = subject.readings?.readings;
  return framedPaper(subject, options, {
    above: readings === undefined ? 'Run record, to be filled in' : 'Run record',
    below: [jobWords(read.job, units)],
    fitted: false,
    roles: ['Operator', 'Foreman', 'Reviewed by'],
    blocks: [
      {
        kind: 'fields',
        across: 4,
        items: [
          { label: 'Date', ...(readings?.date !== undefined && { value: readings.date }) },
          { label: 'Shift' },
          { label: 'Plate or part number' },
          { label: 'Permit number' },
        ],
      },
      ...mismatchBlocks(subject, units),
      { kind: 'paragraph', tone: 'plain', text: plateWords(read, units) },
      ...(plan === undefined
        ? refusalBlocks(read, answer, units)
        : [
            ...gaugedOnTheWay(plan, readings, units),
            passesRun(plan, readings, units),
            ...changes(plan, readings, units),
          ]),
      events(readings, units),
      crew(readings),
      ...(readings?.note === undefined
        ? []
        : [
            { kind: 'heading', level: 2, text: 'Note' } as const,
            { kind: 'paragraph', tone: 'plain', text: readings.note } as const,
          ]),
    ],
  });
}

/** What was gauged on the way with the travel set by it, or lines to write that on. */
function gaugedOnTheWay(plan: Plan, readings: Readings | undefined, units: UnitSystem): TableBlock[] {
  const layers = readings?.layers ?? [];
  if (readings === undefined) return gaugeLines(plan);
  if (layers.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: 'Gauged on the way, and what was set by it from the table of the card',
      columns: [
        { title: 'When', align: 'start', weight: 1.2, strong: true },
        { title: 'Reading', align: 'end', weight: 0.8 },
        { title: 'Travel set', align: 'end', weight: 1 },
        { title: 'By', align: 'start', weight: 1 },
        { title: 'Note', align: 'start', weight: 2 },
      ],
      rows: layers.map(({ after_layer, reading, travel_set, by = '', note = '' }) => [
        after_layer === 0 ? 'after the trial cut or first stretch' : `after layer ${after_layer}`,
        `${fineNumber(reading, units)} ${fineUnit(units)}`,
        travel_set === undefined ? '' : formatAmount(travel_set, 'speed', units),
        by,
        note,
      ]),
    },
  ];
}

/** Lines for what is gauged on the way, and the travel that is set by it from the card's table. */
function gaugeLines(plan: Plan): TableBlock[] {
  const places = [
    ...(plan.trial === undefined
      ? []
      : [{ at: 'after the trial cut', stations: plan.trial.stations.length }]),
    ...(plan.run_in === undefined
      ? []
      : [{ at: 'after the first stretch', stations: plan.run_in.stations.length }]),
    ...plan.gauge_stops.map(({ after_layer, stations }) => ({ at: `after layer ${after_layer}`, stations })),
  ];
  if (places.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: 'Gauged on the way, and what was set by it from the table of the card',
      hand: true,
      columns: [
        { title: 'When', align: 'start', weight: 1.2, strong: true },
        { title: 'Stations', align: 'end', weight: 0.6 },
        { title: 'Readings, one by one', align: 'start', weight: 2, hand: true },
        { title: 'Mean', align: 'start', weight: 0.7, hand: true },
        { title: 'Travel set', align: 'start', weight: 1, hand: true },
        { title: 'By', align: 'start', weight: 0.8, hand: true },
      ],
      rows: places.map(({ at, stations }) => [at, String(stations), '', '', '', '']),
    },
  ];
}

/** What the card asks for beside what was read, pass by pass; passes that were run beyond the plan come last. */
function passesRun(plan: Plan, readings: Readings | undefined, units: UnitSystem): TableBlock {
  const run = new Map((readings?.passes ?? []).map((pass) => [pass.number, pass]));
  const planned = new Set(plan.passes.map(({ number }) => number));
  const beyond = [...run.keys()].filter((number) => !planned.has(number)).sort((a, b) => a - b);
  const shown = (value: number | undefined, kind: QuantityKind): string =>
    value === undefined ? '' : formatAmount(value, kind, units);
  const wanted = (pass: PlanPass): string =>
    `${shown(pass.current_A, 'current')}, ${pass.set_by_gauge ? 'travel by gauge' : formatStated(pass.travel_mm_per_min, 'mm/min', units)}`;
  const row = (number: number, pass: PlanPass | undefined): string[] => {
    const read = run.get(number);
    return [
      String(number),
      pass === undefined ? '' : fineStated(pass.offset_mm, units),
      pass === undefined ? 'not planned' : wanted(pass),
      shown(read?.plate, 'temperature'),
      shown(read?.current, 'current'),
      shown(read?.voltage, 'voltage'),
      shown(read?.travel, 'speed'),
      shown(read?.air, 'pressure'),
      read?.start ?? '',
      read?.end ?? '',
      read?.note ?? '',
    ];
  };
  return {
    kind: 'table',
    caption: 'Passes as set, and as read while they ran',
    small: true,
    hand: true,
    columns: [
      { title: 'Pass', align: 'end', weight: 0.4, strong: true },
      { title: `Offset, ${fineUnit(units)}`, align: 'end', weight: 0.6 },
      { title: 'As set', align: 'start', weight: 1.4 },
      { title: 'Plate before', align: 'end', weight: 0.8, hand: true },
      { title: 'Current', align: 'end', weight: 0.8, hand: true },
      { title: 'Arc volts', align: 'end', weight: 0.8, hand: true },
      { title: 'Travel', align: 'end', weight: 0.9, hand: true },
      { title: 'Air, flowing', align: 'end', weight: 0.8, hand: true },
      { title: 'Start', align: 'start', weight: 0.8, hand: true },
      { title: 'End', align: 'start', weight: 0.8, hand: true },
      { title: 'Note', align: 'start', weight: 1.6, hand: true },
    ],
    rows: [
      ...plan.passes.map((pass) => row(pass.number, pass)),
      ...beyond.map((number) => row(number, undefined)),
    ],
  };
}

/** Where electrodes were expected to run out, and where they did. */
function changes(plan: Plan, readings: Readings | undefined, units: UnitSystem): PaperBlock[] {
  const length = (value: number): string => formatAmount(value, 'length', units);
  const told = readings?.electrode_changes ?? [];
  if (plan.electrode_changes.length === 0 && told.length === 0) return [];
  const passes = [...new Set([...plan.electrode_changes, ...told].map(({ pass }) => pass))].sort(
    (a, b) => a - b,
  );
  return [
    {
      kind: 'table',
      caption: 'Electrode changes, from the start of the seam',
      small: true,
      hand: true,
      columns: [
        { title: 'Pass', align: 'end', weight: 0.3, strong: true },
        { title: 'Expected at', align: 'start', weight: 1.4 },
        { title: 'Changed at', align: 'start', weight: 1.4, hand: true },
      ],
      rows: passes.map((pass) => [
        String(pass),
        plan.electrode_changes
          .filter((change) => change.pass === pass)
          .map(({ at_mm }) => formatStated(at_mm, 'mm', units, 'length'))
          .join(', '),
        told
          .filter((change) => change.pass === pass)
          .map(({ at }) => length(at))
          .join(', '),
      ]),
    },
  ];
}

function events(readings: Readings | undefined, units: UnitSystem): TableBlock {
  const told = readings?.events ?? [];
  return {
    kind: 'table',
    caption: 'What happened on the way: arc out, stops, repairs, a fire watch called',
    small: true,
    hand: true,
    columns: [
      { title: 'Pass', align: 'end', weight: 0.4 },
      { title: 'Place', align: 'end', weight: 0.8 },
      { title: 'What', align: 'start', weight: 5 },
    ],
    rows:
      told.length > 0
        ? told.map(({ pass, at, what }) => [
            pass === undefined ? '' : String(pass),
            at === undefined ? '' : formatAmount(at, 'length', units),
            what,
          ])
        : Array.from({ length: readings === undefined ? EMPTY_EVENTS : 1 }, () =>
            readings === undefined ? ['', '', ''] : ['', '', 'nothing told'],
          ),
  };
}

function crew(readings: Readings | undefined): TableBlock {
  const people = readings?.crew ?? [];
  return {
    kind: 'table',
    caption: 'Crew',
    small: true,
    hand: true,
    columns: [
      { title: 'Name', align: 'start', weight: 1 },
      { title: 'Role', align: 'start', weight: 1 },
    ],
    rows:
      people.length > 0
        ? people.map(({ name, role = '' }) => [name, role])
        : Array.from({ length: EMPTY_CREW }, () => ['', '']),
  };
}
