import { bisect } from '../../numeric/index.ts';
import { conductorOf } from './conductor.ts';
import { COPPER_HEAT_CAPACITY, HOTTEST } from './copper.ts';
import type { Lead } from './lead.ts';
import { COVERING_HEAT_CAPACITY, coveringOf } from './lead-covering.ts';
import { cableSurfaceLoss } from './surface-loss.ts';

/** One metre of one conductor as a lump: what heats it, what cools it, what it holds. Temperatures in kelvin. */
export interface HeatModel {
  /** Heat held per metre and kelvin [J/(m K)]. */
  readonly capacity: number;
  /** Temperature around it [K]. */
  readonly ambient: number;
  /** Heat lost per metre at a conductor temperature. */
  readonly lossAt: (temperature: number) => number;
  /** Resistance per metre at a conductor temperature. */
  readonly resistanceAt: (temperature: number) => number;
  /** Growth of the resistance with temperature [ohm/(m K)]. */
  readonly resistanceSlope: number;
  /** Most that the loss can grow per kelvin however hot it gets [W/(m K)]. */
  readonly lossSlopeMost: number;
}

/** Distance between the conductor temperatures of the table of losses [K]. */
const STEP = 1;
/** Distance between the surface temperatures that it is made from [K]. */
const SURFACE_STEP = 0.5;

/**
 * Heat lost by a lead at a conductor temperature, per metre of one conductor.
 *
 * Conduction through the covering, (T - Ts) 2 pi / (rho ln(D/d)), equals what the surface loses at Ts (free
 * convection and radiation). One cable, straight and clear, in still air; about 15 % in current against published
 * ampacities.
 *
 * @param lead - area and covering [record], a checked lead
 * @param temperature - conductor temperature [K], >= ambient
 * @param ambient - temperature around the lead [K], 230 to 350
 * @returns heat lost [W/m]
 * @source IEC 60287 form of the covering's resistance (confirmed); surface derived
 * @example
 * leadHeatLoss({ area: 95e-6 }, 273.15 + 85, 303.15) // => 40.48...
 */
export function leadHeatLoss(
  lead: Pick<Lead, 'area' | 'covering'>,
  temperature: number,
  ambient: number,
): number {
  if (temperature <= ambient) return 0;
  const covering = coveringOf(lead);
  const throughCovering = coveringConductance(lead);
  const surface = bisect(
    (ts) =>
      throughCovering * (temperature - ts) -
      cableSurfaceLoss(covering.outside_diameter, ts, ambient, covering.emissivity),
    ambient,
    temperature,
    1e-9,
  );
  return throughCovering * (temperature - (surface ?? ambient));
}

/** What the covering passes per kelvin [W/(m K)]. */
function coveringConductance(lead: Pick<Lead, 'area' | 'covering'>): number {
  const { thermal_resistivity, outside_diameter, conductor_diameter } = coveringOf(lead);
  return (2 * Math.PI) / (thermal_resistivity * Math.log(outside_diameter / conductor_diameter));
}

/**
 * Heat that one metre of a conductor and its covering take up per kelvin.
 *
 * The covering counts with p = 1/(2 ln(D/d)) - 1/((D/d)^2 - 1), because its outside stays cooler.
 *
 * @param lead - area and covering [record], a checked lead
 * @returns heat capacity [J/(m K)]
 * @source IEC 60853 volumetric heat capacities (memory)
 * @example
 * leadHeatCapacity({ area: 95e-6 }) // => 451.610849
 */
export function leadHeatCapacity(lead: Pick<Lead, 'area' | 'covering'>): number {
  const { outside_diameter: outside, conductor_diameter: inside } = coveringOf(lead);
  const ratio = outside / inside;
  const part = 1 / (2 * Math.log(ratio)) - 1 / (ratio ** 2 - 1);
  const coveringArea = (Math.PI / 4) * (outside ** 2 - inside ** 2);
  return COPPER_HEAT_CAPACITY * lead.area + part * COVERING_HEAT_CAPACITY * coveringArea;
}

/** The lump of a checked lead, its loss tabulated once. */
export function heatModelOf(lead: Lead, ambient: number): HeatModel {
  const conductor = conductorOf(lead);
  return {
    capacity: leadHeatCapacity(lead),
    ambient,
    lossAt: lossTable(lead, ambient),
    resistanceAt: conductor.resistanceAt,
    resistanceSlope: conductor.resistanceSlope,
    lossSlopeMost: coveringConductance(lead),
  };
}

/**
 * The loss against conductor temperature, straight between whole kelvins above ambient and beyond the last. The curve
 * is followed along surface temperatures: the loss follows from one, and the conductor's temperature from both, so
 * that nothing is searched.
 */
function lossTable(lead: Lead, ambient: number): (temperature: number) => number {
  const { outside_diameter, emissivity } = coveringOf(lead);
  const throughCovering = coveringConductance(lead);
  const count = Math.ceil((HOTTEST - ambient) / STEP) + 1;
  const losses = new Float64Array(count);
  let before = { rise: 0, loss: 0 };
  let filled = 1;
  for (let surface = ambient + SURFACE_STEP; filled < count; surface += SURFACE_STEP) {
    const loss = cableSurfaceLoss(outside_diameter, surface, ambient, emissivity);
    const rise = surface - ambient + loss / throughCovering;
    for (; filled < count && filled * STEP <= rise; filled += 1) {
      const part = (filled * STEP - before.rise) / (rise - before.rise);
      losses[filled] = before.loss + part * (loss - before.loss);
    }
    before = { rise, loss };
  }
  return (temperature) => {
    const place = (temperature - ambient) / STEP;
    const i = Math.min(count - 2, Math.max(0, Math.floor(place)));
    return losses[i]! + (place - i) * (losses[i + 1]! - losses[i]!);
  };
}
