import { readFileSync } from 'node:fs';
import { cardRequestSchema } from '@furrow/contract';
import type { Answer } from '@furrow/engine';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { fetchCard } from '../../api/index.ts';
import { kitInUse, openBench } from '../../job/state/index.ts';
import { FakeWorker, MemoryStorage } from '../../testing/index.ts';
import type { PlanRequest } from '../../work/index.ts';
import { cardRequest } from './card-request.ts';

const EXAMPLES = new URL('../../../../../examples/', import.meta.url);
const TEXT = readFileSync(new URL('defect-pocket.yaml', EXAMPLES), 'utf8');
const KIT = readFileSync(new URL('yard-kit.yaml', EXAMPLES), 'utf8');

const IN_USE = kitInUse(KIT, { of: 'shop', revision: 1 });

function open(kit = kitInUse('', { of: 'shop', revision: 0 })) {
  const worker = new FakeWorker<PlanRequest, Answer>();
  const bench = openBench({ text: TEXT, kit }, { startWorker: () => worker, memory: new MemoryStorage() });
  return { bench, requests: worker.requests };
}

afterEach(() => vi.unstubAllGlobals());

describe('cardRequest', () => {
  it('posts the job and the kit that the bench plans with', async () => {
    const server = vi.fn(async (_path: string, _sent: RequestInit) => new Response('%PDF-'));
    vi.stubGlobal('fetch', server);
    const { bench, requests } = open(IN_USE);
    await fetchCard(cardRequest(bench, 'inch'));
    const posted = cardRequestSchema.parse(JSON.parse(String(server.mock.calls[0]?.[1].body)));
    expect(posted).toEqual({ text: TEXT, kit: KIT, units: 'inch', paper: 'letter' });
    expect(requests.at(-1)?.kit).toBe(typeof IN_USE === 'string' ? undefined : IN_USE.read);
  });

  it('follows a change of the kit, and names none where the bench has none', () => {
    const { bench } = open();
    expect(cardRequest(bench, 'metric')).toEqual({ text: TEXT, units: 'metric', paper: 'a4' });
    bench.setKit(IN_USE);
    expect(cardRequest(bench, 'metric').kit).toBe(KIT);
    bench.setTrials({ trials: 'furrow_trials: 1', moreSince: false });
    expect(cardRequest(bench, 'metric').knowledge).toBe('furrow_trials: 1');
    bench.useHistory(false);
    expect(cardRequest(bench, 'metric').knowledge).toBeUndefined();
  });
});
