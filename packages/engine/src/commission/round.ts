import { z } from 'zod';
import { type CommissionCheck, commissionCheckSchema } from './check.ts';

/** How much of the rig is checked. */
export const ROUND_DEPTHS = ['first', 'daily', 'change'] as const;
/** What may have been changed since the rig was checked. */
export const RIG_CHANGES = [
  'seam',
  'electrode',
  'leads',
  'source',
  'air',
  'torch',
  'carriage',
  'gauge',
] as const;

/** How much of the rig is checked: everything the first time, ten or fewer every day, what a change can have put out. */
export type RoundDepth = (typeof ROUND_DEPTHS)[number];
/** What may have been changed since the rig was checked. */
export type RigChange = (typeof RIG_CHANGES)[number];

/** Which checks of a family a round takes: none, one that stands for all, or each. */
interface FamilyRow {
  /** The one taken every day; none where left out. */
  readonly daily?: 'first' | 'last';
  /** Changes after which each is made again. */
  readonly after: readonly RigChange[];
}

/**
 * Families of checks by the start of their identifiers: judgement, no source. Every day: what wears, slips or is knocked
 * between two shifts, what stops the rig, and one reading with the arc burning, which shows most of the rest at once.
 */
const FAMILIES: Readonly<Record<string, FamilyRow>> = {
  polarity: { after: ['leads', 'source', 'electrode'] },
  sense_wire: { after: ['leads', 'source'] },
  joints_tight: { daily: 'first', after: ['leads', 'source', 'torch'] },
  contact_jaws: { daily: 'first', after: ['electrode', 'torch'] },
  electrode_feed: { daily: 'first', after: ['electrode', 'torch'] },
  push_angle: { after: ['seam', 'electrode', 'torch', 'carriage'] },
  stick_out: { daily: 'first', after: ['seam', 'electrode', 'torch'] },
  torch_height: { after: ['seam', 'electrode', 'torch', 'carriage'] },
  gauge_zero: { daily: 'first', after: ['seam', 'gauge'] },
  arc_volts_set: { after: ['seam', 'electrode', 'source'] },
  start_dwell: { after: ['seam', 'electrode', 'carriage'] },
  receiver_pressure: { after: ['air'] },
  static_pressure: { after: ['air'] },
  flowing_pressure: { daily: 'last', after: ['air', 'torch'] },
  air_dry: { daily: 'first', after: ['air'] },
  air_jet: { after: ['air', 'torch', 'electrode'] },
  emergency_stop_volts: { after: ['source', 'leads'] },
  emergency_stop: { daily: 'first', after: ['seam', 'carriage', 'source'] },
  track_on_seam: { after: ['seam', 'carriage', 'torch'] },
  travel_time: { daily: 'first', after: ['seam', 'carriage'] },
  no_load_source: { after: ['source'] },
  no_load_point: { after: ['leads'] },
  plate_temperature: { after: ['seam'] },
  current: { daily: 'first', after: ['electrode', 'source', 'leads'] },
  loaded_source: { after: ['source'] },
  loaded_electrode: { after: ['leads', 'torch'] },
  loaded_work: { after: ['leads', 'seam'] },
  sense_difference: { after: ['leads', 'source', 'seam'] },
  joint: { after: ['leads', 'torch'] },
  loss_window: { after: ['source', 'carriage'] },
};

/** Names from the longest, so that one that another begins with is not taken for it. */
const NAMES = Object.keys(FAMILIES).sort((one, other) => other.length - one.length);

/** What each depth is for and what it cannot tell, for a person at the rig. */
const WORDS: Readonly<Record<RoundDepth, string>> = {
  first:
    'Every check: before the first arc of a rig that this shop has not run in this way. It leaves nothing out that Furrow knows of; what the maker and the site ask for comes on top.',
  daily:
    'Before the first arc of a day, on a rig that was checked whole and not changed since. It does not look for a lead on the wrong pole, a slow loss in one joint, or a source that shares badly: the current and the pressure at the torch would show the worst of it, not the beginning.',
  change:
    'What the change can have put out, and no more. It takes for granted that all else stands as it was when the rig was last checked whole: where that is not sure, make every check.',
};

/** A round of checks as it is told. */
export const commissionRoundSchema = z
  .object({
    depth: z.enum(ROUND_DEPTHS).describe('How much is checked.'),
    changed: z.array(z.enum(RIG_CHANGES)).describe('What was changed since the rig was checked.'),
    says: z.string().describe('What the round is for, and what it cannot tell.'),
    checks: z.array(commissionCheckSchema).describe('The checks to make, in this order.'),
    left_out: z.array(z.string()).describe('Titles of the checks it leaves out.'),
  })
  .meta({ id: 'CommissionRound', description: 'The checks of one round at the rig.' });

/** The checks of one round at the rig. */
export interface CommissionRound {
  readonly depth: RoundDepth;
  readonly changed: readonly RigChange[];
  readonly says: string;
  readonly checks: readonly CommissionCheck[];
  readonly left_out: readonly string[];
}

/**
 * Which of the checks before the first arc a round takes: all the first time on a rig, ten or fewer every day, and after a
 * change those that it can have put out.
 *
 * @param checks - all checks [list], from commissionChecks
 * @param depth - how much is checked [name], first, daily or change
 * @param changed - what was changed [list], names of RIG_CHANGES; counts for `change` alone; nothing changed leaves no check
 * @returns the checks in their order, in words what the round cannot tell, and the titles left out [record]
 * @source judgement, no source: which checks belong to a day and to a change
 * @example
 * roundOf([{ id: 'polarity', title: 'Polarity' }, { id: 'air_dry', title: 'Dry air' }], 'daily').left_out // => ["Polarity"]
 */
export function roundOf(
  checks: readonly CommissionCheck[],
  depth: RoundDepth,
  changed: readonly RigChange[] = [],
): CommissionRound {
  const taken = checks.filter((check) => isTaken(check, checks, depth, changed));
  return {
    depth,
    changed: depth === 'change' ? changed : [],
    says: WORDS[depth],
    checks: taken,
    left_out: checks.filter((check) => !taken.includes(check)).map(({ title }) => title),
  };
}

function isTaken(
  check: CommissionCheck,
  all: readonly CommissionCheck[],
  depth: RoundDepth,
  changed: readonly RigChange[],
): boolean {
  if (depth === 'first') return true;
  const family = familyOf(check.id);
  // a check that no round knows is made rather than forgotten
  if (family === undefined) return depth === 'change';
  const { daily, after } = FAMILIES[family]!;
  if (depth === 'change') return changed.some((one) => after.includes(one));
  if (daily === undefined) return false;
  const own = all.filter(({ id }) => familyOf(id) === family);
  return own.at(daily === 'first' ? 0 : -1) === check;
}

/** Family of a check, by its identifier; undefined where none is known. */
function familyOf(id: string): string | undefined {
  return NAMES.find((name) => id === name || id.startsWith(`${name}_`));
}
