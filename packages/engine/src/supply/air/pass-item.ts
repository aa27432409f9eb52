import { bracketedRoot } from '../../numeric/index.ts';
import { AIR_GAS_CONSTANT, airViscosity, FREE_AIR_DENSITY } from './air-state.ts';
import type { AirComponent, AirItem, AirParallel, AirRegulator, AirRun, AirSupply } from './air-supply.ts';
import { frictionFactor } from './friction-factor.ts';
import { type IsothermalPassage, isothermalInlet, isothermalOutlet } from './isothermal-flow.ts';
import { conductedInlet, conductedOutlet } from './sonic-conductance.ts';

/** Factor on the length of a hose whose couplings are not described (one published point needs 1.58). */
const UNKNOWN_COUPLINGS = 1.5;

/** What is needed before an item, and what of it is choked. */
export interface Step {
  /** Absolute pressure [Pa abs]. */
  readonly pressure: number;
  readonly choked: readonly string[];
}

/** Outlet pressure a regulator holds at a flow. */
export function regulated(item: AirRegulator, flow: number, atmosphere: number): number {
  return atmosphere + item.set - item.droop * (flow / FREE_AIR_DENSITY);
}

/** Pressure an item needs before it to drive a flow into the pressure behind it. */
export function upstream(item: AirItem, flow: number, outlet: number, temperature: number): Step {
  switch (item.kind) {
    case 'pipe':
    case 'hose':
      return named(item.id, isothermalInlet(flow, outlet, passageOf(item, flow, temperature)));
    case 'component':
      return named(item.id, conductedInlet(flow, outlet, item, temperature));
    case 'regulator':
      return item.wideOpen === undefined
        ? { pressure: outlet, choked: [] }
        : named(item.id, conductedInlet(flow, outlet, item.wideOpen, temperature));
    case 'draw':
      return { pressure: outlet, choked: [] };
    case 'parallel':
      return upstreamOfParallel(item, flow, outlet, temperature);
  }
}

function named(id: string, { pressure, choked }: { pressure: number; choked: boolean }): Step {
  return { pressure, choked: choked ? [id] : [] };
}

type Branch = readonly (AirRun | AirComponent)[];

function alongBranch(branch: Branch, flow: number, outlet: number, temperature: number): Step {
  let pressure = outlet;
  const choked: string[] = [];
  for (const item of branch.toReversed()) {
    const step = upstream(item, flow, pressure, temperature);
    pressure = step.pressure;
    choked.push(...step.choked);
  }
  return { pressure, choked };
}

/** Flow that a branch takes between two pressures, at most `most`. */
function branchFlow(
  branch: Branch,
  inlet: number,
  outlet: number,
  most: number,
  temperature: number,
): number {
  const excess = (flow: number): number =>
    alongBranch(branch, flow, outlet, temperature).pressure / inlet - 1;
  if (inlet <= outlet) return 0;
  return excess(most) <= 0 ? most : (bracketedRoot(excess, 0, most, 1e-15 * most) ?? 0);
}

function upstreamOfParallel(item: AirParallel, flow: number, outlet: number, temperature: number): Step {
  if (flow === 0) return { pressure: outlet, choked: [] };
  const alone = item.branches.map((branch) => alongBranch(branch, flow, outlet, temperature).pressure);
  const flowsAt = (inlet: number): number[] =>
    item.branches.map((branch) => branchFlow(branch, inlet, outlet, flow, temperature));
  const excess = (inlet: number): number => flowsAt(inlet).reduce((sum, each) => sum + each, 0) / flow - 1;
  const pressure = bracketedRoot(excess, outlet, Math.min(...alone), 1e-14 * outlet) ?? Math.min(...alone);
  const choked = flowsAt(pressure).flatMap(
    (share, k) => alongBranch(item.branches[k]!, share, outlet, temperature).choked,
  );
  return { pressure, choked };
}

/** Pressure a flow leaves behind an item; undefined where the inlet cannot drive it. */
export function downstream(
  item: AirItem,
  flow: number,
  inlet: number,
  supply: AirSupply,
): number | undefined {
  const { temperature, atmosphere } = supply;
  switch (item.kind) {
    case 'pipe':
    case 'hose':
      return isothermalOutlet(flow, inlet, passageOf(item, flow, temperature));
    case 'component':
      return conductedOutlet(flow, inlet, item, temperature);
    case 'draw':
      return inlet;
    case 'regulator': {
      const open =
        item.wideOpen === undefined ? inlet : conductedOutlet(flow, inlet, item.wideOpen, temperature);
      return open === undefined ? undefined : Math.min(open, regulated(item, flow, atmosphere));
    }
    case 'parallel': {
      const short = (outlet: number): number =>
        upstreamOfParallel(item, flow, outlet, temperature).pressure / inlet - 1;
      return bracketedRoot(short, 1e-3 * inlet, inlet, 1e-14 * inlet);
    }
  }
}

/** A run at a mass flow: its whole loss in velocity heads, fittings included. */
function passageOf(run: AirRun, flow: number, temperature: number): IsothermalPassage {
  const gasWork = AIR_GAS_CONSTANT * temperature;
  if (flow === 0) return { bore: run.bore, loss: 0, gasWork };
  const reynolds = (4 * flow) / (Math.PI * run.bore * airViscosity(temperature));
  const friction = frictionFactor(reynolds, run.roughness / run.bore);
  return { bore: run.bore, loss: friction * boresOf(run), gasWork };
}

/** Length of a run with its fittings, in bores. */
export function boresOf({ bore, length, fittings }: AirRun): number {
  if (fittings === 'unknown') return (UNKNOWN_COUPLINGS * length) / bore;
  return length / bore + fittings.reduce((sum, { lengthInBores, count }) => sum + lengthInBores * count, 0);
}
