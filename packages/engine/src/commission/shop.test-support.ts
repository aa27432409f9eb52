import { type Job, readJob } from '../job/index.ts';
import type { CommissionCheck, MeasureCheck } from './check.ts';
import { commissionChecks } from './commission-checks.ts';
import type { CommissionOptions, PlannedPass, PlannedPasses } from './commission-input.ts';
import type { CommissionItem, CommissionSupply, PressureSpan } from './commission-supply.ts';

/** An invented job with a seam of this length. */
export function testJob(length = '2 m'): Job {
  const outcome = readJob(
    JSON.stringify({
      furrow: 1,
      title: 'Commissioning test',
      seam: { length },
      plate: { thickness: '40 mm' },
      groove: {
        depth: { wanted: '8 mm', plus: '4 mm', minus: '0 mm' },
        width: { least: '10 mm', most: '22 mm' },
      },
      kit: {
        electrodes: [{ diameter: '1/2 in', count: 60 }],
        current: { least: '200 A', most: '1200 A' },
        travel: { least: '6 in/min', most: '100 in/min' },
        loss_window: '0.4 s',
        gauge: { reading_sd: '0.4 mm' },
      },
      rates: {},
    }),
  );
  if (!outcome.ok)
    throw new Error(outcome.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return outcome.value.job;
}

/** One pass at 1000 A and 45 V, changed field by field. */
export function testPass(change: Partial<PlannedPass> = {}): PlannedPass {
  return {
    number: 1,
    current: 1000,
    voltage: 45,
    pushAngle: Math.PI / 4,
    travel: 0.01,
    setByGauge: false,
    dwell: 0.6,
    ...change,
  };
}

function item(
  change: Partial<CommissionItem> & Pick<CommissionItem, 'id' | 'side' | 'from' | 'to'>,
): CommissionItem {
  return { kind: 'lead', name: change.id, resistance: 0, current: 1000, ...change };
}

/** Half of the loop of the worked case `cond-terminal-voltage`: 7.1515 mohm of leads, 1 V of joints at 1000 A. */
const LEAD = { resistance: 0.007151495999999999 / 2, size: '95 mm2', parallels: 2, length: 30 };
const JOINT = { kind: 'joint', resistance: 0.0005 } as const;

/** A pressure that does not depend on the receiver's. */
export function at(pressure: number): PressureSpan {
  return { least: pressure, most: pressure };
}

/** An invented loop and air path, changed field by field. */
export function testSupply(change: Partial<CommissionSupply> = {}): CommissionSupply {
  return {
    polarity: 'electrode_positive',
    setCurrent: 1000,
    holderPoint: 'holder',
    platePoint: 'plate',
    sources: [{ name: 'Source A', noLoadVoltage: 80, electrodePoint: 'A plus', workPoint: 'A minus' }],
    items: [
      item({ id: 'electrode_lead', side: 'electrode', from: 'A plus', to: 'station', ...LEAD }),
      item({ id: 'station_joint', side: 'electrode', from: 'station', to: 'holder', ...JOINT }),
      item({ id: 'clamp', side: 'work', from: 'lug', to: 'plate', ...JOINT }),
      item({ id: 'work_lead', side: 'work', from: 'A minus', to: 'lug', ...LEAD }),
    ],
    airRuns: [{ name: 'Hose 1', from: 'air drop', to: 'torch', bore: 0.019, length: 15 }],
    airPoints: [
      { name: 'the regulator', staticPressure: at(620e3), flowingPressure: at(600e3), atTorch: false },
      { name: 'the torch', staticPressure: at(620e3), flowingPressure: at(550e3), atTorch: true },
    ],
    ...change,
  };
}

/** The checks; a refusal is a fault of the test. */
export function testChecks(
  plan: PlannedPasses = { passes: [testPass()] },
  supply: CommissionSupply = testSupply(),
  options: CommissionOptions = {},
  job: Job = testJob(),
): readonly CommissionCheck[] {
  const outcome = commissionChecks(plan, job, supply, options);
  if (!outcome.ok) throw new Error(outcome.issues.map(({ message }) => message).join('\n'));
  return outcome.value;
}

/** The measured check of this identifier. */
export function measured(checks: readonly CommissionCheck[], id: string): MeasureCheck {
  const check = checks.find((one) => one.id === id);
  if (check?.kind !== 'measure')
    throw new Error(`no measured check ${id}: ${checks.map((one) => one.id).join(', ')}`);
  return check;
}
