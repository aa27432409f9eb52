import type { DocumentPath } from '../document/index.ts';
import type { Issue } from '../issue/index.ts';
import { fromUnit } from '../quantity/index.ts';
import {
  AIR_FITTINGS,
  AIR_ROUGHNESS,
  type AirFitting,
  type AirItem,
  type AirRun,
  type AirSupply,
  type AirTorch,
  airBore,
  conductanceFromFlow,
  massOfFreeAir,
  type StockHose,
} from '../supply/index.ts';
import type { Kit } from './kit-schema.ts';

type KitItem = Kit['air']['path'][number];
type KitTorch = Kit['air']['torch'];

/** One dm3/(s bar) in m3/(s Pa). */
const SI_CONDUCTANCE = 1e-8;
/** One kPa per 100 L/min in Pa s/m3. */
const SI_DROOP = fromUnit(1, 'kPa') / fromUnit(100, 'L/min');

/**
 * The air supply of a kit, from its compressor to its torch.
 *
 * @param kit - the kit [record], a kit that was read, or whose fields do not contradict each other
 * @returns the air supply [record]
 * @source none: bookkeeping
 * @example
 * airOfKit(demoKit.kit).path.length // => 5
 */
export function airOfKit(kit: Kit): AirSupply {
  const { air, ambient } = kit;
  const { compressor, receiver } = air;
  return {
    atmosphere: ambient.atmosphere,
    temperature: ambient.temperature,
    compressor: {
      delivery: compressor.delivery.map(({ pressure, flow }) => ({ pressure, freeAir: flow })),
    },
    receiver: { volume: receiver.volume, cutIn: receiver.cut_in, cutOut: receiver.cut_out },
    path: air.path.map(itemOf),
    torch: torchOf(air.torch, kit),
  };
}

/**
 * Hoses in stock, as the search for changes takes them.
 *
 * @param kit - the kit [record], a kit that was read, or whose fields do not contradict each other
 * @returns the hoses [list]
 * @source none: bookkeeping
 * @example
 * hosesOfKit(demoKit.kit).length // => 4
 */
export function hosesOfKit(kit: Kit): readonly StockHose[] {
  return (kit.stock.hoses ?? []).map((hose) => ({
    id: hose.name,
    bore: boreOf(hose, 'hose') ?? 0,
    length: hose.length,
    roughness: AIR_ROUGHNESS['smooth_hose'] ?? 0,
    fittings: 'unknown',
    count: hose.count,
  }));
}

/** Bore by trade size or as stated; undefined where neither is there or the size is not known [m]. */
function boreOf(
  run: { readonly size?: string | undefined; readonly bore?: number | undefined },
  kind: 'hose' | 'pipe',
): number | undefined {
  if (run.bore !== undefined) return run.bore;
  const known = run.size === undefined ? undefined : airBore(kind, run.size);
  return known?.ok === true ? known.value : undefined;
}

/** Where in the kit the place stands that a path in the air supply names. */
export function airPathInKit(path: string): DocumentPath {
  if (path === 'temperature' || path === 'atmosphere') return ['ambient', path];
  const indexed = /^(path|compressor\.delivery)\[(\d+)\]/u.exec(path);
  if (indexed !== null) return ['air', ...indexed[1]!.split('.'), Number(indexed[2])];
  if (path.startsWith('receiver.')) {
    const field = { volume: 'volume', cutIn: 'cut_in', cutOut: 'cut_out' }[path.slice('receiver.'.length)];
    return ['air', 'receiver', ...(field === undefined ? [] : [field])];
  }
  const [first] = path.split('.');
  return first === undefined || first === '' ? ['air'] : ['air', first];
}

/** Issues of trade sizes and fittings that are not known, with their places in the kit. */
export function unknownSizes(kit: Kit): readonly { readonly issue: Issue; readonly at: DocumentPath }[] {
  const sizes = [
    ...kit.air.path.map((run, i) => ({ run, at: ['air', 'path', i, 'size'], kind: run.kind })),
    ...(kit.stock.hoses ?? []).map((run, i) => ({ run, at: ['stock', 'hoses', i, 'size'], kind: 'hose' })),
  ].flatMap(({ run, at, kind }) => {
    if (run.size === undefined || (kind !== 'hose' && kind !== 'pipe')) return [];
    const known = airBore(kind, run.size);
    return known.ok ? [] : known.issues.map((issue) => ({ issue, at }));
  });
  const fittings = kit.air.path.flatMap((run, i) =>
    (run.fittings ?? []).flatMap(({ name, loss_in_bores }, k) => {
      if (loss_in_bores !== undefined || Object.hasOwn(AIR_FITTINGS, name)) return [];
      const accepted = Object.keys(AIR_FITTINGS).join(', ');
      const issue: Issue = {
        code: 'AIR_SIZE_UNKNOWN',
        path: '',
        message: `The loss of the fitting “${name}” is not known; use a listed name or state its loss in bores.`,
        read: name,
        accepted,
      };
      return [{ issue, at: ['air', 'path', i, 'fittings', k, 'name'] }];
    }),
  );
  return [...sizes, ...fittings];
}

function itemOf(item: KitItem): AirItem {
  const id = item.name;
  switch (item.kind) {
    case 'hose':
    case 'pipe':
      return runOf(item, item.kind);
    case 'component':
      return {
        kind: 'component',
        id,
        conductance: (item.conductance_dm3_per_s_bar ?? 0) * SI_CONDUCTANCE,
        criticalRatio: item.critical_ratio,
        open: item.valve === 'open',
      };
    case 'regulator':
      return {
        kind: 'regulator',
        id,
        set: item.set ?? 0,
        droop: item.droop_kPa_per_100_L_per_min * SI_DROOP,
        ...(item.conductance_dm3_per_s_bar !== undefined && {
          wideOpen: {
            conductance: item.conductance_dm3_per_s_bar * SI_CONDUCTANCE,
            criticalRatio: item.critical_ratio,
          },
        }),
      };
    case 'draw':
      return { kind: 'draw', id, freeAir: item.flow ?? 0 };
  }
}

function runOf(item: KitItem, kind: 'hose' | 'pipe'): AirRun {
  const wall = item.wall ?? (kind === 'hose' ? 'smooth_hose' : 'commercial_steel');
  return {
    kind,
    id: item.name,
    bore: boreOf(item, kind) ?? 0,
    length: item.length ?? 0,
    roughness: AIR_ROUGHNESS[wall] ?? 0,
    fittings:
      item.fittings?.map(
        ({ name, count, loss_in_bores }): AirFitting => ({
          name,
          count,
          lengthInBores: loss_in_bores ?? AIR_FITTINGS[name] ?? 0,
        }),
      ) ?? (kind === 'hose' ? 'unknown' : []),
  };
}

function torchOf(torch: KitTorch, { ambient }: Kit): AirTorch {
  if (torch.bore !== undefined) {
    const { bore, holes, discharge_coefficient: dischargeCoefficient } = torch;
    return { kind: 'bore', bore, holes, dischargeCoefficient };
  }
  if (torch.conductance_dm3_per_s_bar !== undefined) {
    const conductance = torch.conductance_dm3_per_s_bar * SI_CONDUCTANCE;
    return { kind: 'conductance', conductance, criticalRatio: torch.critical_ratio };
  }
  const measured = conductanceFromFlow(
    massOfFreeAir(torch.flow ?? 0),
    (torch.flow_at ?? 0) + ambient.atmosphere,
    ambient.temperature,
  );
  return { kind: 'conductance', ...measured };
}
