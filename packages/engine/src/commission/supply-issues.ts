import type { Issue } from '../issue/index.ts';
import type { CommissionSupply } from './commission-supply.ts';

type Bound = 'above 0' | '0 or more';

function figure(path: string, value: number, bound: Bound): Issue[] {
  const fits = Number.isFinite(value) && (bound === 'above 0' ? value > 0 : value >= 0);
  if (fits) return [];
  const message = `Commissioning needs a number ${bound} here, but ${value} stands at ${path}.`;
  return [{ code: 'COMMISSION_INPUT', message, path, read: String(value), accepted: `a number ${bound}` }];
}

function repeated(path: string, names: readonly string[]): Issue[] {
  return names
    .filter((name, index) => names.indexOf(name) !== index)
    .map((name) => ({
      code: 'COMMISSION_INPUT',
      message: `"${name}" stands twice under ${path}: each needs a name of its own.`,
      path,
      read: name,
    }));
}

/** What in the supply's results cannot be worked with. */
export function supplyIssues(supply: CommissionSupply): Issue[] {
  const { sources, items, airRuns, airPoints } = supply;
  return [
    ...figure('setCurrent', supply.setCurrent, 'above 0'),
    ...repeated(
      'sources',
      sources.map(({ name }) => name),
    ),
    ...repeated(
      'items',
      items.map(({ id }) => id),
    ),
    ...repeated(
      'airPoints',
      airPoints.map(({ name }) => name),
    ),
    ...sources.flatMap(({ name, noLoadVoltage }) =>
      figure(`sources.${name}.noLoadVoltage`, noLoadVoltage, 'above 0'),
    ),
    ...items.flatMap(({ id, resistance, current, length, parallels, resistanceMost }) => [
      ...figure(`items.${id}.resistance`, resistance, '0 or more'),
      ...figure(`items.${id}.current`, current, '0 or more'),
      ...figure(`items.${id}.length`, length ?? 1, 'above 0'),
      ...figure(`items.${id}.parallels`, parallels ?? 1, 'above 0'),
      ...figure(`items.${id}.resistanceMost`, resistanceMost ?? 1, 'above 0'),
    ]),
    ...airRuns.flatMap(({ name, bore, length }) => [
      ...figure(`airRuns.${name}.bore`, bore, 'above 0'),
      ...figure(`airRuns.${name}.length`, length, 'above 0'),
    ]),
    ...airPoints.flatMap(({ name, staticPressure, flowingPressure }) => [
      ...figure(`airPoints.${name}.staticPressure`, staticPressure.least, '0 or more'),
      ...figure(`airPoints.${name}.staticPressure`, staticPressure.most, '0 or more'),
      ...figure(`airPoints.${name}.flowingPressure`, flowingPressure.least, '0 or more'),
      ...figure(`airPoints.${name}.flowingPressure`, flowingPressure.most, '0 or more'),
    ]),
  ];
}
