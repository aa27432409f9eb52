import type { ReadKit } from '@furrow/engine';
import type { Store } from '@furrow/store';
import { wholeGauge } from '../reading/gauge-reading.ts';
import { readWholeKit } from '../reading/kit-reading.ts';
import { wholeTrials } from '../reading/trials-reading.ts';

/** The kit saved here, if there is one; a draft that cannot be planned with is refused. */
export async function shopKit(store: Store): Promise<ReadKit | undefined> {
  const saved = await store.kit.get();
  return saved && readWholeKit(saved.text, 'The kit saved here');
}

/** Text of the trials saved here, if there are any; a draft that cannot be learned from is refused. */
export async function shopTrials(store: Store): Promise<string | undefined> {
  const saved = await store.knowledge.get();
  return saved && wholeTrials(saved.text, 'What is saved here of the shop’s trials');
}

/** Text of the gauge saved here, if there is one; a draft that cannot be used is refused. */
export async function shopGauge(store: Store): Promise<string | undefined> {
  const saved = await store.gauge.get();
  return saved && wholeGauge(saved.text);
}
