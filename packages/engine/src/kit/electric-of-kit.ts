import type { DocumentPath } from '../document/index.ts';
import { fromUnit } from '../quantity/index.ts';
import type { Characteristic, ElectricKit, Lead, LeadJoint, PowerSource } from '../supply/index.ts';
import type { Kit } from './kit-schema.ts';

type KitSource = Kit['sources'][number];
type KitLead = Kit['leads'][number];

/** Sources and leads of a kit as the electric loop takes them, and where in the kit each stands. */
export interface ElectricOfKit {
  readonly electric: ElectricKit;
  /** Place in the kit of what a path in `electric` names. */
  readonly kitPath: (path: string) => DocumentPath;
}

/**
 * Sources of a kit one by one, each with the leads that it alone feeds, and the leads of the whole current.
 *
 * @param kit - the kit [record], a kit that was read, or whose fields do not contradict each other
 * @returns sources, leads and ambient, and where in the kit each stands [record]
 * @source none: bookkeeping
 * @example
 * electricOfKit(demoKit.kit).electric.sources.length // => 2
 */
export function electricOfKit(kit: Kit): ElectricOfKit {
  const places: { readonly source: number; readonly leads: readonly number[] }[] = [];
  const sources = kit.sources.flatMap((source, place) => {
    const own = kit.leads.flatMap((lead, i) => (lead.source === source.name ? [i] : []));
    return Array.from({ length: source.count }, (_, number) => {
      places.push({ source: place, leads: own });
      const suffix = source.count > 1 ? ` ${number + 1}` : '';
      return {
        source: sourceOf(source, `${source.name}${suffix}`),
        leads: own.map((i) => leadOf(kit.leads[i]!, suffix)),
      };
    });
  });
  const whole = kit.leads.flatMap((lead, i) => (lead.source === undefined ? [i] : []));
  const leads = whole.map((i) => leadOf(kit.leads[i]!, ''));
  return {
    electric: { sources, leads, ambient: kit.ambient.temperature },
    kitPath: (path) => placeInKit(path, places, whole),
  };
}

function sourceOf(source: KitSource, name: string): PowerSource {
  const { efficiency, power_factor, current_most, mains_voltage, mains_phases } = source;
  return {
    name,
    characteristic: characteristicOf(source),
    rating: source.rating.map(({ current, voltage, duty }) => ({
      current,
      duty,
      ...(voltage !== undefined && { voltage }),
    })),
    ...(current_most !== undefined && { current_most }),
    ...(efficiency !== undefined && { efficiency }),
    ...(power_factor !== undefined && { power_factor }),
    ...(mains_voltage !== undefined &&
      mains_phases !== undefined && { mains: { voltage: mains_voltage, phases: mains_phases } }),
  };
}

function characteristicOf(source: KitSource): Characteristic {
  const { characteristic: kind, no_load_voltage = 0, slope = 0, points = [] } = source;
  return kind === 'points' ? { kind, points } : { kind, no_load_voltage, slope };
}

function leadOf(lead: KitLead, suffix: string): Lead {
  const { insulation_limit, resistance_mohm_per_m } = lead;
  return {
    name: `${lead.name}${suffix}`,
    side: lead.side,
    area: lead.size,
    metal: lead.metal,
    parallels: lead.parallels,
    length: lead.length,
    laid: lead.laid,
    joints: (lead.joints ?? []).map(
      ({ name, resistance, at, carries }): LeadJoint => ({ name, resistance, at, carries }),
    ),
    ...(insulation_limit !== undefined && { insulation_limit }),
    ...(resistance_mohm_per_m !== undefined && { resistance: fromUnit(resistance_mohm_per_m, 'mohm') }),
  };
}

/** Fields of a lead or a source that the kit names otherwise than the loop does. */
const RENAMED: Readonly<Record<string, string>> = {
  area: 'size',
  resistance: 'resistance_mohm_per_m',
};

function placeInKit(
  path: string,
  places: readonly { readonly source: number; readonly leads: readonly number[] }[],
  whole: readonly number[],
): DocumentPath {
  if (path === 'ambient') return ['ambient', 'temperature'];
  const branch = /^sources\[(\d+)\](?:\.leads\[(\d+)\])?\.?(.*)$/u.exec(path);
  if (branch !== null) {
    const place = places[Number(branch[1])];
    if (place === undefined) return ['sources'];
    if (branch[2] !== undefined) return ['leads', place.leads[Number(branch[2])] ?? 0, ...rest(branch[3]!)];
    return ['sources', place.source, ...rest(branch[3]!.replace(/^source\.?(?:characteristic\.?)?/u, ''))];
  }
  const lead = /^leads\[(\d+)\]\.?(.*)$/u.exec(path);
  if (lead !== null) return ['leads', whole[Number(lead[1])] ?? 0, ...rest(lead[2]!)];
  return [];
}

/** The rest of a path, part by part. */
function rest(path: string): DocumentPath {
  const parts = [...path.matchAll(/([a-z_]+)|\[(\d+)\]/giu)].map((found): string | number =>
    found[2] === undefined ? found[1]! : Number(found[2]),
  );
  return parts.map((part, i) => (typeof part === 'string' && i === 0 ? (RENAMED[part] ?? part) : part));
}
