import { bracketedRoot } from '../../numeric/index.ts';
import { FREE_AIR_DENSITY } from './air-state.ts';
import type { AirItem, AirSupply, AirTorch } from './air-supply.ts';
import { downstream, regulated, upstream } from './pass-item.ts';
import {
  conductanceOfArea,
  conductedFlow,
  conductedInlet,
  type SonicConductance,
} from './sonic-conductance.ts';

/** Pressures before every item, before the torch last; and what holds the flow. */
export interface PathState {
  /** Mass flow through the torch [kg/s]. */
  readonly torchFlow: number;
  /** Mass flow out of the receiver [kg/s]. */
  readonly receiverFlow: number;
  /** Absolute pressure before each item and, last, before the torch [Pa abs]. */
  readonly pressures: readonly number[];
  /** Ids of what is choked, the torch as `torch`. */
  readonly choked: readonly string[];
  /** Id of the regulator that sets the flow, if one does. */
  readonly regulating: string | undefined;
}

/** Share of the receiver's pressure within which two pressures are the same. */
const SAME = 1e-9;

/** Sonic conductance of a torch, whichever way it is described. */
function torchConductance(torch: AirTorch): SonicConductance {
  if (torch.kind === 'conductance') return torch;
  return conductanceOfArea((torch.holes * Math.PI * torch.bore ** 2) / 4, torch.dischargeCoefficient);
}

/**
 * Flow and pressures for an absolute receiver pressure; undefined where other users take more than can pass.
 *
 * Marched upstream from the torch, every item tells the pressure it needs before it, choked or not, and that
 * pressure rises with the flow without a jump. The flow sought is the greatest at which the receiver, and every
 * regulator at its set pressure, still give what is needed: one crossing of a rising function.
 */
export function solvePath(supply: AirSupply, receiver: number): PathState | undefined {
  const torch = torchConductance(supply.torch);
  const most = conductedFlow(receiver, 0, torch, supply.temperature);
  const want = (flow: number): number => shortfall(supply, march(supply, torch, flow), receiver);
  const atNone = want(0);
  if (atNone > 0) return undefined;
  // Where nothing but the torch resists, rounding may leave no sign change: the bracket's end is the answer.
  const torchFlow = atNone === 0 ? 0 : (bracketedRoot(want, 0, most, 1e-15 * most) ?? most);
  const marched = march(supply, torch, torchFlow);
  return stateOf(supply, marched, torchFlow, receiver);
}

interface Marched {
  /** Pressure needed before each item, before the torch last. */
  readonly needed: readonly number[];
  /** Flow through each item, the torch last. */
  readonly flows: readonly number[];
  readonly choked: readonly string[];
}

function march(supply: AirSupply, torch: SonicConductance, torchFlow: number): Marched {
  const { path, temperature } = supply;
  const needed: number[] = new Array(path.length + 1);
  const flows: number[] = new Array(path.length + 1);
  const choked: string[] = [];
  let flow = torchFlow;
  const last = conductedInlet(flow, supply.atmosphere, torch, temperature);
  if (last.choked) choked.push('torch');
  needed[path.length] = last.pressure;
  flows[path.length] = flow;
  for (let i = path.length - 1; i >= 0; i -= 1) {
    const item = path[i]!;
    if (item.kind === 'draw') flow += item.freeAir * FREE_AIR_DENSITY;
    const step = upstream(item, flow, needed[i + 1]!, temperature);
    needed[i] = step.pressure;
    flows[i] = flow;
    choked.push(...step.choked);
  }
  return { needed, flows, choked: choked.reverse() };
}

/** By how much, as a share of the receiver's pressure, the worst-placed need exceeds what is given. */
function shortfall(supply: AirSupply, { needed, flows }: Marched, receiver: number): number {
  let worst = needed[0]! / receiver - 1;
  for (const [i, item] of supply.path.entries()) {
    if (item.kind !== 'regulator') continue;
    worst = Math.max(worst, (needed[i + 1]! - regulated(item, flows[i]!, supply.atmosphere)) / receiver);
  }
  return worst;
}

function stateOf(supply: AirSupply, marched: Marched, torchFlow: number, receiver: number): PathState {
  const { needed, flows, choked } = marched;
  const { path, atmosphere } = supply;
  const isBinding = (item: AirItem, i: number): boolean =>
    item.kind === 'regulator' &&
    Math.abs(needed[i + 1]! - regulated(item, flows[i]!, atmosphere)) <= SAME * receiver;
  const fromReceiver = needed[0]! >= receiver * (1 - SAME);
  const binding = fromReceiver ? -1 : path.findIndex(isBinding);
  const pressures = [...needed];
  pressures[0] = receiver;
  // Before the regulator that binds, the receiver rules; behind it, the torch.
  for (let i = 0; i < binding; i += 1) {
    pressures[i + 1] = downstream(path[i]!, flows[i]!, pressures[i]!, supply) ?? needed[i + 1]!;
  }
  const before = new Set(path.slice(0, Math.max(0, binding)).map(({ id }) => id));
  return {
    torchFlow,
    receiverFlow: flows[0]!,
    pressures,
    // What lies before the binding regulator sees more pressure than it needs, and is not choked.
    choked: choked.filter((id) => !before.has(id)),
    regulating: binding < 0 ? undefined : path[binding]!.id,
  };
}
