import { bisect } from '../../numeric/index.ts';
import { ZERO_CELSIUS } from '../../quantity/index.ts';
import { conductorOf } from './conductor.ts';
import { HOTTEST } from './copper.ts';
import type { Lead } from './lead.ts';
import { type HeatModel, leadHeatLoss } from './lead-heat.ts';

/** Where a lead's temperature settles under a current that never stops, or why it does not. */
export type SteadyTemperature =
  | {
      readonly kind: 'steady';
      /** Conductor temperature [K]. */
      readonly temperature_K: number;
    }
  | { readonly kind: 'runaway' | 'beyond_range'; readonly reason: string };

/**
 * Steady temperature of a conductor under a current that never stops.
 *
 * Solves I^2 R(T) = loss(T) between ambient and 200 degC, up to which the law of resistance is vouched for. Where
 * none lies there, tells whether there is one at all: with I^2 dR/dT above the most that the loss can grow per
 * kelvin there is none, and the conductor runs away.
 *
 * @param model - the lump [record], losses rising with temperature
 * @param current - current in one conductor [A], >= 0
 * @returns the temperature or the reason why there is none [record]
 * @source derived
 * @example
 * steadyTemperature(linearHeatModel({ resistance_20: 0.000206, conductance: 0.736027738, capacity: 451.610849, ambient: 313.15 }), 500).temperature_K - 273.15 // => 144.093876
 * steadyTemperature(linearHeatModel({ resistance_20: 0.000206, conductance: 0.736027738, capacity: 451.610849, ambient: 313.15 }), 954).kind // => "runaway"
 */
export function steadyTemperature(model: HeatModel, current: number): SteadyTemperature {
  const surplus = (t: number): number => current ** 2 * model.resistanceAt(t) - model.lossAt(t);
  const temperature_K = bisect(surplus, model.ambient, HOTTEST, 1e-9);
  if (temperature_K !== undefined) return { kind: 'steady', temperature_K };
  const amps = `${Math.round(current)} A in each conductor`;
  if (current ** 2 * model.resistanceSlope >= model.lossSlopeMost) {
    return {
      kind: 'runaway',
      reason: `with ${amps} the heat grows faster than the lead can lose it: there is no steady temperature`,
    };
  }
  return {
    kind: 'beyond_range',
    reason: `with ${amps} the lead would settle above 200 °C, beyond what any lead stands`,
  };
}

/**
 * Current above which a conductor whose loss goes with its temperature rise has no steady temperature.
 *
 * I = sqrt(G / (R20 alpha)).
 *
 * @param conductance - heat lost per metre and kelvin [W/(m K)], > 0
 * @param resistanceSlope - growth of the resistance with temperature, R20 times alpha [ohm/(m K)], > 0
 * @returns current [A]
 * @source derived
 * @example
 * runawayCurrent(0.736027738, 0.000206 * 0.00393) // => 953.492333
 */
export function runawayCurrent(conductance: number, resistanceSlope: number): number {
  return Math.sqrt(conductance / resistanceSlope);
}

/**
 * Continuous current that brings one conductor of a lead to a temperature.
 *
 * I = sqrt(loss / resistance) at that temperature. Within 15 % of published ampacities for a single cable, straight
 * and clear in still air; never a licence to exceed a code's value.
 *
 * @param lead - size, metal and covering [record], a checked lead
 * @param temperature - conductor temperature [K], above ambient, <= 473
 * @param ambient - temperature around it [K], 230 to 350
 * @returns current in one conductor [A]
 * @source derived; compared with NEC 310.17 and with welding-cable tables
 * @example
 * leadAmpacity({ name: 'x', side: 'work', area: 95e-6, length: 10 }, 273.15 + 85, 303.15) // => 395.6...
 */
export function leadAmpacity(lead: Lead, temperature: number, ambient: number): number {
  const conductor = conductorOf(lead);
  return Math.sqrt(leadHeatLoss(lead, temperature, ambient) / conductor.resistanceAt(temperature));
}

/**
 * A conductor that loses heat in proportion to its temperature rise.
 *
 * C dT/dt = I^2 R20 (1 + 0.00393 (T - 20 degC)) - G (T - Ta): what the closed formulas of cable heating assume.
 *
 * @param facts - resistance at 20 degC [ohm/m], conductance [W/(m K)], capacity [J/(m K)] and ambient [K] [record], all > 0
 * @returns the lump [record]
 * @source textbook
 * @example
 * linearHeatModel({ resistance_20: 0.0002, conductance: 0.7, capacity: 450, ambient: 300 }).lossAt(310) // => 7
 */
export function linearHeatModel(facts: {
  readonly resistance_20: number;
  readonly conductance: number;
  readonly capacity: number;
  readonly ambient: number;
}): HeatModel {
  const { resistance_20, conductance, capacity, ambient } = facts;
  const resistanceSlope = resistance_20 * 0.00393;
  return {
    capacity,
    ambient,
    lossAt: (t) => conductance * (t - ambient),
    resistanceAt: (t) => resistance_20 + resistanceSlope * (t - ZERO_CELSIUS - 20),
    resistanceSlope,
    lossSlopeMost: conductance,
  };
}
