import {
  type Answer,
  formatAmount,
  fromUnit,
  gaugeCheck,
  type Readings,
  type UnitSystem,
} from '@furrow/engine';

/** Part by which a reading may differ from what the plan sets before it is taken for another plan's [-]. */
const CURRENT_OFF = 0.1;
const TRAVEL_OFF = 0.2;
/** Characters of a revision that are shown. */
const REVISION_SHOWN = 12;

/** What of the readings does not belong to the plan they are held against, in sentences; empty where all does. */
export function otherPlanWords(
  { job_revision: named, passes = [] }: Readings,
  { inputs, plan }: Pick<Answer, 'inputs' | 'plan'>,
  units: UnitSystem,
): string[] {
  const words: string[] = [];
  const { revision } = inputs;
  if (named !== undefined && !revision.startsWith(named.toLowerCase()))
    words.push(
      `The readings name revision ${named.slice(0, REVISION_SHOWN)} of the job; they are held here against revision ${revision.slice(0, REVISION_SHOWN)}.`,
    );
  if (plan === undefined) return words;
  for (const { number, current, travel } of passes) {
    const planned = plan.passes.find((pass) => pass.number === number);
    if (planned === undefined) {
      words.push(`Pass ${number} was run; the plan has no such pass.`);
      continue;
    }
    const off: string[] = [];
    if (current !== undefined && Math.abs(current / planned.current_A - 1) > CURRENT_OFF)
      off.push(
        `${formatAmount(current, 'current', units)} against ${formatAmount(planned.current_A, 'current', units)}`,
      );
    const set = fromUnit(planned.travel_mm_per_min, 'mm/min');
    if (travel !== undefined && !planned.set_by_gauge && Math.abs(travel / set - 1) > TRAVEL_OFF)
      off.push(`${formatAmount(travel, 'speed', units)} against ${formatAmount(set, 'speed', units)}`);
    if (off.length > 0)
      words.push(
        `Pass ${number} was not run as planned here: ${off.join(', ')}. Look whether the readings belong to this plan.`,
      );
  }
  return words;
}

/** What a check of the gauge against a block says, in a sentence. */
export function gaugeCheckWords(
  { block, allowed, block_spread = 0, readings }: NonNullable<Readings['gauge_check']>,
  units: UnitSystem,
): string {
  const { off, u, verdict } = gaugeCheck(
    readings.map(({ reading }) => reading),
    block,
    block_spread,
    allowed,
  );
  const length = (metres: number): string => formatAmount(metres, 'spread', units);
  const end = {
    holds: 'it may be used',
    in_doubt: 'in doubt: take more readings of the block',
    fails: 'it may not be used until it is put right',
  }[verdict];
  return (
    `Gauge against a block of ${formatAmount(block, 'reading', units)}: off by ${length(off)} ± ${length(2 * u)} (95 %), ` +
    `${length(allowed)} is allowed; ${end}.`
  );
}
