import { airOfKit } from './air-of-kit.ts';
import type { Kit } from './kit-schema.ts';

/**
 * Highest voltage of each power source without load: as stated, or of the points of its curve.
 *
 * @param kit - the kit [record], one that was read
 * @returns the sources by name, null where the plate does not tell [list]
 * @source none: bookkeeping
 * @example
 * noLoadVoltages({ sources: [{ name: 'S', points: [{ current: 0, voltage: 80 }, { current: 400, voltage: 40 }] }] }) // => [{"name":"S","noLoadVoltage":80}]
 */
export function noLoadVoltages(
  kit: Pick<Kit, 'sources'>,
): readonly { readonly name: string; readonly noLoadVoltage: number | null }[] {
  return kit.sources.map(({ name, no_load_voltage, points }) => ({
    name,
    noLoadVoltage:
      no_load_voltage ?? (points === undefined ? null : Math.max(...points.map(({ voltage }) => voltage))),
  }));
}

/**
 * Bores of the hoses laid.
 *
 * @param kit - the kit [record], one that was read
 * @returns the bores from the receiver on [m]
 * @source none: bookkeeping
 * @example
 * hoseBores(demoKit.kit) // => [0.0127, 0.015875]
 */
export function hoseBores(kit: Kit): readonly number[] {
  return airOfKit(kit).path.flatMap((item) => (item.kind === 'hose' ? [item.bore] : []));
}
