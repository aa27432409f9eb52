import { formatStatedApart, type Limit, sentenceText, type UnitSystem } from '@furrow/engine';
import { sourceText } from '../words/index.ts';
import type { ListBlock, TableBlock } from './paper-document.ts';

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
      { title: 'Source', align: 'start', weight: 2.4, below: 'once' },
    ],
    rows: limits.map((limit) => {
      const [demand, capacity] = formatStatedApart(limit.demand, limit.capacity, limit.unit, units);
      return [
        limit.title,
        demand,
        `${limit.sense === 'most' ? '≤' : '≥'} ${capacity}`,
        limit.hard ? limit.verdict : `${limit.verdict}, not binding`,
        sourceText(limit.source),
      ];
    }),
  };
}

/** What would mend each limit that does not hold. */
export function remedyList(limits: readonly Limit[], units: UnitSystem): ListBlock {
  const open = limits.filter(({ verdict }) => verdict !== 'holds');
  return {
    kind: 'list',
    tone: 'plain',
    items: open.map(
      ({ title, verdict, remedy }) =>
        `${title} ${verdict}; what would mend it: ${sentenceText(remedy, units).replace(/\.$/u, '')}.`,
    ),
  };
}
