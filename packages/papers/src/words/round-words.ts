import type { RigChange, RoundDepth } from '@furrow/engine';

/** What each round at the rig is called. */
export const ROUND_TITLES: Readonly<Record<RoundDepth, string>> = {
  first: 'First time on this rig',
  daily: 'Every day',
  change: 'After a change',
};

/** What may have been changed, as a person at the rig would say it. */
export const CHANGE_WORDS: Readonly<Record<RigChange, string>> = {
  seam: 'another seam',
  electrode: 'another electrode',
  leads: 'leads or work clamp moved',
  source: 'another source',
  air: 'air line changed',
  torch: 'torch changed',
  carriage: 'carriage or track changed',
  gauge: 'another gauge',
};
