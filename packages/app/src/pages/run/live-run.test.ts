import { describe, expect, it } from 'vitest';
import { readingsOf } from './live-run.ts';

describe('the last reading of a line', () => {
  it('is each number by name, the newest of a frame of several', () => {
    expect(
      readingsOf('{"arrived_at":"2026-01-05T06:00:00Z","U":[41,42.5],"I":600,"note":"x","v":null}'),
    ).toEqual({
      U: 42.5,
      I: 600,
    });
  });

  it.each(['oops', '[1]', '{}', '{"note":"made up"}', '{"U":[]}', '7'])('is none in %s', (line) => {
    expect(readingsOf(line)).toBeUndefined();
  });
});
