import { type Composition, crackingParameterPcm } from '../material/index.ts';
import { INCH, siOfShown } from '../quantity/index.ts';

/** 65 degF: what the table writes for a plate that needs no heating [K]. */
const ROOM_ENTRY = kelvinOf(65);

/** How far the parts can give way while the weld shrinks. */
export type Restraint = 'low' | 'medium' | 'high';
/** Groups of rising susceptibility to cold cracks. */
export type SusceptibilityGroup = 'A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G';

/** The preheat of the hydrogen-control method, and how it was come by. */
export interface HydrogenControlPreheat {
  /** Cracking parameter Pcm [%]. */
  readonly pcm: number;
  /** Index 12 Pcm + log10 H of the method [-]. */
  readonly index: number;
  /** Group by the table; null: Pcm beyond its last column. */
  readonly group: SusceptibilityGroup | null;
  /** Least preheat and interpass temperature; null without a group [K]. */
  readonly temperature: number | null;
  /** The table asks for less than 65 degF: a plate at room temperature needs none. */
  readonly none: boolean;
}

/** Hydrogen levels of the method: the most of each [mL/100 g], and the hydrogen its index is taken at. */
const LEVELS = [
  { most: 5, at: 5, groups: 'ABCDE' },
  { most: 10, at: 10, groups: 'BCDEF' },
  { most: Number.POSITIVE_INFINITY, at: 30, groups: 'CDEFG' },
] as const;
/** Pcm below which each column of the group table holds [%]. */
const PCM_COLUMNS = [0.18, 0.23, 0.28, 0.33, 0.38] as const;
/** Thickness up to which each row of the restraint table holds; the first row is open at its end [m]. */
const ROWS = [3 / 8, 3 / 4, 1.5, 3, Number.POSITIVE_INFINITY].map((inches) => inches * INCH);

/** Least preheat in degF by restraint, thickness row and group A to G; 0 stands for less than 65 degF. */
const TABLE: Readonly<Record<Restraint, readonly (readonly number[])[]>> = {
  low: [
    [0, 0, 0, 0, 140, 280, 300],
    [0, 0, 65, 140, 210, 280, 300],
    [0, 0, 65, 175, 230, 280, 300],
    [65, 65, 100, 200, 250, 280, 300],
    [65, 65, 100, 200, 250, 280, 300],
  ],
  medium: [
    [0, 0, 0, 0, 160, 280, 320],
    [0, 0, 65, 175, 240, 290, 320],
    [0, 65, 165, 230, 280, 300, 320],
    [65, 175, 230, 265, 300, 300, 320],
    [200, 250, 280, 300, 320, 320, 320],
  ],
  high: [
    [0, 0, 65, 100, 230, 300, 320],
    [0, 65, 150, 220, 280, 320, 320],
    [65, 185, 240, 280, 300, 320, 320],
    [240, 265, 300, 300, 320, 320, 320],
    [240, 265, 300, 300, 320, 320, 320],
  ],
};

function kelvinOf(fahrenheit: number): number {
  return siOfShown(fahrenheit, 'temperature', 'inch');
}

/** Row of a thickness: below 3/8 in, then up to and with each bound. */
function rowOf(thickness: number): number {
  return ROWS.findIndex((most, row) => (row === 0 ? thickness < most - 1e-9 : thickness <= most + 1e-9));
}

/**
 * Least preheat by the hydrogen-control method of the AWS structural code.
 *
 * Pcm and hydrogen give a group A to G; group, thickness and restraint give the temperature by table. The tables
 * were recalled but for one cell each: check them against the code before anything rests on them.
 *
 * @param composition - mass percents [record], each from 0 to 100
 * @param hydrogen - diffusible hydrogen [mL/100 g], > 0; up to 5, up to 10, above
 * @param thickness - plate thickness [m], > 0
 * @param restraint - restraint of the joint [text], low, medium or high
 * @returns Pcm, index, group and temperature [record]
 * @source AWS D1.1 annex on preheat, hydrogen control (memory; seen: 2 in, group D, high restraint: 300 degF)
 * @example
 * preheatHydrogenControl({ C: 0.17, Si: 0.35, Mn: 1.4 }, 8, 0.0508, 'high').group // => "D"
 * preheatHydrogenControl({ C: 0.17, Si: 0.35, Mn: 1.4 }, 8, 0.0508, 'high').temperature // => 422.038889
 */
export function preheatHydrogenControl(
  composition: Composition,
  hydrogen: number,
  thickness: number,
  restraint: Restraint,
): HydrogenControlPreheat {
  const pcm = crackingParameterPcm(composition);
  const level = LEVELS.find(({ most }) => hydrogen <= most)!;
  const index = 12 * pcm + Math.log10(level.at);
  const column = PCM_COLUMNS.findIndex((most) => pcm < most);
  if (column < 0) return { pcm, index, group: null, temperature: null, none: false };
  const group = level.groups[column] as SusceptibilityGroup;
  const entry = TABLE[restraint][rowOf(thickness)]!['ABCDEFG'.indexOf(group)]!;
  const none = entry === 0;
  return { pcm, index, group, temperature: none ? ROOM_ENTRY : kelvinOf(entry), none };
}
