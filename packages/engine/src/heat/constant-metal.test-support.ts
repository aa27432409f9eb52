import type { ThermalProperties } from './thermal-tables.ts';

/** A metal of one conductivity and one heat per volume, from -200 to 4800 degC. */
export function constantMetal(conductivity = 40, heat = 4e6): ThermalProperties {
  return {
    start: 73.15,
    step: 5000,
    enthalpy: Float64Array.of(0, 5000 * heat),
    conductivity: Float64Array.of(conductivity, conductivity),
  };
}

/** A round floor: a circle's bottom of a radius, cut to a depth [m]. */
export function roundFloor(radius: number, depth: number): { offset: number; depth: number }[] {
  const half = Math.sqrt(Math.max(0, radius ** 2 - Math.max(0, radius - depth) ** 2));
  return Array.from({ length: 33 }, (_, at) => {
    const offset = (half * (at - 16)) / 16;
    return { offset, depth: Math.max(0, depth - radius + Math.sqrt(radius ** 2 - offset ** 2)) };
  });
}

/** Runs a generator to its end; returns what it yielded and its result. */
export function runOut<T>(run: Generator<number, T>): {
  readonly yielded: readonly number[];
  readonly value: T;
} {
  const yielded: number[] = [];
  for (;;) {
    const turn = run.next();
    if (turn.done === true) return { yielded, value: turn.value };
    yielded.push(turn.value);
  }
}
