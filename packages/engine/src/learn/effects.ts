import { metalOf } from '../material/index.ts';
import { OTHER_METAL, OTHER_POSITION } from '../removal/index.ts';
import type { Family } from './observation.ts';

/**
 * How a family's level is made up, in shares of the variance of a family of the rows' metal and position: what all work
 * of a shop has in common, electrode kind and size band, torch, and the family's own (judgement, no source). A family
 * without data borrows the parts that it shares with those that have some.
 */
const SHARES = { shop: 0.7, electrode: 0.1, torch: 0.05, own: 0.15 } as const;

/** The columns of the coefficients: those of the law, then one to each part of a family's level. */
export interface Effects {
  /** Number of coefficients [-]. */
  readonly size: number;
  /** Name of each column; those of the law come first. */
  readonly names: readonly string[];
  /** Variance of each column in units of a family's; 0 for those of the law. */
  readonly shares: readonly number[];
}

/** Parts of the level of a family in a shop, with the share of each. */
export function partsOf(family: Family, shop: string): readonly (readonly [string, number])[] {
  const { metal, position, electrode, band, torch } = family;
  return [
    [`shop:${shop}`, SHARES.shop],
    [`electrode:${electrode}-${band}`, SHARES.electrode],
    ...(metalOf(metal).depthLawFitted ? [] : [[`metal:${metal}`, OTHER_METAL ** 2] as const]),
    ...(position === 'flat' ? [] : [[`position:${position}`, OTHER_POSITION ** 2] as const]),
    [`torch:${shop}/${torch ?? ''}`, SHARES.torch],
    [`own:${shop}/${metal}/${position}/${electrode}-${band}/${torch ?? ''}`, SHARES.own],
  ];
}

/** What the name of a part begins with, and the share that goes with it; undefined for a name that is none of a part. */
export function shareOf(part: string): number | undefined {
  const kinds: Readonly<Record<string, number>> = {
    shop: SHARES.shop,
    electrode: SHARES.electrode,
    metal: OTHER_METAL ** 2,
    position: OTHER_POSITION ** 2,
    torch: SHARES.torch,
    own: SHARES.own,
  };
  return kinds[part.split(':', 1)[0]!];
}

/** The columns of a law and of the parts named. */
export function effectsOf(law: readonly string[], parts: readonly (readonly [string, number])[]): Effects {
  const shares = new Map(parts);
  const names = [...law, ...[...shares.keys()].sort()];
  return { size: names.length, names, shares: names.map((name) => shares.get(name) ?? 0) };
}

/** Columns of the parts, and the variance of those parts that no column stands for. */
export function columnsOf(
  effects: Effects,
  parts: readonly (readonly [string, number])[],
): { readonly columns: readonly number[]; readonly unseen: number } {
  const columns: number[] = [];
  let unseen = 0;
  for (const [name, share] of parts) {
    const column = effects.names.indexOf(name);
    if (column < 0) unseen += share;
    else columns.push(column);
  }
  return { columns, unseen };
}
