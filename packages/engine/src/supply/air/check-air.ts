import type { Issue } from '../../issue/index.ts';
import type { AirComponent, AirItem, AirRun, AirSupply } from './air-supply.ts';

type Report = (issue: Issue) => void;

/**
 * Everything in an air supply that cannot be: sizes of zero, a closed valve, pressures that contradict each other.
 *
 * @param supply - the air supply [record], as typed
 * @returns what is wrong, empty when nothing is [list]
 * @source none: bookkeeping
 * @example
 * checkAir({ atmosphere: 101325, temperature: 293.15, compressor: { delivery: [{ pressure: 8e5, freeAir: 0.02 }] }, receiver: { volume: 0, cutIn: 6e5, cutOut: 8e5 }, path: [], torch: { kind: 'conductance', conductance: 3e-8, criticalRatio: 0.5 } })[0].message // => "The volume of the receiver is 0 m3; a volume above 0 is needed, such as 0.5 m3."
 */
export function checkAir(supply: AirSupply): readonly Issue[] {
  const issues: Issue[] = [];
  const report: Report = (issue) => issues.push(issue);
  const { receiver, atmosphere, temperature, path } = supply;
  positive(
    report,
    'atmosphere',
    'The pressure of the atmosphere',
    atmosphere,
    'Pa',
    '101325 Pa',
    'a pressure',
  );
  if (!(temperature > 230 && temperature < 350)) {
    report({
      code: 'AIR_VALUE',
      path: 'temperature',
      message: `The air is said to be at ${temperature} K; between 230 K and 350 K is accepted, such as 293 K.`,
    });
  }
  positive(
    report,
    'receiver.volume',
    'The volume of the receiver',
    receiver.volume,
    'm3',
    '0.5 m3',
    'a volume',
  );
  positive(report, 'receiver.cutIn', 'The cut-in pressure', receiver.cutIn, 'Pa', '600000 Pa', 'a pressure');
  if (!(receiver.cutOut > receiver.cutIn)) {
    report({
      code: 'AIR_VALUE',
      path: 'receiver.cutOut',
      message: `The compressor stops at ${receiver.cutOut} Pa, not above the ${receiver.cutIn} Pa at which it starts; give the higher pressure as the cut-out.`,
    });
  }
  checkCompressor(supply, report);
  checkTorch(supply, report);
  for (const [i, item] of path.entries()) checkItem(item, `path[${i}]`, report);
  checkNames(path, report);
  return issues;
}

function positive(
  report: Report,
  path: string,
  what: string,
  value: number,
  unit: string,
  such: string,
  kind: string,
): void {
  if (value > 0 && Number.isFinite(value)) return;
  const message = `${what} is ${value} ${unit}; ${kind} above 0 is needed, such as ${such}.`;
  report({
    code: 'AIR_VALUE',
    path,
    message,
    read: String(value),
    accepted: `above 0 ${unit}`,
    nearest: such,
  });
}

function checkCompressor({ compressor, receiver }: AirSupply, report: Report): void {
  const { delivery } = compressor;
  const path = 'compressor.delivery';
  if (delivery.length === 0) {
    report({
      code: 'AIR_VALUE',
      path,
      message:
        'The compressor has no delivery; give the free air it delivers at one pressure at least (its rating plate shows it).',
    });
    return;
  }
  for (const [i, point] of delivery.entries()) {
    const at = `${path}[${i}]`;
    positive(report, at, 'A delivery pressure', point.pressure, 'Pa', '700000 Pa', 'a pressure');
    if (!(point.freeAir >= 0)) {
      const message = `The compressor is said to deliver ${point.freeAir} m3/s; 0 or more is needed.`;
      report({ code: 'AIR_VALUE', path: at, message });
    }
    if (i > 0 && !(point.pressure > delivery[i - 1]!.pressure)) {
      const message = `Delivery is stated at ${point.pressure} Pa after ${delivery[i - 1]!.pressure} Pa; give the points by rising pressure.`;
      report({ code: 'AIR_VALUE', path: at, message });
    }
  }
  const highest = delivery.at(-1)!.pressure;
  if (receiver.cutOut > highest * (1 + 1e-9)) {
    report({
      code: 'AIR_VALUE',
      path: 'receiver.cutOut',
      message: `The pressure switch stops the compressor at ${receiver.cutOut} Pa, but its delivery is known up to ${highest} Pa only; lower the cut-out or give the delivery at that pressure.`,
    });
  }
}

function checkTorch({ torch }: AirSupply, report: Report): void {
  if (torch.kind === 'bore') {
    positive(report, 'torch.bore', 'The bore of the torch', torch.bore, 'm', '0.002 m', 'a bore');
    positive(report, 'torch.holes', 'The number of holes', torch.holes, '-', '2', 'a number');
    const cd = torch.dischargeCoefficient;
    if (cd > 0 && cd <= 1) return;
    const message = `The discharge coefficient of the torch is ${cd}; above 0 and at most 1 is accepted, such as 0.8.`;
    report({ code: 'AIR_VALUE', path: 'torch.dischargeCoefficient', message });
    return;
  }
  checkConductance(torch.conductance, torch.criticalRatio, 'torch', 'The torch', report);
}

function checkConductance(c: number, b: number, path: string, what: string, report: Report): void {
  positive(
    report,
    path,
    `The sonic conductance of ${what}`,
    c,
    'm3/(s Pa)',
    '3e-8 m3/(s Pa)',
    'a conductance',
  );
  if (b >= 0 && b < 1) return;
  const message = `The critical pressure ratio of ${what} is ${b}; from 0 to below 1 is accepted, such as 0.5.`;
  report({ code: 'AIR_VALUE', path, message });
}

function checkItem(item: AirItem, path: string, report: Report): void {
  switch (item.kind) {
    case 'pipe':
    case 'hose':
      checkRun(item, path, report);
      return;
    case 'component':
      checkComponent(item, path, report);
      return;
    case 'regulator':
      positive(report, path, `The set pressure of ${item.id}`, item.set, 'Pa', '620000 Pa', 'a pressure');
      if (!(item.droop >= 0)) {
        const message = `The droop of ${item.id} is ${item.droop} Pa s/m3; 0 or more is needed.`;
        report({ code: 'AIR_VALUE', path, message });
      }
      if (item.wideOpen)
        checkConductance(item.wideOpen.conductance, item.wideOpen.criticalRatio, path, item.id, report);
      return;
    case 'draw':
      if (item.freeAir >= 0 && Number.isFinite(item.freeAir)) return;
      report({
        code: 'AIR_VALUE',
        path,
        message: `${item.id} is said to take ${item.freeAir} m3/s; 0 or more is needed.`,
      });
      return;
    case 'parallel':
      checkParallel(item, path, report);
      return;
  }
}

function checkParallel(item: AirItem & { kind: 'parallel' }, path: string, report: Report): void {
  if (item.branches.length === 0 || item.branches.some((branch) => branch.length === 0)) {
    const message = `${item.id} has a branch with nothing in it; every branch needs a hose, a pipe or a component.`;
    report({ code: 'AIR_VALUE', path, message });
  }
  for (const [i, branch] of item.branches.entries()) {
    for (const [k, each] of branch.entries()) {
      const at = `${path}.branches[${i}][${k}]`;
      // A branch that is shut is a way not taken: only the whole path needs one that is open.
      if (each.kind === 'component')
        checkConductance(each.conductance, each.criticalRatio, at, each.id, report);
      else checkRun(each, at, report);
    }
  }
  if (item.branches.length > 0 && openBranches(item.branches).length === 0) {
    const message = `Every branch of ${item.id} has a closed valve, so no air reaches the torch; open one.`;
    report({ code: 'AIR_CLOSED', path, message });
  }
}

/** Branches without a closed valve in them. */
export function openBranches<T extends AirRun | AirComponent>(
  branches: readonly (readonly T[])[],
): readonly (readonly T[])[] {
  return branches.filter((branch) => branch.every((each) => each.kind !== 'component' || each.open));
}

function checkRun(run: AirRun, path: string, report: Report): void {
  positive(report, path, `The bore of ${run.id}`, run.bore, 'm', '0.0127 m', 'a bore');
  positive(report, path, `The length of ${run.id}`, run.length, 'm', '15 m', 'a length');
  if (!(run.roughness >= 0 && !(run.roughness > 0.1 * run.bore))) {
    const message = `The roughness of ${run.id} is ${run.roughness} m; from 0 to a tenth of its bore is accepted, such as 0.0000015 m for a smooth hose.`;
    report({ code: 'AIR_VALUE', path, message });
  }
  if (run.fittings === 'unknown') return;
  for (const { name, lengthInBores, count } of run.fittings) {
    if (lengthInBores >= 0 && count >= 0 && Number.isFinite(lengthInBores * count)) continue;
    const message = `${name} on ${run.id} has a loss of ${lengthInBores} bores, ${count} times; neither may be below 0.`;
    report({ code: 'AIR_VALUE', path, message });
  }
}

function checkComponent(item: AirComponent, path: string, report: Report): void {
  checkConductance(item.conductance, item.criticalRatio, path, item.id, report);
  if (item.open) return;
  const message = `${item.id} is closed, so no air reaches the torch; open it.`;
  report({ code: 'AIR_CLOSED', path, message });
}

function checkNames(path: readonly AirItem[], report: Report): void {
  const ids = path.flatMap((item) =>
    item.kind === 'parallel' ? [item.id, ...item.branches.flat().map(({ id }) => id)] : [item.id],
  );
  const twice = ids.find((id, i) => ids.indexOf(id) !== i || id === 'torch' || id === 'receiver');
  if (twice === undefined) return;
  const message = `Two things on the way of the air are called ${twice}; give each a name of its own (torch and receiver are taken).`;
  report({ code: 'AIR_VALUE', path: 'path', message });
}
