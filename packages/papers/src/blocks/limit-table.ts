import { formatStatedApart, type Limit, type UnitSystem } from '@furrow/engine';
import type { TableBlock } from './paper-document.ts';

/** Margins with what is asked for, what there is, the verdict in words and where the limit comes from. */
export function limitTable(caption: string, limits: readonly Limit[], units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption,
    small: true,
    columns: [
      { title: 'Limit', align: 'start', weight: 1.5, strong: true },
      { title: 'Asks for', align: 'end', weight: 0.7 },
      { title: 'There is', align: 'end', weight: 0.8 },
      { title: 'Verdict', align: 'start', weight: 0.7, strong: true },
      { title: 'Source', align: 'start', weight: 2.4 },
    ],
    rows: limits.map((limit) => {
      const [demand, capacity] = formatStatedApart(limit.demand, limit.capacity, limit.unit, units);
      return [
        limit.title,
        demand,
        `${limit.sense === 'most' ? '≤' : '≥'} ${capacity}`,
        limit.hard ? limit.verdict : `${limit.verdict}, not binding`,
        limit.source.text.includes(limit.source.provenance)
          ? limit.source.text
          : `${limit.source.text} (${limit.source.provenance})`,
      ];
    }),
  };
}
