import { formatAmount, formatConductor, type Kit, type UnitSystem } from '@furrow/engine';

/** A table of what the kit holds; the first cell of a row is its name. */
export interface KitTable {
  readonly id: string;
  readonly title: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** What the kit holds, in tables: sources, leads, the way of the air, and the stock. */
export function kitNumbers(kit: Kit, units: UnitSystem): readonly KitTable[] {
  const tables: KitTable[] = [
    {
      id: 'kit-sources',
      title: 'Power sources',
      heads: ['Source', 'How many', 'Characteristic', 'Rated'],
      rows: kit.sources.map((source) => [
        source.name,
        String(source.count),
        source.characteristic,
        source.rating
          .map(
            ({ current, duty }) =>
              `${formatAmount(current, 'current', units)} at ${formatAmount(duty, 'share', units)}`,
          )
          .join(', '),
      ]),
    },
    {
      id: 'kit-leads',
      title: 'Leads',
      heads: ['Lead', 'Side', 'Size', 'Length', 'Joints'],
      rows: kit.leads.map((lead) => [
        lead.name,
        lead.side,
        `${lead.parallels === 1 ? '' : `${lead.parallels} × `}${formatConductor(lead.size, units)}`,
        formatAmount(lead.length, 'length', units),
        String(lead.joints?.length ?? 0),
      ]),
    },
    {
      id: 'kit-air',
      title: 'Air',
      heads: ['Part', 'Kind', 'Size', 'Length', 'Set'],
      rows: [
        [
          'receiver',
          'receiver',
          formatAmount(kit.air.receiver.volume, 'volume', units),
          '–',
          `${formatAmount(kit.air.receiver.cut_in, 'pressure', units)} to ${formatAmount(kit.air.receiver.cut_out, 'pressure', units)}`,
        ],
        ...kit.air.path.map((item) => [
          item.name,
          item.kind,
          item.size ?? (item.bore === undefined ? '–' : formatAmount(item.bore, 'length', units)),
          item.length === undefined ? '–' : formatAmount(item.length, 'length', units),
          item.set === undefined ? '–' : formatAmount(item.set, 'pressure', units),
        ]),
      ],
    },
  ];
  const leads = (kit.stock.leads ?? []).map((lead) => [
    lead.name,
    'lead',
    formatConductor(lead.size, units),
    formatAmount(lead.length, 'length', units),
    String(lead.count),
  ]);
  const hoses = (kit.stock.hoses ?? []).map((hose) => [
    hose.name,
    'hose',
    hose.size ?? (hose.bore === undefined ? '–' : formatAmount(hose.bore, 'length', units)),
    formatAmount(hose.length, 'length', units),
    String(hose.count),
  ]);
  const rows = [...leads, ...hoses];
  if (rows.length === 0) return tables;
  return [
    ...tables,
    {
      id: 'kit-stock',
      title: 'Stock',
      heads: ['Name', 'Kind', 'Size', 'Length', 'How many'],
      rows,
    },
  ];
}
