/** How a list of the file is spoken of, and what a new entry begins with. */
export interface ListWords {
  /** One entry: electrode. */
  readonly one: string;
  /** All of them, as the name of their table. */
  readonly all: string;
  /** Fewest entries that the file can have. */
  readonly least: number;
  /** What a new entry begins with; the person fills in the rest. */
  readonly fresh: Readonly<Record<string, string | number>>;
}

interface KnownWords {
  readonly one: string;
  readonly all: string;
  readonly least?: number;
  readonly fresh?: Readonly<Record<string, string | number>>;
}

/** Lists by their pattern, or by their own name where several are alike. */
const KNOWN: Readonly<Record<string, KnownWords>> = {
  'kit.electrodes': {
    one: 'electrode',
    all: 'Electrodes in stock',
    least: 1,
    fresh: { diameter: '1/2 in' },
  },
  sources: { one: 'power source', all: 'Power sources' },
  points: { one: 'point', all: 'Points of the characteristic' },
  rating: { one: 'rating point', all: 'Rating points' },
  'stock.leads': { one: 'lead in stock', all: 'Leads in stock' },
  'stock.hoses': { one: 'hose in stock', all: 'Hoses in stock' },
  leads: { one: 'lead', all: 'Leads as laid' },
  seam: { one: 'point of the seam', all: 'Seam', fresh: { x: '0 m', y: '0 m' } },
  joints: { one: 'joint', all: 'Joints' },
  delivery: { one: 'delivery point', all: 'Delivery by pressure' },
  path: { one: 'air item', all: 'Air path' },
  fittings: { one: 'fitting', all: 'Fittings' },
  outline: { one: 'corner', all: 'Corners', fresh: { x: '0 m', y: '0 m' } },
  crews: { one: 'crew', all: 'Crews' },
  tasks: { one: 'task', all: 'Tasks', least: 1, fresh: { time: '30 min' } },
  measured: { one: 'reading of the air', all: 'Readings of the air' },
  obstacles: { one: 'obstacle', all: 'Obstacles' },
  passes: { one: 'pass', all: 'Passes' },
  crew: { one: 'person', all: 'Crew' },
  layers: { one: 'reading on the way', all: 'Readings on the way' },
  electrode_changes: { one: 'electrode change', all: 'Electrode changes' },
  files: { one: 'file', all: 'Files' },
  'gauge_check.readings': { one: 'reading of the block', all: 'Readings of the block' },
  walkways: { one: 'walkway', all: 'Walkways' },
};

/** Words of a list by its pattern; a list that is not known is called by its own name. */
export function listWords(pattern: string): ListWords {
  const name = pattern.split('.').at(-1) ?? '';
  const plain = name.replaceAll('_', ' ');
  const { one, all, least, fresh } = KNOWN[pattern] ??
    KNOWN[name] ?? {
      one: plain.replace(/s$/u, ''),
      all: `${plain.charAt(0).toUpperCase()}${plain.slice(1)}`,
    };
  return { one, all, least: least ?? 0, fresh: fresh ?? {} };
}

/** What a new entry begins with: a name where entries have one, so that it can be told from the others. */
export function freshEntry(
  words: ListWords,
  count: number,
  named: boolean,
): Readonly<Record<string, string | number>> {
  if (!named) return words.fresh;
  return {
    name: `${words.one.charAt(0).toUpperCase()}${words.one.slice(1)} ${count + 1}`,
    ...words.fresh,
  };
}
