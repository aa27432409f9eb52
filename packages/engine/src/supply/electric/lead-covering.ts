import type { Lead, LeadCovering } from './lead.ts';

/**
 * Flexible rubber-covered leads: mm2, outside diameter [mm], wall [mm]. Diameters are the mean of the range in BS
 * 638-4:1979 (confirmed); walls are from memory.
 */
const BUILT: readonly (readonly [number, number, number])[] = [
  [16, 10.15, 2],
  [25, 11.5, 2],
  [35, 12.75, 2],
  [50, 15, 2.2],
  [70, 17.25, 2.4],
  [95, 19.5, 2.6],
  [120, 21.5, 2.8],
];

/** Volumetric heat capacity of rubber coverings, IEC 60853 (memory) [J/(m3 K)]. */
export const COVERING_HEAT_CAPACITY = 2e6;

/** The covering of a lead with nothing left open. */
export function coveringOf(lead: Pick<Lead, 'area' | 'covering'>): Required<LeadCovering> {
  return { thermal_resistivity: 5, emissivity: 0.9, ...(lead.covering ?? usualCovering(lead.area)) };
}

/** Diameters go with the root of the area: straight between the sizes listed, and on along the last stretch beyond. */
function usualCovering(area: number): Pick<LeadCovering, 'conductor_diameter' | 'outside_diameter'> {
  const root = Math.sqrt(area * 1e6);
  const found = BUILT.findIndex(([mm2]) => Math.sqrt(mm2) >= root);
  const upper = found < 0 ? BUILT.length - 1 : Math.max(1, found);
  const [a, b] = [BUILT[upper - 1]!, BUILT[upper]!];
  const part = (root - Math.sqrt(a[0])) / (Math.sqrt(b[0]) - Math.sqrt(a[0]));
  const outside = a[1] + part * (b[1] - a[1]);
  const wall = a[2] + part * (b[2] - a[2]);
  return { conductor_diameter: (outside - 2 * wall) * 1e-3, outside_diameter: outside * 1e-3 };
}
