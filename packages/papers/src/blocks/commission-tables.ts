import {
  type CommissionCheck,
  type CommissionStage,
  type Connection,
  inUnit,
  judgeReading,
  roundOf,
  sentenceText,
  type UnitSystem,
} from '@furrow/engine';
import { checkBand, checkReading, connectionWords, STAGE_TITLES } from '../words/index.ts';
import type { PaperBlock, TableBlock } from './paper-document.ts';

/** A reading as it was taken at the rig. */
export interface CheckedReading {
  /** As it was typed. */
  readonly text: string;
  /** In SI units; null if it is no number. */
  readonly value: number | null;
  readonly note: string;
}

const STAGES = Object.entries(STAGE_TITLES) as [CommissionStage, string][];

/** What runs from where to where, to be ticked when it is made. */
export function connectionTable(connections: readonly Connection[], units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption: 'Connections, power off and tried dead by the local rules; tick what is made and tight',
    small: true,
    hand: true,
    columns: [
      { title: 'No.', align: 'end', weight: 0.3 },
      { title: 'What', align: 'start', weight: 1.2, strong: true },
      { title: 'From', align: 'start', weight: 1 },
      { title: 'To', align: 'start', weight: 1 },
      { title: 'Size', align: 'start', weight: 0.9 },
      { title: 'Length', align: 'end', weight: 0.6 },
      { title: 'Loses, arc on', align: 'end', weight: 0.5 },
      { title: 'Pole', align: 'start', weight: 0.4 },
      {
        title: 'How to tell that it is tight',
        align: 'start',
        weight: 2,
        below: 'once',
      },
      { title: 'Made', align: 'start', weight: 0.6, hand: true },
    ],
    rows: connections.map((row) => {
      const { size, length, loss } = connectionWords(row, units);
      return [
        String(row.number),
        row.name,
        row.from,
        row.to,
        size,
        length,
        loss,
        row.polarity === null ? '' : row.polarity === 'positive' ? '+' : '−',
        row.tightness,
        '',
      ];
    }),
  };
}

/** What a hand ticks and signs behind a reading. */
const BY_HAND = (['Pass', 'Fail', 'By'] as const).map(
  (title) => ({ title, align: 'start', weight: 0.33, hand: true }) as const,
);

/** The checks before the first arc, stage by stage, with what was read where it is known. */
export function checkBlocks(
  checks: readonly CommissionCheck[],
  units: UnitSystem,
  checked?: Readonly<Record<string, CheckedReading>>,
): PaperBlock[] {
  return STAGES.flatMap(([stage, title]): PaperBlock[] => {
    const own = checks.filter((check) => check.stage === stage);
    if (own.length === 0) return [];
    const cautions = told(own);
    return [
      { kind: 'heading', level: 2, text: title },
      ...(cautions.length === 0
        ? []
        : [{ kind: 'list', tone: 'caution', items: cautions, introduces: true } as const]),
      {
        kind: 'table',
        caption: `Checks, ${title.charAt(0).toLowerCase()}${title.slice(1)}`,
        small: true,
        hand: true,
        columns: [
          { title: 'Check', align: 'start', weight: 1.1, strong: true },
          { title: 'What to do', align: 'start', weight: 3 },
          { title: 'Expect', align: 'end', weight: 0.6, strong: true },
          { title: 'Band', align: 'end', weight: 0.9 },
          { title: 'Read', align: 'start', weight: 0.8, hand: true },
          ...(checked === undefined
            ? BY_HAND
            : [{ title: 'Says', align: 'start', weight: 0.6, hand: true } as const]),
        ],
        rows: own.map((check) => [
          check.title,
          sentenceText(check.ask, units),
          check.kind === 'measure' ? checkReading(check, check.expected, units) : 'yes',
          check.kind === 'measure' ? checkBand(check, units) : '',
          ...(checked === undefined ? ['', ...BY_HAND.map(() => '')] : written(check, checked[check.id])),
        ]),
      },
    ];
  });
}

/** Days that a sheet of the daily round has room for. */
const DAYS = ['Day 1', 'Day 2', 'Day 3', 'Day 4', 'Day 5'] as const;

/** The round of every day, with room for five of them. */
export function dailyBlocks(checks: readonly CommissionCheck[], units: UnitSystem): PaperBlock[] {
  const round = roundOf(checks, 'daily');
  if (round.checks.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Every day' },
    { kind: 'paragraph', tone: 'plain', text: round.says },
    {
      kind: 'table',
      caption: 'Every day, on a rig that was checked whole and not changed since',
      small: true,
      hand: true,
      columns: [
        { title: 'Check', align: 'start', weight: 1.4, strong: true },
        { title: 'Band', align: 'end', weight: 1 },
        ...DAYS.map((title) => ({ title, align: 'start', weight: 0.6, hand: true }) as const),
      ],
      rows: round.checks.map((check) => [
        check.title,
        check.kind === 'measure' ? checkBand(check, units) : 'as it should be',
        ...DAYS.map(() => ''),
      ]),
    },
  ];
}

/** Cautions of the checks, each once; one that another begins with is told by that one. */
function told(checks: readonly CommissionCheck[]): readonly string[] {
  const all = [...new Set(checks.flatMap(({ caution }) => (caution === null ? [] : [caution])))];
  return all.filter((caution) => !all.some((other) => other !== caution && other.startsWith(caution)));
}

const VERDICTS = {
  in_band: 'in the band',
  low: 'LOW',
  high: 'HIGH',
  met: 'met',
  not_met: 'NOT MET',
} as const;

/** What was read, and what it means; empty cells where a hand is to write. */
function written(check: CommissionCheck, reading: CheckedReading | undefined): [string, string] {
  if (reading === undefined || reading.text === '') return ['', ''];
  const read = reading.note === '' ? reading.text : `${reading.text} (${reading.note})`;
  const meant = meaning(check, reading);
  return [read, meant === undefined ? 'not readable' : VERDICTS[judgeReading(check, meant).verdict]];
}

/** The reading in the unit of the check, or whether it is met; undefined if it was neither. */
function meaning(check: CommissionCheck, { text, value }: CheckedReading): number | boolean | undefined {
  if (check.kind === 'measure') return value === null ? undefined : inUnit(value, check.unit);
  return text === 'yes' ? true : text === 'no' ? false : undefined;
}
