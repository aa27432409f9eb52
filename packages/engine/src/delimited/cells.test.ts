import { describe, expect, it } from 'vitest';
import { asciiOf, type DateOrder, type MomentParts, readMoment } from './moment-cell.ts';
import { readNumberCell } from './number-cell.ts';

const moment = (cell: string, parts: MomentParts, order: DateOrder = 'dmy'): number => {
  const bytes = asciiOf(cell);
  return readMoment(bytes, 0, bytes.length, parts, order);
};

describe('a cell with a number', () => {
  it.each([
    ['1.234.567,8', 1_234_567.8],
    ['-1.234', -1234],
    ['0,5', 0.5],
  ])('%s is %d where points group thousands', (cell, value) => {
    expect(readNumberCell(cell, { decimal: ',', thousands: '.' })).toEqual({ kind: 'number', value });
  });

  it.each(['1.23.456', '1.2345', '1234.567', '12.34'])('%s is none: its groups are not of three', (cell) => {
    expect(readNumberCell(cell, { decimal: ',', thousands: '.' })).toEqual({ kind: 'unreadable' });
  });
});

describe('a cell with a moment', () => {
  it.each([
    ['12:15:00 AM', 900],
    ['1:30 PM', 48_600],
    ['12:00:30 p.m.', 43_230],
    ['11:59:59 am', 43_199],
    ['03:25.5', 205.5],
    ['14:07:09,25', 50_829.25],
  ])('%s is %d s of the day', (cell, seconds) => {
    expect(moment(cell, 'time')).toBe(seconds);
  });

  it.each([
    ['31.12.25', 'dmy', '2025-12-31'],
    ['12/31/25', 'mdy', '2025-12-31'],
    ['25-12-31', 'ymd', '2025-12-31'],
    ['29 Feb 2028', 'dmy', '2028-02-29'],
    ['20260301', 'dmy', '2026-03-01'],
  ] as const)('%s in the order %s is %s', (cell, order, day) => {
    expect(moment(cell, 'date', order)).toBe(Date.parse(`${day}T00:00:00Z`) / 1000);
  });

  it.each(['2026-01-02T03:04:05.25+02:00', '2026-01-02T03:04:05.25-0530', '2026-01-02T03:04:05.25Z'])(
    '%s counts its zone',
    (cell) => {
      const zoned = cell.replace(/-0530$/u, '-05:30');
      expect(moment(cell, 'both', 'ymd')).toBeCloseTo(Date.parse(zoned) / 1000, 6);
    },
  );

  it.each(['13:00 PM', '10:61:00', '32.01.2026 10:00', '10:00 CEST'])('%s is none', (cell) => {
    expect(moment(cell, cell.includes('.') ? 'both' : 'time')).toBeNaN();
  });
});
