/**
 * How good and how quick the planner is: 17 ordinary shop jobs planned by a shop without history, ten seeds of each of a
 * few, and replanning after an edit.
 */
import {
  afterCostOf,
  metalOf,
  type PlanOutcome,
  planJob,
  processLimits,
  publishedBelief,
  readJob,
} from '@furrow/engine';
import { SHOP_JOBS } from './shop-jobs.ts';
import { machineLine, timed, unrestNote } from './timing.ts';

function plan(document: object, seed = 1): PlanOutcome | string {
  const read = readJob(JSON.stringify({ ...document, plan: { seed } }));
  if (!read.ok) throw new Error(read.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  const { job } = read.value;
  const belief = publishedBelief(metalOf(job.plate.material, job.plate.composition), job.seam.position);
  const result = planJob(job, belief, {
    limits: [processLimits(belief.meltingEnergy)],
    afterCost: afterCostOf(job),
  });
  return 'plan' in result ? result.plan : result.refusal.summary;
}

console.log(machineLine());
console.log('\nOrdinary jobs of a shop without history: ways, tracks x layers, stations, minutes (mean)');
let simple = 0;
for (const { name, document } of SHOP_JOBS) {
  const start = process.cpuUsage();
  const told = plan(document);
  const { user, system } = process.cpuUsage(start);
  const cpu = `${((user + system) / 1000).toFixed(0)} ms CPU`;
  if (typeof told === 'string') {
    console.log(`${name.padEnd(38)} refused: ${told} (${cpu})`);
    continue;
  }
  const isSimple = told.layers <= 2;
  if (isSimple) simple += 1;
  const gauged = [told.tryout?.stations.length ?? 0, ...told.stops.map((stop) => stop.stations.length)];
  console.log(
    [
      name.padEnd(38),
      told.ways.join('+').padEnd(14),
      `${(told.electrode.diameter / 0.0254).toFixed(4)} in`,
      `${told.pattern.tracks} x ${told.layers}`,
      `gauged ${gauged.join('/')}`,
      `${(told.jobTime.mean / 60).toFixed(1)} min`,
      `${told.wholeCost.mean.toFixed(0)} ${told.currency}`,
      isSimple ? '' : '(more than two layers)',
      cpu,
    ].join('  '),
  );
}
console.log(`${simple} of ${SHOP_JOBS.length} in one pass or at most two layers`);

console.log('\nTen seeds: greatest over least of the objective, less one');
for (const { name, document } of SHOP_JOBS.slice(0, 6)) {
  const merits = Array.from({ length: 10 }, (_, seed) => plan(document, seed + 1)).flatMap((told) =>
    typeof told === 'string' ? [] : [told.wholeCost.mean],
  );
  const spread = Math.max(...merits) / Math.min(...merits) - 1;
  console.log(`${name.padEnd(38)} ${merits.length} planned, ${(100 * spread).toFixed(2)} %`);
}

console.log(
  '\nReplanning after an edit, against the first plan of a process: seconds of one run over another',
);
for (const { name, document } of SHOP_JOBS.slice(0, 4)) {
  const replanned = timed(9, () => plan(document));
  const { median } = replanned;
  const greatest = Math.max(...Array.from({ length: 20 }, () => timed(1, () => plan(document)).median));
  console.log(
    `${name.padEnd(38)} median ${(median * 1000).toFixed(0)} ms, slowest of 20 ${(greatest / median).toFixed(2)} times that${unrestNote(replanned)}`,
  );
}
