import { type ReadKit, readKit } from '@furrow/engine';
import { fetchKit, fetchKitExamples } from '../../api/index.ts';

/** A kit that a job is planned with, read once. */
export interface BenchKit {
  readonly text: string;
  readonly read: ReadKit;
  /** Whose it is: the shop's own, or the demo's, which demo jobs are planned with as long as the shop has none. */
  readonly of: 'shop' | 'demo';
  /** Saved revision of the shop's kit; 0 where it is not saved. */
  readonly revision: number;
  /** When it was saved; undefined where it is not [ISO time]. */
  readonly savedAt?: string | undefined;
}

/** What is planned with: a kit; without one because none is described, or because the one that is has mistakes. */
export type KitInUse = BenchKit | 'none' | 'mistakes';

/** The demo kit that the demo jobs are planned with. */
const DEMO_KIT = 'yard-kit';

/** The kit of a text; a text with mistakes is none to plan with. */
export function kitInUse(text: string, from: Omit<BenchKit, 'text' | 'read'>): KitInUse {
  if (text.trim() === '') return 'none';
  const read = readKit(text);
  return read.ok ? { ...from, text, read: read.value } : 'mistakes';
}

/** The kit to plan a job with: the shop's, else the demo's where the job is a demo job. Undefined where nobody answers. */
export async function fetchKitInUse(demo: boolean): Promise<KitInUse | undefined> {
  const saved = await fetchKit();
  if (!saved.ok) return undefined;
  const { text, revision_number, saved_at } = saved.value;
  const own = kitInUse(text, { of: 'shop', revision: revision_number, savedAt: saved_at ?? undefined });
  if (own !== 'none' || !demo) return own;
  return kitInUse((await fetchDemoKit()) ?? '', { of: 'demo', revision: 0 });
}

/** Text of the demo's kit; undefined where nobody answers. */
async function fetchDemoKit(): Promise<string | undefined> {
  const examples = await fetchKitExamples();
  return examples.ok ? examples.value.find(({ name }) => name === DEMO_KIT)?.text : undefined;
}

/** The kit that is planned with; undefined without one. */
export function usedKit(kit: KitInUse): BenchKit | undefined {
  return typeof kit === 'string' ? undefined : kit;
}
