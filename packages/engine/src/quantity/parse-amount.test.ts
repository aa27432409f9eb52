import { describe, expect, it } from 'vitest';
import type { Issue, IssueCode } from '../issue/index.ts';
import { parseAmount } from './parse-amount.ts';
import type { QuantityKind } from './quantity-kind.ts';

const INCH = 0.0254;
const DEGREE = Math.PI / 180;

function refusal(text: string, kind: QuantityKind): Issue {
  const outcome = parseAmount(text, kind);
  if (outcome.ok) throw new Error(`"${text}" was read as ${outcome.value}`);
  return outcome.issues[0]!;
}

describe('parseAmount reads amounts as the trade writes them', () => {
  it.each<[string, QuantityKind, number]>([
    ['3/8 in', 'length', 0.009525],
    ['3/8"', 'length', 0.009525],
    ['3/8-in', 'length', 0.009525],
    ['3⁄8″', 'length', 0.009525],
    ['⅜ in', 'length', 0.009525],
    ['0.375"', 'length', 0.009525],
    ['.375 in', 'length', 0.009525],
    ['375 thou', 'length', 0.009525],
    ['1 1/2 in', 'length', 0.0381],
    ['1-1/2 in', 'length', 0.0381],
    ['1½ inches', 'length', 0.0381],
    ["5'", 'length', 60 * INCH],
    ['5\' 6"', 'length', 66 * INCH],
    ["5'6''", 'length', 66 * INCH],
    ['5′-6½″', 'length', 66.5 * INCH],
    ['5 ft. 6 in.', 'length', 66 * INCH],
    ['19 ft 8 1/4 in', 'length', 236.25 * INCH],
    ['6 ft', 'length', 72 * INCH],
    ['9,5 mm', 'length', 0.0095],
    ['9.5mm', 'length', 0.0095],
    ['0,375 in', 'length', 0.009525],
    ['0,500 mm', 'length', 0.0005],
    ['1500,125 mm', 'length', 1.500125],
    ['1.500,5 mm', 'length', 1.5005],
    ['1,500.5 mm', 'length', 1.5005],
    ['1,500,000 mm', 'length', 1500],
    ['1.500.000 mm', 'length', 1500],
    ['1 500 mm', 'length', 1.5],
    ['1\u202f500,5\u00a0mm', 'length', 1.5005],
    ['1.500 mm', 'length', 0.0015],
    ['12 MM', 'length', 0.012],
    ['1.2×10³ mm', 'length', 1.2],
    ['1.2 x 10^-3 m', 'length', 0.0012],
    ['2e-3 m', 'length', 0.002],
    ['2E+21 mm', 'length', 2e18],
    ['-1/2 in', 'length', -0.0127],
    ['−2 mm', 'length', -0.002],
    ['-5\' 6"', 'length', -66 * INCH],
    ['25 µm', 'length', 25e-6],
    ['28 ipm', 'speed', (28 * INCH) / 60],
    ['28 in/min', 'speed', (28 * INCH) / 60],
    ['28 in / min', 'speed', (28 * INCH) / 60],
    ['28 IPM', 'speed', (28 * INCH) / 60],
    ['28 inches per minute', 'speed', (28 * INCH) / 60],
    ['710 mm/min', 'speed', 0.71 / 60],
    ['1.2 m/min', 'speed', 0.02],
    ['12 mm/s', 'speed', 0.012],
    ['90 psi', 'pressure', 90 * 6894.757293168361],
    ['90 PSIG', 'pressure', 90 * 6894.757293168361],
    ['6.2 bar', 'pressure', 620000],
    ['6,2 bar(g)', 'pressure', 620000],
    ['0.62 MPa', 'pressure', 620000],
    ['620 kPa', 'pressure', 620000],
    ['850 A', 'current', 850],
    ['850 Amps', 'current', 850],
    ['1.2 kA', 'current', 1200],
    ['42 V', 'voltage', 42],
    ['42 volts', 'voltage', 42],
    ['30 s', 'time', 30],
    ['2 min', 'time', 120],
    ['1 h', 'time', 3600],
    ['1 h 20 min', 'time', 4800],
    ['1 min 2.5 s', 'time', 62.5],
    ['400 ms', 'time', 0.4],
    ['2 1/2 min', 'time', 150],
    ['45 deg', 'angle', 45 * DEGREE],
    ['45°', 'angle', 45 * DEGREE],
    ['4/0 AWG', 'area', (Math.PI / 4) * (0.46 * INCH) ** 2],
    ['AWG 4/0', 'area', (Math.PI / 4) * (0.46 * INCH) ** 2],
    ['36 AWG', 'area', (Math.PI / 4) * (0.005 * INCH) ** 2],
    ['500 kcmil', 'area', 500 * (Math.PI / 4) * 1e-3 * INCH ** 2],
    ['95 mm2', 'area', 95e-6],
    ['95 mm²', 'area', 95e-6],
    ['20 scfm', 'air_flow', 0.00943894886],
    ['600 L/min', 'air_flow', 0.01],
    ['36 m³/h', 'air_flow', 0.01],
    ['20 degC', 'temperature', 293.15],
    ['68 °F', 'temperature', 293.15],
    ['-40 °C', 'temperature', 233.15],
    ['300 K', 'temperature', 300],
    ['15 kW', 'power', 15000],
    ['20 hp', 'power', 14913.9974316],
    ['95 %', 'share', 0.95],
    ['95%', 'share', 0.95],
    ['99,5 percent', 'share', 0.995],
    ['0.95', 'share', 0.95],
    ['0', 'share', 0],
  ])('%s (%s)', (text, kind, si) => {
    const outcome = parseAmount(text, kind);
    expect(outcome.ok && outcome.value).toSatisfy(
      (value: number) => Math.abs(value - si) <= 1e-9 * Math.abs(si),
    );
  });

  it('gives the double of the decimal itself, not a neighbour', () => {
    expect(parseAmount('3/8 in', 'length')).toEqual({ ok: true, value: 0.009525 });
    expect(parseAmount('9,5 mm', 'length')).toEqual({ ok: true, value: 0.0095 });
    expect(parseAmount('-0 mm', 'length')).toEqual({ ok: true, value: 0 });
  });
});

describe('parseAmount refuses what can be read in two ways, and shows both', () => {
  it.each<[string, QuantityKind, string[]]>([
    ['12', 'length', ['12 mm', '12 in']],
    ['3/8', 'length', ['3/8 in', '3/8 mm']],
    ['28', 'speed', ['28 mm/min', '28 in/min']],
    ['90', 'pressure', ['90 bar', '90 psi']],
    ['850', 'current', ['850 A']],
    ['1,500', 'length', ['1.5 mm', '1500 mm', '1.5 in', '1500 in']],
    ['1,500 mm', 'length', ['1.5 mm', '1500 mm']],
    ['9,500 mm', 'length', ['9.5 mm', '9500 mm']],
    ['-9,500 mm', 'length', ['-9.5 mm', '-9500 mm']],
    ['1,500e3 mm', 'length', ['1500 mm', '1500000 mm']],
    ['95', 'share', ['95 %', '0.95']],
    ['1', 'share', ['1 %', '100 %']],
    ['20 deg', 'temperature', ['20 °C', '20 °F']],
    ['20°', 'temperature', ['20 °C', '20 °F']],
  ])('%s (%s)', (text, kind, readings) => {
    const issue = refusal(text, kind);
    expect(issue.code).toBe('AMOUNT_AMBIGUOUS');
    for (const reading of readings) {
      expect(issue.message).toContain(`"${reading}"`);
      expect(parseAmount(reading, kind).ok || reading.startsWith('0')).toBe(true);
    }
  });
});

describe('parseAmount refuses the rest with the nearest thing that would do', () => {
  it.each<[string, QuantityKind, IssueCode, string | undefined]>([
    ['', 'length', 'AMOUNT_NOT_UNDERSTOOD', undefined],
    ['abc', 'length', 'AMOUNT_NOT_UNDERSTOOD', '9.5 mm'],
    ['5-10 mm', 'length', 'AMOUNT_NOT_UNDERSTOOD', '9.5 mm'],
    ['1/0 in', 'length', 'AMOUNT_NOT_UNDERSTOOD', '9.5 mm'],
    ['1 3/2 in', 'length', 'AMOUNT_NOT_UNDERSTOOD', '9.5 mm'],
    ['1.5.2 mm', 'length', 'AMOUNT_NOT_UNDERSTOOD', '9.5 mm'],
    ['1,50,000 mm', 'length', 'AMOUNT_NOT_UNDERSTOOD', '9.5 mm'],
    ['. mm', 'length', 'AMOUNT_NOT_UNDERSTOOD', '9.5 mm'],
    ['NaN mm', 'length', 'AMOUNT_NOT_UNDERSTOOD', '9.5 mm'],
    ["5' 6", 'length', 'AMOUNT_NOT_UNDERSTOOD', "5' 6 in"],
    ["1'500", 'length', 'AMOUNT_UNIT', undefined],
    ['4/0', 'area', 'AMOUNT_NOT_UNDERSTOOD', '4/0 AWG'],
    ['9 '.repeat(31), 'length', 'AMOUNT_NOT_UNDERSTOOD', '9.5 mm'],
    ['12 mmm', 'length', 'AMOUNT_UNIT', '12 mm'],
    ['28 inm', 'speed', 'AMOUNT_UNIT', '28 ipm'],
    ['0.62 mpa', 'pressure', 'AMOUNT_UNIT', '0.62 MPa'],
    ['42 MV', 'voltage', 'AMOUNT_UNIT', '42 mV'],
    ['12 Mm', 'length', 'AMOUNT_UNIT', '12 mm'],
    ['12 furlongs', 'length', 'AMOUNT_UNIT', undefined],
    ['5 ft 14 in', 'length', 'AMOUNT_UNIT', undefined],
    ['12 psi', 'length', 'AMOUNT_KIND', undefined],
    ['3/8 in', 'speed', 'AMOUNT_KIND', undefined],
    ['104.7 psia', 'pressure', 'AMOUNT_KIND', '90 psi'],
    ['7.2 bar(a)', 'pressure', 'AMOUNT_KIND', '6.187 bar'],
    ['721.3 kPa abs', 'pressure', 'AMOUNT_KIND', '620 kPa'],
    ['0.7 MPa absolute', 'pressure', 'AMOUNT_KIND', '0.5987 MPa'],
    ['20 acfm', 'air_flow', 'AMOUNT_KIND', undefined],
    ['1e999 mm', 'length', 'AMOUNT_RANGE', '9.5 mm'],
    ['-300 °C', 'temperature', 'AMOUNT_RANGE', '-273.15 °C'],
    ['41 AWG', 'area', 'AMOUNT_RANGE', '4/0 AWG'],
    ['120', 'share', 'AMOUNT_RANGE', '95 %'],
    ['-0.2', 'share', 'AMOUNT_RANGE', '95 %'],
  ])('%s (%s) is %s', (text, kind, code, nearest) => {
    const issue = refusal(text, kind);
    expect(issue.code).toBe(code);
    expect(issue.nearest).toBe(nearest);
    expect(issue.accepted).toContain('such as');
    expect(issue.path).toBe('');
    if (nearest !== undefined) expect(parseAmount(nearest, kind).ok).toBe(true);
  });

  it('says what kind was read and what kind is wanted', () => {
    expect(refusal('12 psi', 'length').message).toContain('is a pressure; a length is wanted');
    expect(refusal('104.7 psia', 'pressure').message).toContain('absolute');
  });

  it('echoes no control characters', () => {
    expect(refusal('12 \u001b[31m', 'length').message).not.toMatch(/\p{Cc}/u);
  });
});
