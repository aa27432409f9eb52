import { describe, expect, it } from 'vitest';
import { type GivenReading, readLogger, writeLogger, zoneOf, zoneWord } from '../delimited/index.ts';
import { type LogBatch, LogReader } from './index.ts';

function readLog(text: string, given: GivenReading = {}, piece = 1 << 20) {
  const bytes = new Uint8Array(Buffer.from(text));
  const reader = new LogReader(given);
  const batches: LogBatch[] = [];
  for (let at = 0; at < bytes.length; at += piece)
    batches.push(...reader.push(bytes.subarray(at, at + piece)));
  const outcome = reader.end();
  if (!outcome.ok) return { message: outcome.issues[0]!.message, time: [], rows: [], volts: [], batches };
  batches.push(...outcome.value.batches);
  return {
    message: '',
    batches,
    end: outcome.value.end,
    time: batches.flatMap(({ time_s }) => [...time_s].map((t) => Number(t.toFixed(6)))),
    rows: batches.flatMap(({ row }) => [...row]),
    volts: batches.flatMap(({ channels }) => [...(channels.voltage_V ?? [])]),
  };
}

const log = (header: string, stamps: readonly (string | number)[]): string =>
  `${header},voltage_V,current_A\n${stamps.map((stamp, index) => `${stamp},${40 + index},850`).join('\n')}\n`;

const steps = (from: number, by: number, count: number): number[] =>
  Array.from({ length: count }, (_, index) => from + index * by);

describe('the clock of a log', () => {
  it('is elapsed from the first row in any unit', () => {
    for (const [header, scale] of [
      ['t [ms]', 1000],
      ['t [s]', 1],
      ['t [min]', 1 / 60],
      ['t [h]', 1 / 3600],
      ['t [us]', 1e6],
    ] as const) {
      const { time } = readLog(
        log(
          header,
          steps(5, 0.1, 4).map((t) => t * scale),
        ),
      );
      expect(time).toEqual([0, 0.1, 0.2, 0.3]);
    }
  });

  it.each([
    ['16 bits', 65_300, 2 ** 16],
    ['32 bits', 2 ** 32 - 250, 2 ** 32],
    ['15 bits with a sign', 2 ** 15 - 250, 2 ** 16],
    ['31 bits with a sign', 2 ** 31 - 250, 2 ** 32],
  ])('goes on where a counter of %s wraps', (name, from, cycle) => {
    const signed = name.includes('sign');
    const counts = steps(from, 100, 8).map((count) =>
      signed ? ((count + cycle / 2) % cycle) - cycle / 2 : count % cycle,
    );
    const { time, end } = readLog(log('time_ms', counts));
    expect(time).toEqual(steps(0, 0.1, 8).map((t) => Number(t.toFixed(6))));
    expect(end!.clock.notes).toEqual([{ kind: 'wrap', row: 4, by_s: cycle / 1000 }]);
  });

  it('passes midnight, with a gap as well', () => {
    const { time, end } = readLog(log('time', ['23:59:59.5', '23:59:59.9', '00:00:00.3', '00:00:00.7']));
    expect(time).toEqual([0, 0.4, 0.8, 1.2]);
    expect(end!.clock).toMatchObject({
      kind: 'time_of_day',
      notes: [{ kind: 'midnight', row: 3, by_s: 86_400 }],
    });
    const gap = readLog(log('time', ['23:59:58.0', '23:59:58.5', '23:59:59.0', '00:10:00.0', '00:10:00.5']));
    expect(gap.time).toEqual([0, 0.5, 1, 602, 602.5]);
  });

  it('is joined from date and time in two columns, in any language of the header', () => {
    const text =
      'Datum;Uhrzeit;U [V]\n31.12.2026;23:59:59,5;41\n01.01.2027;00:00:00,0;42\n01.01.2027;00:00:00,5;42\n';
    const { time, end } = readLog(text);
    expect(time).toEqual([0, 0.5, 1]);
    expect(end!.clock).toMatchObject({ kind: 'date_and_time', noteCount: 0 });
  });

  it('is read from moments with and without a zone, and from seconds since 1970', () => {
    expect(readLog(log('stamp', ['2026-11-27T10:00:00.100+01:00', '2026-11-27T09:00:00.600Z'])).time).toEqual(
      [0, 0.5],
    );
    expect(readLog(log('stamp', ['27/11/2026 10:00:00', '27/11/2026 10:00:02'])).time).toEqual([0, 2]);
    expect(readLog(log('epoch', [1_796_000_000_000, 1_796_000_000_250])).time).toEqual([0, 0.25]);
  });

  it('goes on where it was set back, by the usual step', () => {
    const { time, end, rows } = readLog(
      log('time_s', [0, 1, 2, 3, 0.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.5, 7.5, 8.5, 9.5, 10.5, 11.5, 12.5, 13.5]),
    );
    expect(time.slice(0, 6)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(rows).toEqual(steps(1, 1, 18));
    expect(end!.clock.notes).toEqual([{ kind: 'set_back', row: 5, by_s: 3.5 }]);
  });

  it('goes on where it fell back by an hour', () => {
    const stamps = [...steps(3600, 1, 10), ...steps(10, 1, 30)].map((s) => {
      const [h, m, second] = [Math.floor(s / 3600) + 2, Math.floor(s / 60) % 60, s % 60];
      return `2026-10-25 0${h}:${String(m).padStart(2, '0')}:${String(second).padStart(2, '0')}`;
    });
    const { time, end } = readLog(log('time', stamps));
    expect(time).toEqual(steps(0, 1, 40));
    expect(end!.clock.notes).toEqual([{ kind: 'set_back', row: 11, by_s: 3600 }]);
  });

  it.each([
    ['put back', '2026-10-25', 10_798, 7200, 3600, 'stands twice'],
    ['put on', '2026-03-29', 7198, 10_800, -3600, 'is missing'],
  ])('goes on where daylight saving %s the clock', (_, date, before, after, by, words) => {
    const seconds = [...steps(before, 0.5, 4), ...steps(after, 0.5, 30)];
    const stamp = (s: number): string => new Date(1000 * s).toISOString().slice(11, 23);
    for (const day of [`${date} `, '']) {
      const { time, rows, end } = readLog(
        log(
          'time',
          seconds.map((s) => day + stamp(s)),
        ),
      );
      expect(time).toEqual(steps(0, 0.5, 34));
      expect(rows).toEqual(steps(1, 1, 34));
      expect(end!.clock.notes).toEqual([{ kind: 'daylight_saving', row: 5, by_s: by }]);
      expect(end!.remarks.join()).toContain(words);
    }
    // a clock with its zone knows of no such thing: an hour is an hour
    const zoned = readLog(
      log(
        'time',
        seconds.map((s) => `${date}T${stamp(s)}Z`),
      ),
    );
    expect(zoned.end!.clock.notes.map(({ kind }) => kind)).not.toContain('daylight_saving');
  });

  it('takes an hour of silence that ends at no full hour for one', () => {
    const seconds = [...steps(7190, 0.5, 4), ...steps(10_792.5, 0.5, 30)];
    const { time, end } = readLog(
      log(
        'time',
        seconds.map((s) => `2026-03-29 ${new Date(1000 * s).toISOString().slice(11, 23)}`),
      ),
    );
    expect(time[4]! - time[3]!).toBeCloseTo(3601, 6);
    expect(end!.clock.notes).toEqual([]);
  });

  it('puts swapped rows in order and a stray stamp between its neighbours', () => {
    const swapped = readLog(log('time_ms', [0, 100, 300, 200, 400, 500]));
    expect(swapped.time).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5]);
    expect(swapped.rows).toEqual([1, 2, 4, 3, 5, 6]);
    expect(swapped.volts).toEqual([40, 41, 43, 42, 44, 45]);
    const stray = readLog(log('time_ms', [0, 100, 999_999, 300, 400]));
    expect(stray.time).toEqual([0, 0.1, 0.2, 0.3, 0.4]);
    expect(stray.rows).toEqual([1, 2, 3, 4, 5]);
  });

  it('keeps a row that stands twice and says so', () => {
    const { end, rows } = readLog('time_s,voltage_V\n0,41\n1,42\n1,42\n2,43\n3,43\n4,43\n');
    expect(rows).toHaveLength(6);
    expect(end!.clock.notes).toEqual([{ kind: 'duplicate', row: 3, by_s: 0 }]);
  });

  it('spreads rows that share a coarse stamp', () => {
    const stamps = [
      '12:00:00',
      '12:00:00',
      ...['01', '02', '03'].flatMap((s) => Array.from({ length: 4 }, () => `12:00:${s}`)),
    ];
    const { time, end } = readLog(log('time', stamps), {}, 40);
    expect(time).toEqual(steps(0, 0.25, 14));
    expect(end!.clock.sharedBy).toBe(4);
  });

  it('leaves gaps as they are', () => {
    expect(readLog(log('time_s', [0, 0.1, 0.2, 60, 60.1])).time).toEqual([0, 0.1, 0.2, 60, 60.1]);
  });

  it('counts rows whose time cannot be read, with their lines', () => {
    const { end, rows } = readLog(log('time_s', [0, 1, '??', 'x', 4, 5, 6]));
    expect(rows).toEqual([1, 2, 5, 6, 7]);
    expect(end!.rejected).toEqual([
      { line: 4, why: 'the time cannot be read' },
      { line: 5, why: 'the time cannot be read' },
    ]);
    expect(end!.rejectedCount).toBe(2);
  });

  it('is taken from the rate where there is no column for it', () => {
    const text = (line: string) => `${line}\nvoltage_V,current_A\n40,850\n41,851\n42,852\n`;
    expect(readLog(text('Sample rate: 10 Hz')).time).toEqual([0, 0.1, 0.2]);
    expect(readLog(text('Interval 5 ms')).time).toEqual([0, 0.005, 0.01]);
    expect(readLog(text('bay 2'), { clock: { interval: 2 } }).time).toEqual([0, 2, 4]);
    expect(readLog(text('bay 2')).message).toContain('No column is a clock');
  });

  it('counts what a person says that it counts, and the description keeps it', () => {
    const day = log('time', ['23:59:58', '23:59:59', '00:00:00', '00:00:01']);
    expect(readLog(day).time).toEqual([0, 1, 2, 3]);
    expect(readLog(day).end!.clock).toMatchObject({ kind: 'time_of_day', notes: [{ kind: 'midnight' }] });
    const elapsed: GivenReading = { clock: { counts: 'elapsed' } };
    expect(readLog(day, elapsed).end!.clock).toMatchObject({
      kind: 'elapsed',
      notes: [{ kind: 'wrap' }],
    });
    const seconds = log('t [s]', [86_399.8, 86_399.9, 0, 0.1]);
    expect(readLog(seconds, { clock: { counts: 'time_of_day' } }).end!.clock).toMatchObject({
      kind: 'time_of_day',
      notes: [{ kind: 'midnight', by_s: 86_400 }],
    });
    const rows = readLog(day, { clock: { counts: 'rows', interval: 0.5 } });
    expect([rows.time, rows.end!.clock.kind]).toEqual([[0, 0.5, 1, 1.5], 'rows']);
    expect(readLog(day, { clock: { counts: 'rows' } }).message).toContain('how often a row was written');
    for (const given of [elapsed, { clock: { counts: 'rows', interval: 0.5 } } as const]) {
      const description = readLogger(writeLogger(readLog(day, given).end!.reading, ''));
      if (!description.ok) throw new Error(description.issues[0]?.message);
      expect(description.value.given.clock).toEqual(given.clock);
      expect(readLog(day, description.value.given).time).toEqual(readLog(day, given).time);
    }
  });

  it('tells when the log begins, in the zone that stands in it or is given', () => {
    const begins = (stamps: readonly string[], clock: GivenReading['clock'] = {}) =>
      readLog(log('time', stamps), { clock }).end!.clock.begins;
    const plain = ['2026-11-27 23:30:00', '2026-11-27 23:30:01', '2026-11-27 23:30:02'];
    expect(begins(plain)).toBe('2026-11-27T23:30:00.000');
    expect(begins(plain, { zone: 3600 })).toBe('2026-11-27T22:30:00.000Z');
    expect(begins(plain.map((each) => `${each}-05:30`))).toBe('2026-11-28T05:00:00.000Z');
    expect(begins(['05/06/2026 10:00:00', '05/06/2026 10:00:01', '05/06/2026 10:00:02'])).toBe(
      '2026-06-05T10:00:00.000',
    );
    expect(
      begins(['05/06/2026 10:00:00', '05/06/2026 10:00:01', '05/06/2026 10:00:02'], { dateOrder: 'mdy' }),
    ).toBe('2026-05-06T10:00:00.000');
    expect(begins(['1795822200.5', '1795822200.6', '1795822200.7'])).toBe('2026-11-27T23:30:00.500Z');
    expect(begins(['0.1', '0.2', '0.3'])).toBeUndefined();
  });

  it.each([
    ['+01:00', 3600],
    ['-0530', -19_800],
    ['utc', 0],
    ['GMT+2', 7200],
    ['Z', 0],
    ['+15:00', undefined],
    ['noon', undefined],
  ])('reads the zone %s as %s s', (written, seconds) => {
    expect(zoneOf(written)).toBe(seconds);
    if (seconds !== undefined) expect(zoneOf(zoneWord(seconds))).toBe(seconds);
  });
});

describe('a log', () => {
  it('of two in one file is read as one after the other, and this is said', () => {
    const one = log('time_s', steps(0, 1, 30));
    const { time, end } = readLog(one + one);
    expect(time).toEqual(steps(0, 1, 60));
    expect(end!.clock.notes).toEqual([{ kind: 'set_back', row: 31, by_s: 30 }]);
    expect(end!.remarks[0]).toContain('more than one log');
    expect(end!.rejected).toEqual([{ line: 32, why: 'the header again' }]);
  });

  it('without any column of a run is refused by the names that it has', () => {
    expect(readLog('time_s,Temperature [°C]\n0,20\n1,21\n2,22\n').message).toContain('"Temperature [°C]"');
  });

  it('that is a million rows of one stamp is told to stand still', () => {
    const text = `time_s,voltage_V\n${'5,41\n'.repeat(450_000)}`;
    expect(readLog(text, {}, 1 << 18).message).toContain('stands still');
  });

  it('is read the same in pieces of any size', () => {
    const text = log('time_ms', [
      ...steps(65_000, 10, 60).map((t) => t % 65_536),
      ...steps(800, 10, 5),
      820,
      840,
      830,
      850,
      860,
    ]);
    const whole = readLog(text);
    for (const piece of [1, 5, 64]) {
      const { time, rows, end } = readLog(text, {}, piece);
      expect(time).toEqual(whole.time);
      expect(rows).toEqual(whole.rows);
      expect(end!.clock).toEqual(whole.end!.clock);
    }
  });
});

describe('what loggers write', () => {
  const rows = (text: (at: number) => string): string =>
    Array.from({ length: 30 }, (_, at) => text(at)).join('\n');
  const two = (at: number): string => String(at).padStart(2, '0');
  it.each([
    [
      'lines of its own before the header, tabs',
      `Measurement\nSeparator\tTab\n***End***\t\nChannels\t3\t\t\nX_Value\tVoltage\tCurrent\tComment\n${rows((at) => `${at / 10}\t41.5\t850\t`)}`,
    ],
    [
      'a line that names the delimiter',
      `sep=;\nTimestamp;Arc Voltage [V];Arc Current [A]\n${rows((at) => `27/11/2026 10:00:00,${at % 10};41,5;850`)}`,
    ],
    [
      'columns set out with spaces',
      `   Time(s)   Volts    Amps\n${rows((at) => `${(at / 10).toFixed(1).padStart(10)}    41.5     850`)}`,
    ],
    [
      'quoted cells with thousands',
      `"Time","Voltage (V)","Current (mA)"\n${rows((at) => `"2026-11-27 10:00:0${Math.floor(at / 10)}.${at % 10}","41.5","850,000.0"`)}`,
    ],
    ['tenths of a volt behind an underscore', `t_ms,U_0.1V,I_A\n${rows((at) => `${at * 100},415,850`)}`],
    ['an index before the clock', `Index;Time (ms);Volt;Amp\n${rows((at) => `${at};${at * 100};41.5;850`)}`],
    ['several header rows', `Time,Arc,Arc\n,Voltage,Current\ns,V,A\n${rows((at) => `${at / 10},41.5,850`)}`],
    [
      'powers of ten and carriage returns',
      `time_s,voltage_V,current_A\n${rows((at) => `${(at / 10).toExponential(6)},4.15E+01,8.5e2`)}`.replaceAll(
        '\n',
        '\r',
      ),
    ],
    [
      'what was set beside what was measured',
      `Time [s],Set Voltage [V],Actual Voltage [V],Set Current [A],Actual Current [A]\n${rows((at) => `${at / 10},42,41.5,900,850`)}`,
    ],
    [
      'bars at the edges',
      `| time_s | voltage_V | current_A |\n|---|---|---|\n${rows((at) => `| ${at / 10} | 41.5 | 850 |`)}`,
    ],
    [
      'milliseconds behind a colon',
      `Scan,Time,101 <VDC>,102 <A>\n${rows((at) => `${at + 1},27.11.2026 10:00:${two(Math.floor(at / 10))}:${at % 10}00,41.5,850`)}`,
    ],
  ])('with %s', (name, text) => {
    const { batches, message, time, volts } = readLog(`${text}${name.includes('carriage') ? '\r' : '\n'}`);
    expect(message).toBe('');
    expect(volts).toEqual(Array.from({ length: 30 }, () => 41.5));
    expect(batches.flatMap(({ channels }) => [...channels.current_A!])).toEqual(
      Array.from({ length: 30 }, () => 850),
    );
    if (!name.includes('names the delimiter'))
      expect(time).toEqual(steps(0, 0.1, 30).map((t) => Number(t.toFixed(6))));
  });
});

describe('a short log in a large file', () => {
  const rows = Array.from({ length: 300 }, (_, i) => `${i / 10},${38 + (i % 5)},${450 + (i % 7)}`).join('\n');
  const table = `time [s],voltage [V],current [A]\n${rows}\n`;

  it.each([
    ['blank lines behind it', `${table}${'\n'.repeat(600_000)}`, 0],
    ['blank lines of another system', `${table}${'\n'.repeat(300_000)}`.replaceAll('\n', '\r\n'), 0],
    ['lines of spaces', `${table}${'   \n'.repeat(150_000)}`, 0],
    ['remarks behind it', `${table}${'# end\n'.repeat(50_000)}`, 50_000],
    ['words behind it', `${table}${'all is well with this run\n'.repeat(20_000)}`, 20_000],
    ['rows without a value', `${table}${',,\n'.repeat(50_000)}`, 50_000],
    ['nothing but zeros where a logger had room left', `${table}${'\0'.repeat(2_000_000)}`, 1],
  ])('is read whole: %s', (_name, text, rejected) => {
    const { time, end, message } = readLog(text, {}, 65_536);
    expect(message).toBe('');
    expect(time).toHaveLength(300);
    expect(time.at(-1)).toBeCloseTo(29.9, 9);
    expect(end!.rejectedCount).toBe(rejected);
  });

  it('tells how many lines a second log of another shape has', () => {
    const other = `${table}second rig\ntime [s];amps [A];volts [V]\n${'1;450;38\n'.repeat(300)}`;
    const { time, end } = readLog(other);
    expect(time).toHaveLength(300);
    expect(end!.rejectedCount).toBe(302);
    expect(end!.rejected[0]).toMatchObject({ line: 302 });
  });

  it('counts a line without an end, however long, and keeps the rows before it', () => {
    const reader = new LogReader();
    reader.push(new Uint8Array(Buffer.from(table)));
    const piece = new Uint8Array(1 << 20).fill(55);
    for (let k = 0; k < 40; k += 1) reader.push(piece);
    const end = reader.end();
    if (!end.ok) throw new Error(end.issues[0]!.message);
    expect(end.value.end.rowsRead).toBe(300);
    expect(end.value.end.rejected).toEqual([{ line: 302, why: 'longer than 1024 KiB' }]);
  });
});

describe('what is no log', () => {
  it.each([
    ['', 'The file is empty.'],
    ['time [s],voltage [V]\n', 'a header but no row of data'],
    [`time [s],voltage [V]\n${'\n'.repeat(500_000)}`, 'a header but no row of data'],
    ['\n'.repeat(10_000), 'nothing but blank lines'],
    [`voltage [V]\n${'38\n'.repeat(300)}`, 'No column is a clock'],
    ['7'.repeat(600_000), 'The first line does not end within 256 KiB'],
  ])('is refused with what it has, %#', (text, message) => {
    expect(readLog(text).message).toContain(message);
  });
});
