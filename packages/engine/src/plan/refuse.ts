import type { Job } from '../job/index.ts';
import { formatAmount, type QuantityKind } from '../quantity/index.ts';
import type { Miss } from './miss.ts';
import type { Binding, Refusal } from './result.ts';
import { search } from './search.ts';
import type { SearchInput } from './weigh.ts';

/** One way to give way: the job with a little of it changed, and how that is told. */
interface Easing {
  readonly constraint: string;
  readonly unit: string;
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
 * where none does, what was missed most closely.
 */
export function refuse(input: SearchInput, misses: readonly Miss[]): Refusal {
  const binding = easingsOf(input.job).flatMap((easing) => bindingOf(easing, input));
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

/** The least step of an easing that frees the job, found by halving over the steps; none if the last does not. */
function bindingOf(easing: Easing, input: SearchInput): Binding[] {
  const frees = (index: number): boolean => {
    const job = easing.apply(input.job, easing.steps[index]!);
    return search({ ...input, job, firstOnly: true }).feasible.length > 0;
  };
  let most = easing.steps.length - 1;
  if (most < 0 || !frees(most)) return [];
  let least = 0;
  while (least < most) {
    const middle = Math.floor((least + most) / 2);
    if (frees(middle)) most = middle;
    else least = middle + 1;
  }
  const value = easing.steps[most]!;
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

const MM = 1e-3;
const PER_MIN = 1e-3 / 60;

function both(value: number, kind: QuantityKind): string {
  return `${formatAmount(value, kind, 'metric')} (${formatAmount(value, kind, 'inch')})`;
}

/** Even steps up from a value. */
function up(from: number, step: number, count: number): number[] {
  return Array.from({ length: count }, (_, index) => from + step * (index + 1));
}

/** Ways to give way, those of the kit and the plan first, then those of the drawing. */
function easingsOf(job: Job): Easing[] {
  const { groove, kit, plan, locks } = job;
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
      now: now * 1000,
      steps,
      apply,
      tell: (value) => tell(value * MM),
    });
  };
  if (Object.keys(locks).length > 0) {
    easings.push({
      constraint: 'locks',
      unit: 'locks',
      now: Object.keys(locks).length,
      steps: [0],
      apply: (each) => ({ ...each, locks: {} }),
      tell: () => 'unlocking the locked values',
    });
  }
  if (plan.gauge_stops === 'never') {
    easings.push({
      constraint: 'gauge_stops',
      unit: 'stops',
      now: 0,
      steps: [1],
      apply: (each) => ({ ...each, plan: { ...each.plan, gauge_stops: 'allowed' } }),
      tell: () => 'allowing gauge stops between layers',
    });
  }
  easings.push({
    constraint: 'layers_most',
    unit: 'layers',
    now: plan.layers_most,
    steps: up(plan.layers_most, 1, 8 - plan.layers_most),
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
    if (
      kit.electrodes.some(
        (electrode) => electrode.count > 0 && Math.abs(electrode.diameter - diameter) < 0.4e-3,
      )
    )
      continue;
    const { current_least: _least, current_most: _most, ...plain } = template;
    easings.push({
      constraint: 'electrode_diameter',
      unit: 'mm',
      now: Math.max(...kit.electrodes.map((each) => each.diameter)) * 1000,
      steps: [diameter * 1000],
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
    steps: [1.25, 1.5, 2, 3, 5, 10, 30].map((factor) => Math.ceil(Math.max(1, stock) * factor)),
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
  easings.push({
    constraint: 'source_current_most',
    unit: 'A',
    now: kit.current.most,
    steps: up(kit.current.most, 50, 32),
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
    steps: [0.8, 0.6, 0.4, 0.2].map((factor) => Math.round(kit.current.least * factor)),
    apply: (each, value) => ({
      ...each,
      kit: { ...each.kit, current: { ...each.kit.current, least: value } },
    }),
    tell: (value) => `a power source that goes down to ${value} A`,
  });
  easings.push({
    constraint: 'travel_most',
    unit: 'mm/min',
    now: kit.travel.most / PER_MIN,
    steps: up(kit.travel.most / PER_MIN, 100, 40),
    apply: (each, value) => ({
      ...each,
      kit: { ...each.kit, travel: { ...each.kit.travel, most: value * PER_MIN } },
    }),
    tell: (value) => `a carriage that travels at ${both(value * PER_MIN, 'speed')}`,
  });
  easings.push({
    constraint: 'travel_least',
    unit: 'mm/min',
    now: kit.travel.least / PER_MIN,
    steps: [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2].map((factor) => (kit.travel.least * factor) / PER_MIN),
    apply: (each, value) => ({
      ...each,
      kit: { ...each.kit, travel: { ...each.kit.travel, least: value * PER_MIN } },
    }),
    tell: (value) => `a carriage that travels as slowly as ${both(value * PER_MIN, 'speed')}`,
  });
  lengthMm(
    'depth_plus',
    groove.depth.plus,
    up(groove.depth.plus * 1000, 0.5, 60),
    (each, value) => grooveWith(each, { depth: { ...each.groove.depth, plus: value * MM } }),
    (metres) => `a depth that may be exceeded by ${both(metres, 'length')}`,
  );
  lengthMm(
    'depth_minus',
    groove.depth.minus,
    up(
      groove.depth.minus * 1000,
      0.5,
      Math.max(0, Math.floor((groove.depth.wanted - groove.depth.minus) * 2000 * 0.6)),
    ),
    (each, value) => grooveWith(each, { depth: { ...each.groove.depth, minus: value * MM } }),
    (metres) => `a depth that may fall short by ${both(metres, 'length')}`,
  );
  easings.push({
    constraint: 'assurance',
    unit: '%',
    now: groove.assurance * 100,
    steps: [99, 98, 95, 92.5, 90, 87.5, 85, 80, 75, 70].filter(
      (value) => value < groove.assurance * 100 - 1e-9,
    ),
    apply: (each, value) => grooveWith(each, { assurance: value / 100 }),
    tell: (value) => `an assurance of ${value} %`,
  });
  lengthMm(
    'ligament_least',
    groove.ligament_least,
    Array.from({ length: 20 }, (_, index) => groove.ligament_least * 1000 * (1 - (index + 1) / 20)),
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
    Array.from({ length: 19 }, (_, index) => groove.width.least * 1000 * (1 - (index + 1) / 20)),
    (each, value) => grooveWith(each, { width: { ...each.groove.width, least: value * MM } }),
    (metres) => `a groove from ${both(metres, 'length')} wide on`,
  );
  lengthMm(
    'root_radius',
    groove.root_radius_least,
    Array.from({ length: 20 }, (_, index) => groove.root_radius_least * 1000 * (1 - (index + 1) / 20)),
    (each, value) => grooveWith(each, { root_radius_least: value * MM }),
    (metres) => `a least root radius of ${both(metres, 'length')}`,
  );
  return easings;
}

function grooveWith(job: Job, change: Partial<Job['groove']>): Job {
  return { ...job, groove: { ...job.groove, ...change } };
}
