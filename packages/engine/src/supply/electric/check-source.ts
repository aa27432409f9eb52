import type { Issue } from '../../issue/index.ts';
import type { Characteristic, PowerSource } from './power-source.ts';
import { outsideRange } from './supply-issue.ts';

/** Everything that keeps a power source from being reckoned with. */
export function sourceIssues(source: PowerSource, path: string): readonly Issue[] {
  const name = `The source "${source.name}"`;
  return [
    ...characteristicIssues(source.characteristic, name, `${path}.characteristic`),
    ...ratingIssues(source, name, `${path}.rating`),
    ...optional(
      source.current_most,
      { least: 0, most: 10_000, unit: 'A', above: true },
      `${name}: its greatest current`,
      `${path}.current_most`,
    ),
    ...optional(
      source.efficiency,
      { least: 0.1, most: 1, unit: '' },
      `${name}: its efficiency`,
      `${path}.efficiency`,
    ),
    ...optional(
      source.power_factor,
      { least: 0.1, most: 1, unit: '' },
      `${name}: its power factor`,
      `${path}.power_factor`,
    ),
    ...optional(
      source.mains?.voltage,
      { least: 50, most: 1500, unit: 'V' },
      `${name}: its mains`,
      `${path}.mains.voltage`,
    ),
  ];
}

function optional(
  value: number | undefined,
  range: Parameters<typeof outsideRange>[1],
  what: string,
  path: string,
): readonly Issue[] {
  return value === undefined ? [] : outsideRange(value, range, what, path);
}

function characteristicIssues(characteristic: Characteristic, name: string, path: string): readonly Issue[] {
  if (characteristic.kind !== 'points') {
    const { kind, no_load_voltage, slope } = characteristic;
    return [
      ...outsideRange(
        no_load_voltage,
        { least: 0, most: 200, unit: 'V', above: true },
        `${name}: its no-load voltage`,
        `${path}.no_load_voltage`,
      ),
      // Every source falls a little, and without a fall nothing says how two of them share.
      ...outsideRange(
        slope,
        { least: 1e-5, most: 10, unit: 'V/A' },
        `${name}: the fall of its ${kind} line`,
        `${path}.slope`,
      ),
    ];
  }
  const { points } = characteristic;
  const shown = points.map((point) => `${point.current} A at ${point.voltage} V`).join(', ');
  const wrong = (message: string): readonly Issue[] => [
    {
      code: 'ELECTRIC_CURVE',
      message: `${name}: ${message}`,
      path: `${path}.points`,
      read: shown === '' ? 'no points' : shown,
      accepted: 'two or more points from no load on, the current rising or equal, the voltage falling',
    },
  ];
  if (points.length < 2)
    return wrong('its characteristic needs at least two points, the first without load.');
  if (
    points.some(({ current, voltage }) => !(current >= 0 && current <= 1e5 && voltage >= 0 && voltage <= 200))
  )
    return wrong('its characteristic has a point outside 0 to 100000 A and 0 to 200 V.');
  if (points[0]!.current !== 0) return wrong('its first point must be without load, at 0 A.');
  for (const [i, point] of points.slice(1).entries()) {
    const before = points[i]!;
    const where = `at ${point.current} A, ${point.voltage} V`;
    if (point.current < before.current) return wrong(`its points are not in the order of current ${where}.`);
    if (point.voltage >= before.voltage)
      return wrong(
        `its voltage does not fall ${where}; a source that does not fall has no settled working point.`,
      );
  }
  return points.at(-1)!.current > 0 ? [] : wrong('it gives no current at any of its points.');
}

function ratingIssues(source: PowerSource, name: string, path: string): readonly Issue[] {
  if (source.rating.length === 0) {
    const message = `${name} has no rating point; read current and duty off its plate, such as 1000 A at 60 %.`;
    return [
      {
        code: 'ELECTRIC_VALUE',
        message,
        path,
        read: 'nothing',
        accepted: 'one or more points of current and duty',
      },
    ];
  }
  const each = source.rating.flatMap((point, i) => [
    ...outsideRange(
      point.current,
      { least: 0, most: 10_000, unit: 'A', above: true },
      `${name}: the current of rating point ${i + 1}`,
      `${path}[${i}].current`,
    ),
    ...outsideRange(
      point.duty,
      { least: 0, most: 1, unit: '', above: true },
      `${name}: the duty of rating point ${i + 1}`,
      `${path}[${i}].duty`,
    ),
    ...optional(
      point.voltage,
      { least: 0, most: 200, unit: 'V', above: true },
      `${name}: the voltage of rating point ${i + 1}`,
      `${path}[${i}].voltage`,
    ),
  ]);
  if (each.length > 0) return each;
  const sorted = source.rating.toSorted((a, b) => a.current - b.current);
  const odd = sorted.findIndex(
    (point, i) => i > 0 && (point.current === sorted[i - 1]!.current || point.duty > sorted[i - 1]!.duty),
  );
  if (odd < 0) return [];
  const [low, high] = [sorted[odd - 1]!, sorted[odd]!];
  const shown = `${low.current} A at ${low.duty * 100} %, ${high.current} A at ${high.duty * 100} %`;
  const message = `${name}: its rating points contradict each other: ${shown}. More current cannot go with more duty.`;
  return [
    {
      code: 'ELECTRIC_VALUE',
      message,
      path,
      read: shown,
      accepted: 'each current once, more current never with more duty',
    },
  ];
}
