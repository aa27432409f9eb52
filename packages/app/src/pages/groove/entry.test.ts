import { describe, expect, it } from 'vitest';
import { EMPTY_ENTRY, type Entry, entryIssues, stationOf } from './entry.ts';
import { dayOf, entryName, timeOf } from './entry-name.ts';

const typed = (entry: Partial<Entry>): Entry => ({ ...EMPTY_ENTRY, ...entry });
const told = { by: ' Second hand ', when: '2026-03-04 09:20', recuts: 0, afterPass: undefined };

describe('a reading as it is typed', () => {
  it('goes into the record with the unit beside its box', () => {
    const entry = typed({ at: '3.25', depth: '14,5', width: '17 mm', note: 'burr' });
    expect(stationOf(entry, 'metric', told)).toEqual({
      at: '3.25 m',
      depth: '14,5 mm',
      width: '17 mm',
      by: 'Second hand',
      when: '2026-03-04 09:20',
      note: 'burr',
    });
    expect(entryIssues(entry, 'metric', 6)).toEqual({});
  });

  it('takes inches and their fractions where the switch stands on inch, and says after which recut', () => {
    const entry = typed({ at: '118', depth: '9/16' });
    expect(stationOf(entry, 'metric', { ...told, afterPass: 1 })).toMatchObject({ after_pass: 1 });
    expect(stationOf(entry, 'inch', { ...told, by: '', recuts: 2 })).toEqual({
      at: '118 in',
      depth: '9/16 in',
      after_recut: 2,
      when: '2026-03-04 09:20',
    });
    expect(entryIssues(entry, 'inch', 6)).toEqual({});
  });

  it.each([
    [{ depth: '14' }, 'at', 'From the start is asked for.'],
    [{ at: '3' }, 'depth', 'Depth is asked for.'],
    [{ at: '6.1', depth: '14' }, 'at', 'This place lies beyond the end of the seam.'],
    [{ at: '3', depth: '14 A' }, 'depth', expect.stringContaining('14 A')],
    [{ at: '3', depth: '14', width: '1400' }, 'width', 'Width cannot be that.'],
    [{ at: '3', depth: '14', root_radius: '0' }, 'root_radius', 'Root radius cannot be that.'],
  ] as const)('is not kept as %j', (entry, field, message) => {
    expect(entryIssues(typed(entry), 'metric', 6)[field]).toEqual(message);
  });

  it('is kept where nothing was cut', () => {
    expect(entryIssues(typed({ at: '0', depth: '0' }), 'metric', 6)).toEqual({});
  });
});

describe('names and times', () => {
  const now = new Date(2026, 2, 4, 9, 5);

  it('are the same for a job each time, so that it teaches once', () => {
    expect(entryName('0a1b2c3d-1111-4111-8111-111111111111')).toBe('groove-0a1b2c3d-1111-4111');
    expect(entryName(undefined)).toBe('groove-unsaved');
  });

  it('take the day as written where it is one, else that of the clock', () => {
    expect(dayOf('2026-02-28', now)).toBe('2026-02-28');
    expect(dayOf('yesterday', now)).toBe('2026-03-04');
    expect(timeOf(now)).toBe('2026-03-04 09:05');
  });
});
