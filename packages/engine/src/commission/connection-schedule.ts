import { z } from 'zod';
import type { Outcome } from '../issue/index.ts';
import type { Stated } from '../limit/index.ts';
import { amountOf, inUnit, say, sentenceSchema } from '../quantity/index.ts';
import { itemVolts, pointVolts } from './circuit-volts.ts';
import type { CommissionItem, CommissionSupply } from './commission-supply.ts';
import { supplyIssues } from './supply-issues.ts';

/** One row of the connection schedule. */
export const connectionSchema = z
  .object({
    number: z.number().describe('Order in which it is made, from 1 [-].'),
    kind: z.enum(['lead', 'joint', 'sense_wire', 'air']),
    name: z.string().describe('Name, in words.'),
    from: z.string().describe('Where it begins.'),
    to: z.string().describe('Where it ends.'),
    size: sentenceSchema
      .nullable()
      .describe('Size as the kit writes it, or the bore of a hose; null for a joint.'),
    parallels: z
      .number()
      .nullable()
      .describe('Leads side by side; null where there is only the one piece [-].'),
    length_mm: z.number().nullable().describe('Length of each [mm].'),
    polarity: z.enum(['positive', 'negative']).nullable().describe('Pole it carries; null for air.'),
    voltage_V: z
      .number()
      .nullable()
      .describe('Volts across it at the set current; null where no work current flows [V].'),
    tightness: z.string().describe('How to tell that it is tight.'),
  })
  .meta({ id: 'Connection', description: 'One row of the connection schedule.' });

/** One row of the connection schedule. */
export type Connection = Stated<typeof connectionSchema>;

type Row = Omit<Connection, 'number'>;

const TIGHT = {
  lead: 'Pull and twist each end by hand, power off: nothing moves in the lug.',
  joint:
    'Both faces clean and bare, tightened as its maker says, marked across; then the millivolts at the trial arc.',
  sense_wire: 'Tug it, power off: it sits on a bolt or clamp of its own.',
  air: 'Coupling locked, hose check on, soap water at pressure: no bubbles.',
} as const;

function poleOf(item: Pick<CommissionItem, 'side'>, supply: CommissionSupply): 'positive' | 'negative' {
  return (item.side === 'electrode') === (supply.polarity === 'electrode_positive') ? 'positive' : 'negative';
}

function itemRow(item: CommissionItem, supply: CommissionSupply): Row {
  return {
    kind: item.kind,
    name: item.name,
    from: item.from,
    to: item.to,
    size: item.size ?? null,
    parallels: item.kind === 'lead' ? (item.parallels ?? 1) : null,
    length_mm: item.length === undefined ? null : inUnit(item.length, 'mm'),
    polarity: poleOf(item, supply),
    voltage_V: itemVolts(item, supply, supply.setCurrent),
    tightness: TIGHT[item.kind],
  };
}

/**
 * Lists what is connected from where to where: leads and joints of the loop, the sense wire, and the air.
 *
 * Leads and joints come in the order of the supply's items, electrode side first.
 *
 * @param supply - what the supply's solution says [record], finite amounts, every lead on a way to the arc
 * @returns the rows in the order in which they are made, or what in the supply cannot be worked with [list]
 * @source none: bookkeeping
 * @example
 * const lead = { id: 'e', kind: 'lead', name: 'Electrode lead', side: 'electrode', from: 'source +', to: 'holder', resistance: 0.001, current: 800, size: '95 mm2', parallels: 2, length: 20 };
 * const back = { ...lead, id: 'w', name: 'Work lead', side: 'work', from: 'source -', to: 'plate' };
 * const source = { name: 'Source', noLoadVoltage: 80, electrodePoint: 'source +', workPoint: 'source -' };
 * const supply = { polarity: 'electrode_positive', setCurrent: 800, holderPoint: 'holder', platePoint: 'plate', sources: [source], items: [lead, back], airRuns: [], airPoints: [] };
 * connectionSchedule(supply).value.map((row) => [row.name, row.polarity, row.voltage_V]) // => [["Electrode lead", "positive", 0.8], ["Work lead", "negative", 0.8], ["Sense wire", "negative", null]]
 */
export function connectionSchedule(supply: CommissionSupply): Outcome<readonly Connection[]> {
  const issues = supplyIssues(supply);
  if (issues.length > 0) return { ok: false, issues };
  const connected = pointVolts(supply, supply.setCurrent);
  if (!connected.ok) return connected;
  const { items } = supply;
  const inOrder = [
    ...items.filter(({ side }) => side === 'electrode'),
    ...items.filter(({ side }) => side === 'work'),
  ];
  const nothing = { size: null, parallels: null, length_mm: null, voltage_V: null } as const;
  const rows: Row[] = [
    ...inOrder.map((item) => itemRow(item, supply)),
    {
      ...nothing,
      kind: 'sense_wire',
      name: 'Sense wire',
      from: 'control',
      to: supply.platePoint,
      polarity: poleOf({ side: 'work' }, supply),
      tightness: TIGHT.sense_wire,
    },
    ...supply.airRuns.map(
      (run): Row => ({
        ...nothing,
        kind: 'air',
        name: run.name,
        from: run.from,
        to: run.to,
        size: say`${amountOf(run.bore, 'bore')} bore`,
        length_mm: inUnit(run.length, 'mm'),
        polarity: null,
        tightness: TIGHT.air,
      }),
    ),
  ];
  return { ok: true, value: rows.map((row, index) => ({ number: index + 1, ...row })) };
}
