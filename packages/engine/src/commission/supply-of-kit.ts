import { airOfKit, type Kit } from '../kit/index.ts';
import {
  type AirPoint,
  airPoint,
  type ElectricLoop,
  type Lead,
  type LeadState,
  solveLoop,
  sourceVoltage,
  type WorkingLoop,
} from '../supply/index.ts';
import type {
  CommissionAirPoint,
  CommissionAirRun,
  CommissionItem,
  CommissionSupply,
  PressureSpan,
} from './commission-supply.ts';

type Side = Lead['side'];
const SIDES = ['electrode', 'work'] as const;
const ENDS: Readonly<Record<Side, string>> = {
  electrode: 'electrode holder',
  work: 'plate beside the groove',
};

/**
 * A kit at a setting as commissioning meets it: every lead and joint between two named points, leads cold, the receiver
 * between its cut-in and its cut-out.
 *
 * @param kit - the kit [record], one that was read
 * @param polarity - pole of the electrode [text], from `polarityOf`
 * @param loop - its electric loop at the setting [record], one that has a working point
 * @returns what commissioning needs [record]
 * @source as solveLoop and airPoint
 * @example
 * const loop = { ...electricOfKit(demoKit.kit).electric, arc: { holds: 'current', current: 600, voltage: 40 } };
 * commissionSupplyOf(demoKit.kit, 'electrode_positive', loop).polarity // => "electrode_positive"
 */
export function commissionSupplyOf(
  kit: Kit,
  polarity: Kit['polarity'],
  loop: ElectricLoop,
): CommissionSupply {
  const { duty: _untilWarm, ...atOnce } = loop;
  const cold = solveLoop({ ...atOnce, lead_temperature: loop.ambient });
  if (!cold.ok || cold.value.kind !== 'operating_point')
    throw new Error('a loop with a working point has none with its leads cold');
  const solved = cold.value;
  const hot = solveLoop(loop);
  const hotLeads = hot.ok && hot.value.kind === 'operating_point' ? hot.value.leads : solved.leads;
  const names = loop.sources.map(({ source }) => source.name);
  const poles: Readonly<Record<Side, string>> =
    polarity === 'electrode_positive'
      ? { electrode: 'positive', work: 'negative' }
      : { electrode: 'negative', work: 'positive' };
  // Sources without leads of their own are joined at their terminals.
  const joined = (side: Side): string =>
    names.length > 1 ? `joined ${poles[side]} terminals` : `${names[0]} ${poles[side]}`;
  const items: CommissionItem[] = [];
  const terminals = loop.sources.map(({ source, leads = [] }) => {
    const pointOf = (side: Side): string => {
      const own = outwards(leads, side);
      if (own.length === 0) return joined(side);
      const start = `${source.name} ${poles[side]}`;
      const end = names.length > 1 ? joined(side) : `${source.name} leads, ${poles[side]}`;
      items.push(...chain(own, start, end, solved, hotLeads));
      return start;
    };
    return {
      name: source.name,
      noLoadVoltage: sourceVoltage(source.characteristic, 0),
      electrodePoint: pointOf('electrode'),
      workPoint: pointOf('work'),
    };
  });
  const branched = (side: Side): boolean =>
    loop.sources.some(({ leads = [] }) => leads.some((lead) => lead.side === side));
  const ends = SIDES.map((side) => {
    const whole = outwards(loop.leads, side);
    const start = names.length === 1 && branched(side) ? `${names[0]} leads, ${poles[side]}` : joined(side);
    if (whole.length === 0) return start;
    items.push(...chain(whole, start, ENDS[side], solved, hotLeads));
    return ENDS[side];
  });
  return {
    polarity,
    setCurrent: solved.current_A,
    holderPoint: ends[0]!,
    platePoint: ends[1]!,
    sources: terminals,
    items,
    ...airOf(kit),
  };
}

/** Leads of one side from the source outwards; the kit has them in the order of the current. */
function outwards(leads: readonly Lead[], side: Side): readonly Lead[] {
  const own = leads.filter((lead) => lead.side === side);
  return side === 'electrode' ? own : own.toReversed();
}

/** Leads one behind the other, each with its joints, from a point to a point. */
function chain(
  leads: readonly Lead[],
  start: string,
  end: string,
  { leads: states }: WorkingLoop,
  hotLeads: readonly LeadState[],
): CommissionItem[] {
  let from = start;
  return leads.flatMap((lead, place) => {
    const state = states.find(({ name }) => name === lead.name)!;
    const to = place === leads.length - 1 ? end : `next to ${leads[place + 1]!.name}`;
    const parts = partsOf(lead, state, hotLeads.find(({ name }) => name === lead.name) ?? state);
    return parts.map((part, i) => {
      const last = i === parts.length - 1;
      const item: CommissionItem = { ...part, from, to: last ? to : pointBehind(part, lead) };
      from = item.to;
      return item;
    });
  });
}

type Part = Omit<CommissionItem, 'from' | 'to'>;

function pointBehind({ kind, name }: Part, lead: Lead): string {
  return kind === 'lead' ? `far end of ${name}` : `${lead.name}, past ${name}`;
}

/** A lead's copper and behind it, seen from the source, its joints, each with the resistance that the whole current of the run meets. */
function partsOf(lead: Lead, state: LeadState, hot: LeadState): readonly Part[] {
  const { current_A: current, side } = state;
  const joints = state.joints.map((joint, i): Part => {
    const resistance = joint.drop_V / current;
    const own = lead.joints?.[i]?.resistance ?? 0;
    const hottest = hot.joints[i]?.resistanceMost;
    // What its lead stands when hot may be less than twice; a joint as expected is never called loose.
    const most = hottest === undefined || own === 0 ? 2 : Math.min(2, Math.max(1, hottest / own));
    return {
      id: `${lead.name} / ${joint.name} ${i + 1}`,
      kind: 'joint',
      name: joint.name,
      side,
      resistance,
      current,
      resistanceMost: most * resistance,
    };
  });
  const inJoints = joints.reduce((sum, joint) => sum + joint.resistance, 0);
  const copper: Part = {
    id: lead.name,
    kind: 'lead',
    name: lead.name,
    side,
    resistance: Math.max(0, state.resistance_ohm - inJoints),
    current,
    size: state.size,
    parallels: state.parallels,
    length: lead.length,
  };
  return [copper, ...joints];
}

function airRuns(kit: Kit): CommissionAirRun[] {
  const { path } = airOfKit(kit);
  return path.flatMap((item, i) => {
    if (item.kind !== 'hose' && item.kind !== 'pipe') return [];
    const from = path[i - 1]?.id ?? 'receiver';
    const to = path[i + 1]?.id ?? 'torch';
    return [{ name: item.id, from, to, bore: item.bore, length: item.length }];
  });
}

/** The air as it is read: nothing of it where no air reaches the torch. */
function airOf(kit: Kit): Pick<CommissionSupply, 'airRuns' | 'airPoints' | 'receiver'> {
  const supply = airOfKit(kit);
  const [low, high] = [supply.receiver.cutIn, supply.receiver.cutOut].map((receiver) =>
    airPoint(supply, receiver),
  );
  if (low?.ok !== true || high?.ok !== true) return { airRuns: [], airPoints: [] };
  return {
    airRuns: airRuns(kit),
    airPoints: airPoints(kit, low.value, high.value),
    receiver: { least: supply.receiver.cutIn, most: supply.receiver.cutOut },
  };
}

/** Where a gauge sits: behind the last regulator, and before the torch. */
function airPoints(kit: Kit, low: AirPoint, high: AirPoint): CommissionAirPoint[] {
  const place = kit.air.path.findLastIndex(({ kind }) => kind === 'regulator') + 1;
  const torch = high.points.length - 1;
  const places = place > 0 && place < torch ? [place, torch] : [torch];
  const span = (at: number, of: 'static' | 'flowing'): PressureSpan => ({
    least: low.points[at]![of],
    most: high.points[at]![of],
  });
  return places.map((i) => ({
    name: i === torch ? 'the torch' : (kit.air.path[i - 1]?.name ?? 'the regulator'),
    staticPressure: span(i, 'static'),
    flowingPressure: span(i, 'flowing'),
    atTorch: i === torch,
  }));
}
