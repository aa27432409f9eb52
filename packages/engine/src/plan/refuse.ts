import type { Job } from '../job/index.ts';
import { formatAmount, type QuantityKind, type StatedUnit } from '../quantity/index.ts';
import { currentRangeOf } from '../removal/index.ts';
import type { Miss } from './miss.ts';
import type { Binding, Refusal } from './result.ts';
import { search } from './search.ts';
import type { SearchInput } from './weigh.ts';

/** One way to give way: the job with a little of it changed, and how that is told. */
interface Easing {
  readonly constraint: string;
  readonly unit: StatedUnit;
  /** What the job says now, in `unit`. */
  readonly now: number;
  /** Changes to try, the least first, in `unit`. */
  readonly steps: readonly number[];
  readonly apply: (job: Job, value: number) => Job;
  readonly tell: (value: number) => string;
}

/** Told constraints at most [-]. */
const BINDING_MOST = 6;

/**
 * Explains why there is no plan: what single change of the job or the kit, as small as can be, would make one;
 * where none does, what was missed most closely. Changes are tried in few shops; the one that is told is
 * tried in all of them.
 */
export function refuse(input: SearchInput, quick: SearchInput, misses: readonly Miss[]): Refusal {
  const missed = new Set(misses.map((miss) => miss.constraint));
  const binding = easingsOf(input.job, missed).flatMap((easing) => bindingOf(easing, input, quick));
  if (binding.length > 0) {
    return {
      summary: `No set-up of this kit makes this groove surely enough. ${sentence(binding[0]!.remedy)} would free it.`,
      binding: binding.slice(0, BINDING_MOST),
    };
  }
  return {
    summary:
      'No set-up of this kit makes this groove, and no single change would free it; several are needed at once.',
    binding: misses.slice(0, BINDING_MOST).map(missBinding),
  };
}

function sentence(remedy: string): string {
  return remedy.charAt(0).toUpperCase() + remedy.slice(1);
}

function missBinding(miss: Miss): Binding {
  return {
    constraint: miss.constraint,
    demand: miss.demand,
    limit: miss.limit,
    unit: miss.unit,
    remedy: miss.remedy,
  };
}

/** Passes that one try in few shops may run, and one in all of them [-]. */
const TRY_WORK = 0.4e6;
const CONFIRM_WORK = 3e6;
/** Steps past the one found in few shops that are tried in all of them [-]. */
const STEPS_PAST = 3;

/** The least step of an easing that frees the job, found by halving over the steps; none if the last does not. */
function bindingOf(easing: Easing, input: SearchInput, quick: SearchInput): Binding[] {
  const frees = (index: number, shops: SearchInput): boolean => {
    const job = easing.apply(input.job, easing.steps[index]!);
    // One try may not use up what the others need; a change that is not seen to free the job is not told.
    const most = shops === quick ? Math.min(quick.work.left, TRY_WORK) : CONFIRM_WORK;
    const work = { left: most };
    const free = search({ ...shops, job, work, firstOnly: true }).feasible.length > 0;
    quick.work.left -= most - work.left;
    return free;
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
  for (let index = most; index <= Math.min(last, most + STEPS_PAST); index += 1) {
    if (!frees(index, input)) continue;
    const value = easing.steps[index]!;
    return [
      {
        constraint: easing.constraint,
        demand: value,
        limit: easing.now,
        unit: easing.unit,
        remedy: easing.tell(value),
      },
    ];
  }
  return [];
}

const MM = 1e-3;
const ZERO_C = 273.15;
const PER_MIN = 1e-3 / 60;

function both(value: number, kind: QuantityKind): string {
  return `${formatAmount(value, kind, 'metric')} (${formatAmount(value, kind, 'inch')})`;
}

/** Even steps up from a value. */
function up(from: number, step: number, count: number): number[] {
  return Array.from({ length: count }, (_, index) => told(from + step * (index + 1)));
}

/** Twenty even steps down from a value to nothing. */
function down(from: number): number[] {
  return Array.from({ length: 20 }, (_, index) => told((from * (19 - index)) / 20));
}

/** A value without the last digits, which only come from the units. */
function told(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

const LOCK_NAMES: Readonly<Record<keyof Job['locks'], string>> = {
  electrode_diameter: 'electrode',
  current: 'current',
  travel: 'travel',
  tracks: 'number of tracks',
  track_spacing: 'track spacing',
  layers: 'number of layers',
};

/** Constraints that turn a set-up away before its travel is solved. */
const BEFORE_SOLVING: ReadonlySet<string> = new Set([
  'electrode_current',
  'locks.current',
  'root_radius',
  'source_current_least',
  'source_current_most',
  'width_least',
  'width_most',
]);

/** Ways to give way that can matter after these constraints were missed, those of the kit and the plan first, then those of the drawing. */
function easingsOf(job: Job, missed: ReadonlySet<string>): Easing[] {
  const { groove, kit, plan, locks } = job;
  // Where every set-up was turned away before its travel was solved, no change of what follows can matter.
  const solved = [...missed].some((constraint) => !BEFORE_SOLVING.has(constraint));
  const chances = [
    'depth_reached',
    'not_too_deep',
    'ligament_kept',
    'ridge_height',
    'width_least',
    'width_most',
  ].some((each) => missed.has(each));
  const easings: Easing[] = [];
  const lengthMm = (
    constraint: string,
    now: number,
    steps: number[],
    apply: Easing['apply'],
    tell: (metres: number) => string,
  ): void => {
    easings.push({
      constraint,
      unit: 'mm',
      now: told(now * 1000),
      steps,
      apply,
      tell: (value) => tell(value * MM),
    });
  };
  const locked = Object.keys(locks) as (keyof Job['locks'])[];
  for (const key of locked) {
    easings.push({
      constraint: `locks.${key}`,
      unit: 'locks',
      now: locked.length,
      steps: [locked.length - 1],
      apply: (each) => {
        const { [key]: _unlocked, ...rest } = each.locks;
        return { ...each, locks: rest };
      },
      tell: () => `unlocking the ${LOCK_NAMES[key]}`,
    });
  }
  if (locked.length > 1) {
    easings.push({
      constraint: 'locks',
      unit: 'locks',
      now: locked.length,
      steps: [0],
      apply: (each) => ({ ...each, locks: {} }),
      tell: () => 'unlocking all locked values',
    });
  }
  if (solved && plan.gauge_stops === 'never') {
    easings.push({
      constraint: 'gauge_stops',
      unit: 'stops',
      now: 0,
      steps: [1],
      apply: (each) => ({ ...each, plan: { ...each.plan, gauge_stops: 'allowed' } }),
      tell: () => 'allowing gauge stops between layers',
    });
  }
  const behind = job.heat.back_face_most;
  easings.push({
    constraint: 'back_face',
    unit: 'degC',
    now: told((behind ?? 0) - ZERO_C),
    steps: missed.has('back_face') && behind !== undefined ? up(behind - ZERO_C, 25, 24) : [],
    apply: (each, value) => ({ ...each, heat: { ...each.heat, back_face_most: value + ZERO_C } }),
    tell: (value) => `a back face that stands ${both(value + ZERO_C, 'temperature')}`,
  });
  easings.push({
    constraint: 'layers_most',
    unit: 'layers',
    now: plan.layers_most,
    steps: solved ? up(plan.layers_most, 1, 8 - plan.layers_most) : [],
    apply: (each, value) => ({ ...each, plan: { ...each.plan, layers_most: value } }),
    tell: (value) => `allowing ${value} layers`,
  });
  for (const [inches, name] of [
    [5 / 16, '5/16 in'],
    [3 / 8, '3/8 in'],
    [1 / 2, '1/2 in'],
    [5 / 8, '5/8 in'],
    [3 / 4, '3/4 in'],
  ] as const) {
    const diameter = inches * 0.0254;
    const template = kit.electrodes[0]!;
    if (kit.electrodes.some((electrode) => Math.abs(electrode.diameter - diameter) < 0.4e-3)) continue;
    const { current_least: _least, current_most: _most, ...plain } = template;
    easings.push({
      constraint: 'electrode_diameter',
      unit: 'mm',
      now: told(Math.max(...kit.electrodes.map((each) => each.diameter)) * 1000),
      steps: [told(diameter * 1000)],
      apply: (each) => ({
        ...each,
        kit: { ...each.kit, electrodes: [...each.kit.electrodes, { ...plain, diameter, count: 1000 }] },
      }),
      tell: () => `an electrode of ${name}`,
    });
  }
  const stock = Math.max(...kit.electrodes.map((electrode) => electrode.count));
  easings.push({
    constraint: 'electrode_stock',
    unit: 'electrodes',
    now: stock,
    steps: missed.has('electrode_stock')
      ? [1.25, 1.5, 2, 3, 5, 10, 30, 100].map((factor) => Math.ceil(Math.max(1, stock) * factor))
      : [],
    apply: (each, value) => ({
      ...each,
      kit: {
        ...each.kit,
        electrodes: each.kit.electrodes.map((electrode) => ({
          ...electrode,
          count: Math.max(electrode.count, value),
        })),
      },
    }),
    tell: (value) => `${value} electrodes of one size in stock`,
  });
  const ranges = kit.electrodes.flatMap((electrode) => currentRangeOf(electrode) ?? []);
  const mostUsable = Math.max(kit.current.most, ...ranges.map((range) => range.most));
  const leastUsable = Math.min(kit.current.least, ...ranges.map((range) => range.least));
  easings.push({
    constraint: 'source_current_most',
    unit: 'A',
    now: kit.current.most,
    steps: up(kit.current.most, 50, Math.max(0, Math.ceil((mostUsable - kit.current.most) / 50))),
    apply: (each, value) => ({
      ...each,
      kit: { ...each.kit, current: { ...each.kit.current, most: value } },
    }),
    tell: (value) => `power sources that give ${value} A`,
  });
  easings.push({
    constraint: 'source_current_least',
    unit: 'A',
    now: kit.current.least,
    steps:
      leastUsable < kit.current.least
        ? [0.8, 0.6, 0.4, 0.2].map((factor) => Math.round(kit.current.least * factor))
        : [],
    apply: (each, value) => ({
      ...each,
      kit: { ...each.kit, current: { ...each.kit.current, least: value } },
    }),
    tell: (value) => `a power source that goes down to ${value} A`,
  });
  easings.push({
    constraint: 'travel_most',
    unit: 'mm/min',
    now: told(kit.travel.most / PER_MIN),
    steps: solved ? up(kit.travel.most / PER_MIN, 100, 40) : [],
    apply: (each, value) => ({
      ...each,
      kit: { ...each.kit, travel: { ...each.kit.travel, most: value * PER_MIN } },
    }),
    tell: (value) => `a carriage that travels at ${both(value * PER_MIN, 'speed')}`,
  });
  easings.push({
    constraint: 'travel_least',
    unit: 'mm/min',
    now: told(kit.travel.least / PER_MIN),
    steps: solved
      ? [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2].map((factor) => told((kit.travel.least * factor) / PER_MIN))
      : [],
    apply: (each, value) => ({
      ...each,
      kit: { ...each.kit, travel: { ...each.kit.travel, least: value * PER_MIN } },
    }),
    tell: (value) => `a carriage that travels as slowly as ${both(value * PER_MIN, 'speed')}`,
  });
  lengthMm(
    'depth_plus',
    groove.depth.plus,
    chances ? up(groove.depth.plus * 1000, 0.5, 60) : [],
    (each, value) => grooveWith(each, { depth: { ...each.groove.depth, plus: value * MM } }),
    (metres) => `a depth that may be exceeded by ${both(metres, 'length')}`,
  );
  lengthMm(
    'depth_minus',
    groove.depth.minus,
    up(
      groove.depth.minus * 1000,
      0.5,
      chances ? Math.floor((groove.depth.wanted - groove.depth.minus) * 2000 * 0.6) : 0,
    ),
    (each, value) => grooveWith(each, { depth: { ...each.groove.depth, minus: value * MM } }),
    (metres) => `a depth that may fall short by ${both(metres, 'length')}`,
  );
  easings.push({
    constraint: 'assurance',
    unit: '%',
    now: told(groove.assurance * 100),
    steps: [99, 98, 95, 92.5, 90, 87.5, 85, 80, 75, 70].filter(
      (value) => chances && value < groove.assurance * 100 - 1e-9,
    ),
    apply: (each, value) => grooveWith(each, { assurance: value / 100 }),
    tell: (value) => `an assurance of ${value} %`,
  });
  lengthMm(
    'ligament_least',
    groove.ligament_least,
    chances ? down(groove.ligament_least * 1000) : [],
    (each, value) => grooveWith(each, { ligament_least: value * MM }),
    (metres) => `a least ligament of ${both(metres, 'length')}`,
  );
  lengthMm(
    'width_most',
    groove.width.most,
    up(groove.width.most * 1000, 1, 40),
    (each, value) => grooveWith(each, { width: { ...each.groove.width, most: value * MM } }),
    (metres) => `a groove up to ${both(metres, 'length')} wide`,
  );
  lengthMm(
    'width_least',
    groove.width.least,
    down(groove.width.least * 1000).slice(0, -1),
    (each, value) => grooveWith(each, { width: { ...each.groove.width, least: value * MM } }),
    (metres) => `a groove from ${both(metres, 'length')} wide on`,
  );
  lengthMm(
    'root_radius',
    groove.root_radius_least,
    missed.has('root_radius') ? down(groove.root_radius_least * 1000) : [],
    (each, value) => grooveWith(each, { root_radius_least: value * MM }),
    (metres) => `a least root radius of ${both(metres, 'length')}`,
  );
  return easings;
}

function grooveWith(job: Job, change: Partial<Job['groove']>): Job {
  return { ...job, groove: { ...job.groove, ...change } };
}
