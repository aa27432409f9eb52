import type {
  CommissionAirPoint,
  CommissionAirRun,
  CommissionItem,
  CommissionSupply,
} from '../commission/index.ts';
import { airOfKit, type Kit } from '../kit/index.ts';
import type { ElectricLoop, Lead, LeadState, WorkingLoop } from '../supply/index.ts';
import { sourceVoltage } from '../supply/index.ts';
import type { AirReport } from './air-report.ts';

type Side = Lead['side'];
const SIDES = ['electrode', 'work'] as const;
const ENDS: Readonly<Record<Side, string>> = {
  electrode: 'electrode holder',
  work: 'plate beside the groove',
};

/** The solved loop and air as commissioning takes them: every lead and joint between two named points. */
export function commissionSupplyOf(
  kit: Kit,
  loop: ElectricLoop,
  solved: WorkingLoop,
  air: AirReport | null,
): CommissionSupply {
  const names = loop.sources.map(({ source }) => source.name);
  const poles: Readonly<Record<Side, string>> =
    kit.polarity === 'electrode_positive'
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
      items.push(...chain(own, start, end, solved));
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
    items.push(...chain(whole, start, ENDS[side], solved));
    return ENDS[side];
  });
  return {
    polarity: kit.polarity,
    setCurrent: solved.current_A,
    holderPoint: ends[0]!,
    platePoint: ends[1]!,
    sources: terminals,
    items,
    airRuns: air === null ? [] : airRuns(kit),
    airPoints: air === null ? [] : airPoints(air, kit),
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
): CommissionItem[] {
  let from = start;
  return leads.flatMap((lead, place) => {
    const state = states.find(({ name }) => name === lead.name)!;
    const to = place === leads.length - 1 ? end : `next to ${leads[place + 1]!.name}`;
    const parts = partsOf(lead, state);
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
function partsOf(lead: Lead, state: LeadState): readonly Part[] {
  const { current_A: current, side } = state;
  const joints = state.joints.map(
    (joint, i): Part => ({
      id: `${lead.name} / ${joint.name} ${i + 1}`,
      kind: 'joint',
      name: joint.name,
      side,
      resistance: joint.drop_V / current,
      current,
    }),
  );
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

/** Where a gauge sits: behind the last regulator, and before the torch. */
function airPoints({ points }: AirReport, kit: Kit): CommissionAirPoint[] {
  const place = points.findLastIndex(({ kind }) => kind === 'regulator');
  const torch = points.length - 1;
  const places = place > 0 && place < torch ? [place, torch] : [torch];
  return places.map((i) => ({
    name: i === torch ? 'the torch' : (kit.air.path[i - 1]?.name ?? 'the regulator'),
    staticPressure: points[i]!.static_kPa * 1000,
    flowingPressure: points[i]!.flowing_kPa * 1000,
    atTorch: i === torch,
  }));
}
