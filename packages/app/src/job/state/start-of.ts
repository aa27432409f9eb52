import { fetchExamples, fetchJob } from '../../api/index.ts';
import { draftOf } from '../../sheet/keep/index.ts';
import { ownMemory } from '../../ui/session/index.ts';
import type { BenchStart } from './bench.ts';
import { fetchHistory } from './bench-history.ts';
import { fetchKitInUse } from './bench-kit.ts';
import { fetchStanding } from './bench-runs.ts';
import { demoDraft } from './demo-story.ts';

/** What the bench starts with, or why it cannot start, in words. */
export async function startOf(id: string | undefined, name: string): Promise<BenchStart | string> {
  const start = await jobOf(id, name);
  if (typeof start === 'string') return start;
  const demo = start.demo === true;
  const [kit, history, runs] = await Promise.all([
    fetchKitInUse(demo),
    fetchHistory(demo, start.saved?.saved_at),
    fetchStanding(start.saved?.id),
  ]);
  return { ...start, runs, kit: kit ?? 'none', ...(history !== undefined && { history }) };
}

async function jobOf(id: string | undefined, name: string): Promise<BenchStart | string> {
  if (id !== undefined) {
    const reply = await fetchJob(id);
    if (!reply.ok) return reply.failure.message;
    return { text: reply.value.text, saved: reply.value, draft: draftOf(ownMemory(), id) };
  }
  const draftName = demoDraft(name);
  const draft = draftOf(ownMemory(), draftName);
  const reply = await fetchExamples();
  const found = reply.ok ? reply.value.find((example) => example.name === name) : undefined;
  if (found !== undefined) {
    const demo = draft === undefined || draft.demo === true;
    return { text: found.text, draft, draftName, demo };
  }
  if (draft !== undefined) return { text: draft.text, draftName };
  return reply.ok ? 'There is no such demo job here.' : reply.failure.message;
}
