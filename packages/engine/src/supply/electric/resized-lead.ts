import type { ConductorSize } from './conductor-size.ts';
import type { Lead } from './lead.ts';

/** The same run in another size, with that size's own resistance and its usual covering. */
export function resized(lead: Lead, size: ConductorSize): Lead {
  const { covering: _covering, resistance: _resistance, metal, ...kept } = lead;
  const tinned = metal === 'tinned copper' && size.tinnedResistance !== undefined;
  return { ...kept, area: size.area, metal: tinned ? 'tinned copper' : 'copper' };
}
