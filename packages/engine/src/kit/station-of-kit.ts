import {
  AIR_ROUGHNESS,
  airDensity,
  type BayHose,
  type BayJet,
  type BayLead,
  conductorSizeOf,
  copperResistance,
  hoseLossPerMetre,
  LAYING_PRACTICE,
  massOfFreeAir,
  type StationTask,
} from '../supply/index.ts';
import { hosesOfKit } from './air-of-kit.ts';
import type { Kit } from './kit-schema.ts';

type KitBay = NonNullable<Kit['bay']>;

/** What flows in the leads and hoses that are laid. */
export interface LaidLoad {
  /** Whole current [A]. */
  readonly current: number;
  /** Leads side by side in every run [-]. */
  readonly parallels: number;
  /** Temperature of the hottest lead [K]. */
  readonly leadTemperature: number;
  /** Free air through the torch [m3/s]. */
  readonly torchFlow: number;
  /** Flowing pressure behind the regulator [Pa gauge]. */
  readonly regulator: number;
}

/**
 * What a place for the control station is judged by: the kit's bay and stock under a load.
 *
 * Leads of the stock are taken in bundles of as many side by side as are laid; kinds that may not be laid so, or are too
 * few for one, are left out.
 *
 * @param kit - the kit [record], one that was read
 * @param bay - its bay [record], `kit.bay`
 * @param load - current, leads side by side, temperature and air [record], amounts > 0
 * @param jet - where the torch's jet throws [record], reach >= 0
 * @returns the task [record]
 * @source slack, tail and cleats: common practice; hose loss as hoseLossPerMetre
 * @example
 * const load = { current: 900, parallels: 2, leadTemperature: 333, torchFlow: 0.015, regulator: 550e3 };
 * stationTaskOfKit(demoKit.kit, demoKit.kit.bay, load, { ahead: 10, bothWays: false }).bay.workClamp // => {"x":12.2,"y":6.6}
 */
export function stationTaskOfKit(kit: Kit, bay: KitBay, load: LaidLoad, jet: BayJet): StationTask {
  const { atmosphere, temperature } = kit.ambient;
  const { parallels, current } = load;
  const pressure = load.regulator + atmosphere;
  const flow = massOfFreeAir(load.torchFlow);
  return {
    bay: {
      outline: bay.outline,
      obstacles: (bay.obstacles ?? []).map(areaOf),
      walkways: (bay.walkways ?? []).map(areaOf),
      powerSource: bay.power,
      airDrop: bay.air,
      workpiece: areaOf(bay.workpiece),
      seam: bay.seam,
      ...(bay.work_clamp !== undefined && { workClamp: bay.work_clamp }),
      keepOut: bay.keep_out,
      leadClearance: bay.lead_clearance,
      jet,
      clearance: bay.clearance,
    },
    stock: {
      leads: bundlesOf(kit, parallels, Math.max(temperature, load.leadTemperature)),
      hoses: hosesOfKit(kit).map(
        ({ id, length, count, bore }): BayHose => ({
          id,
          length,
          count,
          pressureLoss: hoseLossPerMetre(
            { flow, pressure, temperature },
            bore,
            AIR_ROUGHNESS['smooth_hose'] ?? 0,
          ),
        }),
      ),
      covers: bay.covers,
    },
    current,
    jointResistance: kit.stock.lead_joint / parallels,
    jointPressureLoss: kit.stock.hose_joint,
    // The volume flow in the hose makes a pressure lost the power lost.
    pressureWeight: flow / airDensity(pressure, temperature),
    grid: bay.grid,
    ...LAYING_PRACTICE,
  };
}

function areaOf({ name, outline }: KitBay['workpiece']): StationTask['bay']['workpiece'] {
  return { id: name, corners: outline };
}

/** Leads in stock as bundles of so many side by side; kinds that may not be laid so are left out. */
function bundlesOf(kit: Kit, parallels: number, temperature: number): readonly BayLead[] {
  return (kit.stock.leads ?? []).flatMap(({ name, size, length, count, parallels_most }) => {
    const known = conductorSizeOf(size, '');
    if (!known.ok || parallels_most < parallels) return [];
    const { resistance, referenceTemperature } = known.value;
    return [
      {
        id: name,
        length,
        count: Math.floor(count / parallels),
        resistance: copperResistance(resistance, temperature, referenceTemperature) / parallels,
      },
    ];
  });
}
