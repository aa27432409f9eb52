import type { Plan } from '@furrow/engine';

const WAYS: Readonly<Record<Plan['ways'][number], string>> = {
  blind: 'runs as set',
  trial: 'trial first',
  run_in: 'run-in first',
  layers: 'gauge between layers',
};

/** How a plan learns while it is run: `trial first, gauge between layers`. */
export function wayWords({ ways }: Pick<Plan, 'ways'>): string {
  return ways.map((way) => WAYS[way]).join(', ');
}
