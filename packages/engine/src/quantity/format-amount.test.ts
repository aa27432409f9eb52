import { describe, expect, it } from 'vitest';
import { type FormatOptions, formatAmount } from './format-amount.ts';
import type { QuantityKind, UnitSystem } from './quantity-kind.ts';

const INCH = 0.0254;

describe('formatAmount', () => {
  it.each<[number, QuantityKind, UnitSystem, string]>([
    [0.009525, 'length', 'inch', '3/8 in'],
    [0.0318, 'length', 'inch', '1 1/4 in'],
    [2 * INCH, 'length', 'inch', '2 in'],
    [-0.009525, 'length', 'inch', '-3/8 in'],
    [INCH / 16, 'length', 'inch', '1/16 in'],
    [0.03 * INCH, 'length', 'inch', '0.030 in'],
    [0, 'length', 'inch', '0.000 in'],
    [119 * INCH, 'length', 'inch', '119 in'],
    [119.99 * INCH, 'length', 'inch', '10 ft'],
    [240 * INCH, 'length', 'inch', '20 ft'],
    [6, 'length', 'inch', '19 ft 8 1/4 in'],
    [0.0095, 'length', 'metric', '9.5 mm'],
    [0.00076, 'length', 'metric', '0.76 mm'],
    [0.032, 'length', 'metric', '32.0 mm'],
    [0.7104, 'length', 'metric', '710 mm'],
    [0.9996, 'length', 'metric', '1.00 m'],
    [6, 'length', 'metric', '6.00 m'],
    [0.71 / 60, 'speed', 'metric', '710 mm/min'],
    [0.71 / 60, 'speed', 'inch', '28 in/min'],
    [0.9 / 60, 'speed', 'inch', '35.4 in/min'],
    [620528, 'pressure', 'inch', '90 psi'],
    [620528, 'pressure', 'metric', '6.2 bar'],
    [850.4, 'current', 'inch', '850 A'],
    [4.26, 'current', 'metric', '4.3 A'],
    [42, 'voltage', 'metric', '42.0 V'],
    [0.35, 'time', 'metric', '0.35 s'],
    [4.04, 'time', 'metric', '4.0 s'],
    [45.2, 'time', 'metric', '45 s'],
    [59.7, 'time', 'metric', '1 min'],
    [750, 'time', 'metric', '12 min 30 s'],
    [4810, 'time', 'inch', '1 h 20 min'],
    [Math.PI / 4, 'angle', 'metric', '45°'],
    [95e-6, 'area', 'metric', '95 mm²'],
    [95e-6, 'area', 'inch', '0.147 in²'],
    [293.15, 'temperature', 'metric', '20 °C'],
    [293.15, 'temperature', 'inch', '68 °F'],
    [272.8, 'temperature', 'metric', '0 °C'],
    [0.01, 'air_flow', 'metric', '600 L/min'],
    [0.01, 'air_flow', 'inch', '21.2 scfm'],
    [35700, 'power', 'inch', '35.7 kW'],
    [0.95, 'share', 'inch', '95 %'],
    [0.975, 'share', 'metric', '97.5 %'],
    [0.9995, 'share', 'metric', '99.95 %'],
    [0.999999, 'share', 'metric', '99.99 %'],
    [1, 'share', 'metric', '100 %'],
  ])('%s %s %s is "%s"', (value, kind, system, text) => {
    expect(formatAmount(value, kind, system)).toBe(text);
  });

  it.each<[number, QuantityKind, FormatOptions, string]>([
    [250 * (Math.PI / 4) * 1e-3 * INCH ** 2, 'area', { unit: 'kcmil' }, '250 kcmil'],
    [0.00042, 'length', { unit: 'thou' }, '16.54 thou'],
    [0.009525, 'length', { unit: 'in' }, '0.375 in'],
  ])('%s %s in a unit asked for is "%s"', (value, kind, options, text) => {
    expect(formatAmount(value, kind, 'inch', options)).toBe(text);
  });

  it('treats a value that is no number as a bug', () => {
    expect(() => formatAmount(Number.NaN, 'length', 'inch')).toThrow(RangeError);
    expect(() => formatAmount(1, 'length', 'inch', { unit: 'psi' })).toThrow(RangeError);
  });
});
