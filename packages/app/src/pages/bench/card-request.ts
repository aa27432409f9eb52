import type { CardOptions, CardRequest } from '@furrow/contract';
import type { UnitSystem } from '@furrow/engine';
import { type Bench, usedKit } from '../../job/state/index.ts';

/** Paper that a shop has at hand, by the units it works in. */
export function paperFor(units: UnitSystem): CardOptions['paper'] {
  return units === 'inch' ? 'letter' : 'a4';
}

/** What the card of the job as it stands is made from: kit and trials as well, so that it shows the plan of the bench. */
export function cardRequest(bench: Pick<Bench, 'store' | 'knowledge'>, units: UnitSystem): CardRequest {
  const { file, kit } = bench.store.get();
  const used = usedKit(kit);
  const knowledge = bench.knowledge();
  return {
    text: file.text,
    units,
    paper: paperFor(units),
    ...(used !== undefined && { kit: used.text }),
    ...(knowledge !== undefined && { knowledge }),
  };
}
