import { type ReadJob, readJob } from '../job/index.ts';

/** Fields of a job document that a test sets differently, as a file would have them. */
export interface TestJobChange {
  readonly seam?: object;
  readonly plate?: object;
  readonly groove?: object;
  readonly kit?: object;
  readonly rates?: object;
  readonly plan?: object;
  readonly locks?: object;
}

/** A straight U groove with room enough for one blind pass, changed field by field. */
const BASE = {
  furrow: 1,
  title: 'Test groove',
  seam: { length: '2 m' },
  plate: { thickness: '40 mm' },
  groove: {
    depth: { wanted: '8 mm', plus: '14 mm', minus: '0 mm' },
    width: { least: '10 mm', most: '22 mm' },
    ligament_least: '5 mm',
  },
  kit: {
    electrodes: [{ diameter: '1/2 in', count: 60, price_each: 3.4 }],
    current: { least: '200 A', most: '1200 A' },
    travel: { least: '6 in/min', most: '100 in/min' },
  },
  rates: { currency: 'EUR', labour_per_hour: 60, power_per_kWh: 0.2 },
};

/** Reads the test job with its changes; a change that is not a valid job is a fault of the test. */
export function testJob(change: TestJobChange = {}): ReadJob {
  const outcome = readJob(JSON.stringify(testDocument(change)));
  if (!outcome.ok)
    throw new Error(outcome.issues.map((issue) => `${issue.path}: ${issue.message}`).join('\n'));
  return outcome.value;
}

/** The document of the test job with its changes. */
export function testDocument(change: TestJobChange): object {
  return {
    ...BASE,
    seam: { ...BASE.seam, ...change.seam },
    plate: { ...BASE.plate, ...change.plate },
    groove: { ...BASE.groove, ...change.groove },
    kit: { ...BASE.kit, ...change.kit },
    rates: { ...BASE.rates, ...change.rates },
    plan: { ...change.plan },
    locks: { ...change.locks },
  };
}
