import { readFileSync } from 'node:fs';
import { parseAmount, QUANTITY_KINDS, type QuantityKind } from '@furrow/engine';
import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';

/**
 * GNU units 2.22 (Debian), file gnu-units.csv made by gnu-units.sh: amounts as the trade writes them and their
 * SI values, worked out from that program's own table of units. Beside it the same conversions by js-quantities,
 * a third table made independently of both.
 */
interface Row {
  readonly written: string;
  readonly kind: QuantityKind;
  readonly si: number;
}

const text = readFileSync(new URL('./gnu-units.csv', import.meta.url), 'utf8');
const rows: Row[] = text
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => {
    const [written = '', kind = '', , , si = ''] = line.split('|');
    return { written, kind: kind as QuantityKind, si: Number(si) };
  });

function expectReading(written: string, kind: QuantityKind, si: number, within = 1e-9): void {
  const outcome = parseAmount(written, kind);
  expect(outcome.ok, written).toBe(true);
  if (outcome.ok) expect(Math.abs(outcome.value / si - 1), written).toBeLessThan(within);
}

describe('GNU units', () => {
  it('has a row for every kind of quantity', () => {
    expect(new Set(rows.map((row) => row.kind))).toEqual(new Set(QUANTITY_KINDS));
    expect(rows.length).toBeGreaterThanOrEqual(40);
  });

  it.each(rows)('$written is $si', ({ written, kind, si }) => {
    expectReading(written, kind, si);
  });
});

describe('js-quantities', () => {
  // as the engine reads it, as that library reads it, the SI unit; what that library lacks is not in the list
  it.each<[string, QuantityKind, string, string]>([
    ['0.375 in', 'length', '0.375 in', 'm'],
    ['6 ft', 'length', '6 ft', 'm'],
    ['28 in/min', 'speed', '28 in/min', 'm/s'],
    ['710 mm/min', 'speed', '710 mm/min', 'm/s'],
    ['3 ft/min', 'speed', '3 ft/min', 'm/s'],
    ['6.2 bar', 'pressure', '6.2 bar', 'Pa'],
    ['620 kPa', 'pressure', '620 kPa', 'Pa'],
    ['1.2 kA', 'current', '1.2 kA', 'A'],
    ['15 mV', 'voltage', '15 mV', 'V'],
    ['2 h', 'time', '2 h', 's'],
    ['45 deg', 'angle', '45 deg', 'rad'],
    ['95 mm2', 'area', '95 mm^2', 'm^2'],
    ['0.15 in2', 'area', '0.15 in^2', 'm^2'],
    ['68 degF', 'temperature', '68 tempF', 'tempK'],
    ['20 degC', 'temperature', '20 tempC', 'tempK'],
    ['20 scfm', 'air_flow', '20 ft^3/min', 'm^3/s'],
    ['600 L/min', 'air_flow', '600 l/min', 'm^3/s'],
    ['20 hp', 'power', '20 hp', 'W'],
  ])('%s (%s)', (written, kind, theirs, si) => {
    expectReading(written, kind, Qty(theirs).to(si).scalar);
  });

  it('90 psi (pressure), to the six figures that its table carries', () => {
    expectReading('90 psi', 'pressure', Qty('90 psi').to('Pa').scalar, 1e-6);
  });
});
