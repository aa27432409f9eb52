import { type Job, readJob } from '../job/index.ts';

/** A plain job whose rates are stated, with more of the file behind it. */
export function costJob(more = ''): Job {
  const read = readJob(`furrow: 1
title: Trial seam
seam: { length: 4 m }
plate: { thickness: 30 mm }
groove:
  depth: { wanted: 10 mm, plus: 4 mm }
  width: { least: 12 mm, most: 20 mm }
kit:
  electrodes:
    - { diameter: 1/2 in, count: 20, price_each: 3 }
  current: { least: 200 A, most: 1000 A }
  travel: { least: 6 in/min, most: 100 in/min }
rates:
  currency: EUR
  labour_per_hour: 60
  power_per_kWh: 0.2
${more}`);
  if (!read.ok) throw new Error(read.issues.map(({ message }) => message).join('\n'));
  return read.value.job;
}
