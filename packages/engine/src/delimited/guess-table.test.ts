import { describe, expect, it } from 'vitest';
import { guessDialect } from './guess-dialect.ts';
import { guessTable } from './table-reading.ts';

function guessed(text: string) {
  const outcome = guessTable(new Uint8Array(Buffer.from(text)));
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  return outcome.value;
}

const what = (text: string) =>
  guessed(text).columns.map(({ quantity, unit, holds }) => [
    quantity,
    holds === 'moment' ? 'moment' : unit?.name,
  ]);

describe('the dialect of a text', () => {
  it.each([
    ['a;b;c\n1,5;2,5;3,5\n1,6;2,6;3,6\n', ';', ''],
    ["'a','b','c'\n'x, y','2','3'\n'z','4','5'\n", ',', "'"],
    ['  t    U    I\n 0.0  41.2  512\n 0.1  41.3  513\n', ' ', ''],
    ['Logger: X 12\nDate: 2024-01-01 12:00:00\n\nt,U,I\n0,41,512\n1,42,513\n', ',', ''],
    ['Logger: X 12\nStart;2024-01-01 12:00:00\n\nt\tU\tI\n0\t41\t512\n1\t42\t513\n', '\t', ''],
    ['2024-01-01 12:00:00;41,2;512,1\n2024-01-01 12:00:01;41,3;513,2\n', ';', ''],
    ['12:00:00 41.2 512\n12:00:01 41.3 513\n12:00:02 41.3 514\n', ' ', ''],
    ['a^b^c\n1^2^3\n4^5^6\n7^8^9\n', '^', ''],
    ['name|text\nx|hello, world\ny|a, b, c\n', '|', ''],
    ['john smith:x:1000:/home/j s\nroot:x:0:/root\nbin:x:1:/bin\n', ':', ''],
    ["it's,fine,here\nthat's,ok,too\n", ',', ''],
    ['x;y\n"a;b";"c\nd"\n"e";"f"\n', ';', '"'],
    ['date\n2015-06-05\n', '', ''],
    ['Profession\nFinance\nInformation Technology\nPolicy\n', '', ''],
  ])('of %j', (text, delimiter, quote) => {
    expect(guessDialect(text).dialect).toMatchObject({ delimiter, quote });
  });

  it('writes a quote inside a cell twice or behind a backslash', () => {
    expect(guessDialect('id,t\n1,"say ""a"", b"\n2,"c"\n').dialect.insideQuote).toBe('doubled');
    expect(guessDialect('id,t\n1,"say \\"a\\", b"\n2,"c"\n').dialect.insideQuote).toBe('backslash');
  });

  it('tells its evidence, and is not sure where another delimiter comes near', () => {
    expect(guessDialect('a,b\n1,2\n3,4\n')).toMatchObject({
      says: '3 of 3 rows have 2 cells with a comma between them',
      sure: true,
    });
    expect(guessDialect('1,2;3,4\n5,6;7,8\n').sure).toBe(false);
  });
});

describe('the columns of a table', () => {
  it('are told by names and units of the trade in several languages', () => {
    expect(
      what(
        'Zeit (ms);Spannung;Strom [kA];Fahrgeschwindigkeit cm/min;Luftdruck [MPa]\n;V;;;\n0;41;0,85;71;0,6\n100;42;0,85;70;0,6\n',
      ),
    ).toEqual([
      ['time', 'ms'],
      ['voltage', 'V'],
      ['current', 'kA'],
      ['travel', 'cm/min'],
      ['air_pressure', 'MPa'],
    ]);
    expect(what('temps (s),courant (A),tension (V),débit (l/min)\n0,850,41,600\n1,850,41,601\n')).toEqual([
      ['time', 's'],
      ['current', 'A'],
      ['voltage', 'V'],
      ['air_flow', 'L/min'],
    ]);
    expect(
      what('t,I/A,Arc voltage (0.1 V),pos_mm,Wire feed speed [in/min]\n0,850,412,0,12\n1,850,411,9,12\n'),
    ).toEqual([
      ['time', 's'],
      ['current', 'A'],
      ['voltage', '0.1 V'],
      ['position', 'mm'],
      ['feed', 'in/min'],
    ]);
    expect(what('station,depth mm,W [in],r (mm),x,z µm\n1,12,0.7,6,1,2\n2,12,0.7,6,1,2\n')).toEqual([
      ['station', undefined],
      ['depth', 'mm'],
      ['width', 'in'],
      ['radius', 'mm'],
      ['x', undefined],
      ['z', 'um'],
    ]);
  });

  it('take a unit that is not stated only where it can only be one, and ask elsewhere', () => {
    const { columns } = guessed(
      'time,voltage,current,pressure,speed\n0,41,850,88,70\n1,42,851,88,70\n2,42,850,88,70\n',
    );
    expect(columns.map(({ unit }) => unit?.name)).toEqual(['s', 'V', 'A', 'psi', undefined]);
    expect(columns.map(({ asks }) => asks)).toEqual([true, false, false, false, true]);
    expect(columns[1]!.says).toContain('unit not stated, V taken');
    // 412 is no arc voltage in V
    expect(guessed('t [s],U\n0,412\n1,415\n').columns[1]).toMatchObject({ unit: undefined, asks: true });
  });

  it('are each the only one of their quantity, the measured one before the set one', () => {
    const { columns } = guessed('t [s],U set [V],U arc [V],U [V]\n0,40,41,1\n1,40,42,1\n');
    expect(columns.map(({ quantity }) => quantity)).toEqual(['time', undefined, 'voltage', undefined]);
    expect(columns[1]!.says).toContain('not used');
  });

  it('say so where name and unit disagree', () => {
    expect(guessed('t [s],Voltage [A]\n0,41\n1,42\n').columns[1]).toMatchObject({ quantity: undefined });
  });

  it('find moments of many kinds', () => {
    expect(what('Datum;Uhrzeit;U [V]\n01.12.2026;08:00:00,1;41\n01.12.2026;08:00:00,2;42\n')).toEqual([
      ['date', 'moment'],
      ['time', 'moment'],
      ['voltage', 'V'],
    ]);
    for (const moment of [
      '2026-11-27T10:00:0#.100Z',
      '27/11/2026 10:00:0#',
      '11/27/2026 10:00:0# AM',
      '27-Nov-2026 10:00:0#',
      '20261127T10000#',
      '2026-11-27 10:00:0#,5+01:00',
      '10:00:0#.5',
    ]) {
      const text = `stamp\tU [V]\n${[1, 2, 3].map((n) => `${moment.replace('#', String(n))}\t41`).join('\n')}\n`;
      expect([moment, what(text)[0]]).toEqual([moment, ['time', 'moment']]);
    }
    expect(guessed('t,U [V]\n1796000000,41\n1796000001,42\n').columns[0]!.says).toContain('since 1970 in s');
    expect(guessed('t,U [V]\n1796000000000,41\n1796000000100,42\n').columns[0]!.unit!.name).toBe('ms');
  });
});

describe('the numbers of a file', () => {
  it.each([
    ['t;U\n0,01;41,25\n0,02;41,3\n', ',', ''],
    ['t;U\n1.234,5;41,2\n1.235,5;41,3\n', ',', '.'],
    ['t;U\n1,234.5;41.2\n1,235.5;41.3\n', '.', ','],
    ['t;U\n24,123;512,004\n24,124;512,005\n', ',', ''],
    ["t;U\n1'234.5;41.2\n1'235.5;41.3\n", '.', "'"],
    ['t;U\n1 234,5;41,2\n1 235,5;41,3\n', ',', ' '],
    ['t,U\n1,41\n2,42\n', '.', ''],
  ])('of %j', (text, decimal, thousands) => {
    expect(guessed(text).marks).toEqual({ decimal, thousands });
  });

  it('are not sure where three digits behind the mark could be thousands', () => {
    const sure = (text: string) => guessed(text).choices.find(({ about }) => about === 'decimal')!.sure;
    expect(sure('t;U\n24,123;512,004\n24,124;512,005\n')).toBe(false);
    expect(sure('t;U\n0,123;512,004\n0,124;512,005\n')).toBe(true);
  });
});

describe('the place of the table', () => {
  const place = (text: string) => {
    const { preambleLines, headerLines, comment } = guessed(text);
    return [preambleLines, headerLines, comment];
  };
  it.each([
    ['t,U\n0,1\n1,2\n', [0, 1, '']],
    ['0,1\n1,2\n2,3\n', [0, 0, '']],
    ['# a\n# b\nt,U\ns,V\n0,1\n1,2\n', [2, 2, '#']],
    ['Log 12\nOperator,A\n\n\nt,U\n\n0,1\n1,2\n', [4, 2, '']],
    ['# t U\n0 1\n1 2\n', [0, 1, '#']],
    ['s,V\nt,U\n0,1\n1,2\n', [0, 2, '']],
    ['t,U\n-----\n0,1\n1,2\n', [0, 2, '']],
  ])('in %j', (text, expected) => {
    expect(place(text)).toEqual(expected);
  });
});
