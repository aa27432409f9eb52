import type { Easing } from '../limit/index.ts';
import { capitalised, type Sentence, say, statedApart } from '../quantity/index.ts';
import { easingsOfGroove } from './easings-of-groove.ts';
import { easingsOfLocks, easingsOfMeasuring, easingsOfStock } from './easings-of-kit.ts';
import { shopsOf } from './kept-shops.ts';
import type { Miss } from './miss.ts';
import type { Binding, Refusal } from './outcome.ts';
import { type SearchResult, search } from './search.ts';
import type { SearchTask } from './search-task.ts';

/** Told constraints at most [-]. */
const BINDING_MOST = 6;
/** Shops while changes are tried: many searches, so fewer shops each [-]. */
const QUICK = { search: 256, scout: 64, last: 512, fair: 1024 } as const;
/** Distance between the seeds of the shops [-]. */
const LAST_SEED = 32_452_843;
const FAIR_SEED = 15_485_863;
/** Passes that one try in few shops may run, and one in all of them [-]. */
const TRY_WORK = 0.5e6;
const CONFIRM_WORK = 1.5e6;
/** Steps past, and back from, the one found in few shops that are tried in all of them [-]. */
const STEPS_PAST = 3;
/** Constraints that turn every set-up away before its depth is solved: what only changes the depth cannot matter then. */
const BEFORE_SOLVING: ReadonlySet<string> = new Set([
  'electrode_current',
  'locks.current',
  'root_radius',
  'source_current_least',
  'source_current_most',
  'width_least',
  'width_most',
]);

/**
 * Explains why there is no plan: what single change of the job or the kit, as small as can be, would make one; where
 * none is found, what was missed most closely. The change is found by the same search under the eased demand: in few
 * shops first, and what is told in all of them. Those of the kit come first, of them those that were missed by name; those of
 * the drawing come after them, and the ligament last.
 */
export function refuse(input: SearchTask, found: SearchResult, handedIn: readonly Easing[]): Refusal {
  const { job } = input;
  const missed = new Set(found.misses.map((miss) => miss.constraint));
  const early = [...missed].every((constraint) => BEFORE_SOLVING.has(constraint)) && missed.size > 0;
  const ofKit = [
    ...easingsOfLocks(job),
    ...easingsOfMeasuring(job),
    ...easingsOfStock(job, missed),
    ...handedIn,
  ];
  // What was missed by name most likely frees the job: it is tried before the work allowed runs out.
  const isNamed = ({ constraint }: Easing): boolean => missed.has(constraint);
  const all = [
    ...ofKit.filter(isNamed),
    ...ofKit.filter((easing) => !isNamed(easing)),
    ...easingsOfGroove(job),
  ];
  const easings = early
    ? all.filter(({ beforeDepth }) => beforeDepth)
    : all.filter(({ constraint }) => constraint !== 'root_radius' || missed.has('root_radius'));
  const { seed } = job.plan;
  const quick: SearchTask = {
    ...input,
    draws: shopsOf(input.belief, QUICK.search, seed),
    scouts: shopsOf(input.belief, QUICK.scout, seed),
    last: shopsOf(input.belief, QUICK.last, (seed + LAST_SEED) % 2 ** 31),
    fair: shopsOf(input.belief, QUICK.fair, (seed + FAIR_SEED) % 2 ** 31),
  };
  const tries: Tries = { input, quick, unfinished: !found.complete };
  const binding: Binding[] = [];
  for (const easing of easings) {
    if (binding.length < BINDING_MOST) binding.push(...bindingOf(easing, tries));
  }
  if (binding.length > 0) {
    return {
      summary: say`${NOT_FOUND}${whyOf(found)} ${capitalised(binding[0]!.remedy)} would free it.`,
      binding,
    };
  }
  return {
    summary: tries.unfinished
      ? say`${NOT_FOUND}${whyOf(found)} The work allowed for the search ran out before everything was tried, so one may still exist; lock what is settled, and plan again.`
      : say`${NOT_FOUND}${whyOf(found)} No single change that was tried frees it: several are needed at once.`,
    binding: found.misses.slice(0, BINDING_MOST).map(missBinding),
  };
}

const NOT_FOUND = 'No set-up of this kit was found that makes this groove surely enough.';

/** Why, in one sentence: what the set-up that comes closest misses. */
function whyOf({ misses }: SearchResult): Sentence {
  const [closest] = misses;
  if (closest === undefined) return '';
  const { title, demand, limit, unit } = closest;
  const [asked, there] = statedApart(demand, limit, unit);
  return say` The closest one misses this: ${title.charAt(0).toLowerCase()}${title.slice(1)}, ${asked} asked for, ${there} there.`;
}

/** What tries of easings share. */
interface Tries {
  readonly input: SearchTask;
  readonly quick: SearchTask;
  /** Whether a search ended for want of work: then nothing can be said of what was not tried. */
  unfinished: boolean;
}

function missBinding({ constraint, demand, limit, unit, remedy }: Miss): Binding {
  return { constraint, demand, limit, unit, remedy, frees: false };
}

/** The least step of an easing that frees the job, found by halving over the steps; none if the last does not. */
function bindingOf(easing: Easing, tries: Tries): Binding[] {
  const { input, quick } = tries;
  const frees = (index: number, shops: SearchTask): boolean => {
    const job = easing.apply(input.job, easing.steps[index]!);
    // One try may not use up what the others need; a change that is not seen to free the job is not told.
    const most = shops === quick ? Math.min(input.work.left, TRY_WORK) : CONFIRM_WORK;
    if (most <= 0) {
      tries.unfinished = true;
      return false;
    }
    const work = { left: most };
    const { best, complete } = search({ ...shops, job, work, firstOnly: true });
    input.work.left -= most - work.left;
    if (best === undefined && !complete) tries.unfinished = true;
    return best !== undefined;
  };
  const last = easing.steps.length - 1;
  if (last < 0 || !frees(last, quick)) return [];
  let most = last;
  let least = 0;
  while (least < most) {
    const middle = Math.floor((least + most) / 2);
    if (frees(middle, quick)) most = middle;
    else least = middle + 1;
  }
  let index = most;
  while (index <= Math.min(last, most + STEPS_PAST) && !frees(index, input)) index += 1;
  if (index > Math.min(last, most + STEPS_PAST)) return [];
  // Few shops may have asked for too much: all of them say whether less does.
  if (index === most) while (index > 0 && index > most - STEPS_PAST && frees(index - 1, input)) index -= 1;
  const value = easing.steps[index]!;
  return [
    {
      constraint: easing.constraint,
      demand: value,
      limit: easing.now,
      unit: easing.unit,
      remedy: easing.words(value),
      frees: true,
    },
  ];
}
