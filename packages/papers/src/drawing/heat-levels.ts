import { formatStated, inUnit, siOfShown, type UnitSystem } from '@furrow/engine';
import type { MarkRole } from './drawing.ts';

/** Roles of the areas between the levels, from the coolest to the hottest. */
export const HEAT_ROLES = [
  'heat-1',
  'heat-2',
  'heat-3',
  'heat-4',
  'heat-5',
  'heat-6',
  'heat-7',
] as const satisfies readonly MarkRole[];

type LevelRole = 'isotherm' | 'isotherm-ac1' | 'isotherm-ac3' | 'isotherm-melting';

/** A temperature that is drawn as a line, and from which an area begins. */
export interface HeatLevel {
  /** Temperature [degC]. */
  readonly celsius: number;
  /** What is written at the line. */
  readonly text: string;
  readonly role: LevelRole;
}

/** What a metal does at certain temperatures [degC]. */
export interface HeatMarks {
  /** Start of austenite on heating, where the metal has it. */
  readonly ac1?: number | undefined;
  /** End of ferrite on heating. */
  readonly ac3?: number | undefined;
  readonly melting?: number | undefined;
}

/** Round temperatures in the units of the reader [degC]. */
const ROUND: Readonly<Record<UnitSystem, readonly number[]>> = {
  metric: [100, 200, 300, 500, 800],
  inch: [200, 400, 600, 1000, 1500].map((fahrenheit) =>
    inUnit(siOfShown(fahrenheit, 'temperature', 'inch'), 'degC'),
  ),
};

/** The temperatures that mean something: round ones up to Ac1, or up to melting, then Ac1, Ac3 and melting. */
export function heatLevels({ ac1, ac3, melting }: HeatMarks, units: UnitSystem): readonly HeatLevel[] {
  const text = (celsius: number): string => formatStated(celsius, 'degC', units);
  const named = (
    [
      [ac1, 'Ac1', 'isotherm-ac1'],
      [ac3, 'Ac3', 'isotherm-ac3'],
      [melting, 'melts', 'isotherm-melting'],
    ] as const
  ).flatMap(([celsius, name, role]): HeatLevel[] =>
    celsius === undefined ? [] : [{ celsius, text: `${name} ${text(celsius)}`, role }],
  );
  // round ones that lie close under a named one would only crowd it
  const first = named[0]?.celsius ?? Number.POSITIVE_INFINITY;
  const round = ROUND[units]
    .filter((celsius) => celsius < 0.85 * first)
    .map((celsius): HeatLevel => ({ celsius, text: text(celsius), role: 'isotherm' }));
  return [...round, ...named].slice(0, HEAT_ROLES.length);
}
