import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../job/index.ts';
import { judgeStation } from './judge-station.ts';

const text = readFileSync(new URL('../../../../../examples/penstock-seam.yaml', import.meta.url), 'utf8');
const outcome = readJob(text);
if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
const { job } = outcome.value;

describe('a station against the groove of the job', () => {
  it('holds, is tight or fails by depth', () => {
    expect(judgeStation({ at: 1, depth: 0.015 }, job, 'metric')).toEqual({ verdict: 'holds', words: [] });
    expect(judgeStation({ at: 1, depth: 0.0123 }, job, 'metric')).toEqual({
      verdict: 'tight',
      words: ['depth 12.3 mm is near the least, 12.0 mm'],
    });
    expect(judgeStation({ at: 1, depth: 0.0119 }, job, 'inch')).toEqual({
      verdict: 'fails',
      words: ['depth 0.469 in, at least 0.472 in wanted'],
    });
    expect(judgeStation({ at: 1, depth: 0.0181 }, job, 'metric').words).toEqual([
      'depth 18.1 mm, at most 18.0 mm wanted',
    ]);
  });

  it('holds width, root radius and the plate left against theirs', () => {
    const seen = { at: 1, depth: 0.015, width: 0.0225, root_radius: 0.005 };
    expect(judgeStation(seen, job, 'metric')).toEqual({
      verdict: 'fails',
      words: ['width 22.5 mm, at most 22.0 mm wanted', 'root radius 5.0 mm, at least 6.0 mm wanted'],
    });
    const thin = { ...job, plate: { ...job.plate, thickness: 0.024 } };
    expect(judgeStation({ at: 1, depth: 0.015 }, thin, 'metric').words).toEqual([
      'plate left 9.0 mm, at least 10.0 mm wanted',
    ]);
  });

  it('is tight within the uncertainty that a gauge study gives the reading', () => {
    const verdict = (u: number) => judgeStation({ at: 1, depth: 0.0125 }, job, 'metric', u).verdict;
    expect([verdict(4.9e-4), verdict(5.1e-4)]).toEqual(['holds', 'tight']);
  });

  it('does not judge a place beyond the seam', () => {
    expect(judgeStation({ at: 6.1, depth: 0.015 }, job, 'metric').verdict).toBeNull();
  });

  it('never turns from failing to holding without being tight between', () => {
    const rank = { fails: 0, tight: 1, holds: 2 };
    fc.assert(
      fc.property(fc.double({ min: 0.005, max: 0.0145, noNaN: true }), (depth) => {
        const [one, two] = [depth, depth + 0.0001].map(
          (each) => rank[judgeStation({ at: 1, depth: each }, job, 'metric').verdict ?? 'fails'],
        );
        expect(two! - one!).toBeGreaterThanOrEqual(0);
        expect(two! - one!).toBeLessThanOrEqual(1);
      }),
      { seed: 12, numRuns: 200 },
    );
  });
});
