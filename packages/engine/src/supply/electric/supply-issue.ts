import type { Issue, IssueCode } from '../../issue/index.ts';

/** A refusal of something in the kit's supply, with its one issue. */
export function supplyIssue(
  code: IssueCode,
  issue: Omit<Issue, 'code'>,
): { readonly ok: false; readonly issues: readonly Issue[] } {
  return { ok: false, issues: [{ code, ...issue }] };
}

/** The issue of a number outside its range, or nothing; a missing or endless number is outside every range. */
export function outsideRange(
  value: number | undefined,
  range: { readonly least: number; readonly most: number; readonly unit: string; readonly above?: boolean },
  what: string,
  path: string,
): readonly Issue[] {
  const { least, most, unit, above = false } = range;
  const inside = value !== undefined && (above ? value > least : value >= least) && value <= most;
  if (inside) return [];
  const space = unit === '' ? '' : ` ${unit}`;
  const shown = value === undefined ? 'nothing' : `${value}${space}`;
  const accepted = `${above ? 'more than ' : ''}${least} to ${most}${space}`;
  const nearest = value !== undefined && value > most ? most : least;
  return [
    {
      code: 'ELECTRIC_VALUE',
      message: `${what} is ${shown}; accepted is ${accepted}.`,
      path,
      read: shown,
      accepted,
      ...(above && nearest === least ? {} : { nearest: `${nearest}${space}` }),
    },
  ];
}
