import { formatAmount, type Plan } from '@furrow/engine';

/** What each part of the doubt about the depth comes from, as people say it. */
export const DOUBT_PARTS: readonly {
  readonly part: keyof Plan['doubt'];
  readonly title: string;
  readonly says: string;
}[] = [
  { part: 'family', title: 'this shop', says: 'what is not known of this kind of work here' },
  { part: 'job', title: 'this job', says: 'batch, plate, day, height setting' },
  { part: 'pass', title: 'each pass', says: 'what no reading before it tells' },
  { part: 'seam', title: 'along the seam', says: 'its least and greatest over the length' },
  { part: 'gauge', title: 'the gauge', says: 'what a reading may be off' },
];

const WORTH: Readonly<Record<Plan['worth_measuring'][number]['what'], string>> = {
  trial: 'a trial, where one could be cut',
  trial_known: 'a trial of an earlier job on record',
  station: 'one more station to gauge',
  finer_gauge: 'a gauge twice as fine',
  longer_trial: 'a trial twice as long',
};

/** Share of the doubt from which on a part is named in a line [-]. */
const NAMED_LEAST = 0.05;

/** What one way of measuring more is, and what it saves; what saves nothing says so. */
export function worthWords(
  { what, saves_cost: cost, saves_time_s: time }: Plan['worth_measuring'][number],
  currency: string,
): { readonly what: string; readonly saves: string } {
  const money =
    Math.abs(cost) < 0.005 ? '' : `${cost > 0 ? 'saves' : 'costs'} ${Math.abs(cost).toFixed(2)} ${currency}`;
  const minutes =
    Math.abs(time) < 0.5
      ? ''
      : `${time > 0 ? 'saves' : 'takes'} ${formatAmount(Math.abs(time), 'time', 'metric')}`;
  const told = [money, minutes].filter((words) => words !== '');
  return { what: WORTH[what], saves: told.length === 0 ? 'changes nothing' : told.join(', ') };
}

/** What the doubt about the depth is made of, and what measuring more would be worth most, in a line. */
export function doubtWords({ doubt, worth_measuring: worth, currency }: Plan): string {
  const parts = DOUBT_PARTS.filter(({ part }) => doubt[part] >= NAMED_LEAST)
    .sort((a, b) => doubt[b.part] - doubt[a.part])
    .map(({ part, title }) => `${title} ${(100 * doubt[part]).toFixed(0)} %`);
  const [best] = [...worth].sort((a, b) => b.saves_cost - a.saves_cost || b.saves_time_s - a.saves_time_s);
  const told = best === undefined ? undefined : worthWords(best, currency);
  const line = `Doubt about the depth: ${parts.join(', ')}.`;
  if (best === undefined || told === undefined || (best.saves_cost <= 0 && best.saves_time_s <= 0))
    return line;
  return `${line} Measuring more is worth most by ${told.what}: it ${told.saves} on the mean.`;
}
