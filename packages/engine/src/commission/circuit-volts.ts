import type { Issue, Outcome } from '../issue/index.ts';
import type { CommissionItem, CommissionSupply } from './commission-supply.ts';

/** A point of the loop and the volts to read from it to the plate beside the groove. */
export interface PointVolts {
  readonly point: string;
  readonly side: 'electrode' | 'work';
  /** Share of the reading that is lost in leads and joints [V]. */
  readonly lost: number;
}

/** Volts across an item at a loop current. */
export function itemVolts(item: CommissionItem, supply: CommissionSupply, current: number): number {
  return (item.resistance * item.current * current) / supply.setCurrent;
}

/** Volts lost between each point and the arc, walked outwards from holder and plate. */
export function pointVolts(supply: CommissionSupply, current: number): Outcome<readonly PointVolts[]> {
  const points = new Map<string, PointVolts>([
    [supply.holderPoint, { point: supply.holderPoint, side: 'electrode', lost: 0 }],
    [supply.platePoint, { point: supply.platePoint, side: 'work', lost: 0 }],
  ]);
  let left = [...supply.items];
  for (;;) {
    const reached = left.filter(({ to, side }) => points.get(to)?.side === side);
    if (reached.length === 0) break;
    for (const item of reached) {
      const { lost } = points.get(item.to)!;
      if (points.has(item.from)) continue;
      points.set(item.from, {
        point: item.from,
        side: item.side,
        lost: lost + itemVolts(item, supply, current),
      });
    }
    left = left.filter((item) => !reached.includes(item));
  }
  const issues = [
    ...left.map(unconnected),
    ...supply.sources.flatMap((source) => sourceIssues(source, points)),
  ];
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: [...points.values()] };
}

function unconnected({ id, to }: CommissionItem): Issue {
  const message = `The item "${id}" ends at "${to}", from where nothing on its side of the loop leads to the arc.`;
  return { code: 'COMMISSION_INPUT', message, path: `items.${id}.to`, read: to };
}

function sourceIssues(
  { name, electrodePoint, workPoint }: CommissionSupply['sources'][number],
  points: ReadonlyMap<string, PointVolts>,
): Issue[] {
  const sides = [
    ['electrodePoint', electrodePoint, 'electrode'],
    ['workPoint', workPoint, 'work'],
  ] as const;
  return sides
    .filter(([, point, side]) => points.get(point)?.side !== side)
    .map(([field, point, side]) => ({
      code: 'COMMISSION_INPUT',
      message: `The source "${name}" stands at "${point}", which no lead on the ${side} side reaches.`,
      path: `sources.${name}.${field}`,
      read: point,
    }));
}
