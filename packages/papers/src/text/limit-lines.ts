import { formatStatedApart, type Limit, type UnitSystem } from '@furrow/engine';
import { sourceWords } from '../words/index.ts';
import { plainLine } from './plain-line.ts';
import { textTable } from './text-table.ts';
import { wrapped } from './wrapped.ts';

/** Margins as a table for the terminal, with what would mend those that do not hold and their sources; empty where there are none. */
export function limitLines(limits: readonly Limit[], units: UnitSystem, width: number): string[] {
  if (limits.length === 0) return [];
  return [
    'Margins',
    ...textTable(
      [
        { title: 'Limit', align: 'start' },
        { title: 'Asks for', align: 'end' },
        { title: '', align: 'start' },
        { title: 'There is', align: 'end' },
        { title: 'Verdict', align: 'start' },
      ],
      limits.map((limit) => {
        const [demand, capacity] = formatStatedApart(limit.demand, limit.capacity, limit.unit, units);
        return [
          plainLine(limit.title),
          demand,
          limit.sense === 'most' ? '≤' : '≥',
          capacity,
          limit.hard ? limit.verdict : `${limit.verdict} (not binding)`,
        ];
      }),
    ),
    ...limits
      .filter(({ verdict }) => verdict !== 'holds')
      .flatMap(({ title, verdict, remedy }) =>
        wrapped(
          plainLine(`${title} ${verdict}; what would mend it: ${remedy.replace(/\.$/u, '')}.`),
          width,
          '  - ',
        ),
      ),
    ...wrapped(plainLine(`Sources: ${sourceWords(limits).join('; ')}.`), width, '  '),
    '',
  ];
}
