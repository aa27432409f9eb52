import { hosesOfKit, type Kit } from '../kit/index.ts';
import { inUnit } from '../quantity/index.ts';
import {
  AIR_ROUGHNESS,
  airDensity,
  airViscosity,
  type BayHose,
  type BayLead,
  conductorSizeOf,
  copperResistance,
  FREE_AIR_DENSITY,
  frictionFactor,
  LAYING_PRACTICE,
  type StationTask,
  type WorkingLoop,
} from '../supply/index.ts';
import type { AirReport } from './air-report.ts';

type Bay = NonNullable<Kit['bay']>;

/** A station task, and how many leads lie side by side in each of its runs. */
export interface KitStation {
  readonly task: StationTask;
  /** Leads side by side [-]. */
  readonly parallels: number;
}

/** What a place for the station is judged by: the kit's bay and stock at the loop's current and the torch's flow. */
export function stationTaskOf(kit: Kit, bay: Bay, solved: WorkingLoop, air: AirReport): KitStation {
  const { atmosphere, temperature } = kit.ambient;
  const flow = (FREE_AIR_DENSITY * air.torch_flow_L_per_min) / 60_000;
  const density = airDensity(air.regulator_kPa * 1000 + atmosphere, temperature);
  // As many side by side as in the leads laid now.
  const parallels = Math.max(1, ...solved.leads.map((lead) => lead.parallels));
  const hot = Math.max(temperature, ...solved.leads.map((lead) => lead.temperature_K));
  return {
    parallels,
    task: {
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
        clearance: bay.clearance,
      },
      stock: {
        leads: bundlesOf(kit, parallels, hot),
        hoses: hosesOfKit(kit).map(
          ({ id, length, count, bore }): BayHose => ({
            id,
            length,
            count,
            pressureLoss: lossPerMetre(flow, bore, density, temperature),
          }),
        ),
        covers: bay.covers,
      },
      current: solved.current_A,
      jointResistance: kit.stock.lead_joint / parallels,
      jointPressureLoss: kit.stock.hose_joint,
      pressureWeight: flow / density,
      grid: bay.grid,
      ...LAYING_PRACTICE,
    },
  };
}

function areaOf({ name, outline }: Bay['workpiece']): StationTask['bay']['workpiece'] {
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

/** Pressure lost per metre of hose at a mass flow [Pa/m]. */
function lossPerMetre(flow: number, bore: number, density: number, temperature: number): number {
  const area = (Math.PI / 4) * bore ** 2;
  const speed = flow / (density * area);
  if (speed === 0) return 0;
  const reynolds = (density * speed * bore) / airViscosity(temperature);
  const friction = frictionFactor(reynolds, (AIR_ROUGHNESS['smooth_hose'] ?? 0) / bore);
  return ((friction / bore) * density * speed ** 2) / 2;
}

/** Bore as it is told with a hose. */
export function boreText(bore: number): string {
  return `${Number(inUnit(bore, 'mm').toPrecision(3))} mm`;
}
