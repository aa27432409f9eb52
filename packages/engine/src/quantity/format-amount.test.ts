import { describe, expect, it } from 'vitest';
import type { AmountKind } from './amount.ts';
import { type FormatOptions, formatAmount, formatApart, formatBand } from './format-amount.ts';
import type { UnitSystem } from './quantity-kind.ts';

const INCH = 0.0254;

describe('formatAmount', () => {
  it.each<[number, AmountKind, UnitSystem, string]>([
    [0.009525, 'length', 'inch', '3/8 in'],
    [0.0318, 'length', 'inch', '1 1/4 in'],
    [2 * INCH, 'length', 'inch', '2 in'],
    [-0.009525, 'length', 'inch', '-3/8 in'],
    [INCH / 16, 'length', 'inch', '1/16 in'],
    [0.03 * INCH, 'length', 'inch', '0.030 in'],
    [0, 'length', 'inch', '0 in'],
    [0.075, 'length', 'inch', '3 in'],
    [0.09, 'length', 'inch', '3 1/2 in'],
    [(3 + 9 / 16) * INCH, 'length', 'inch', '3 9/16 in'],
    [0.3, 'length', 'inch', '11 3/4 in'],
    [(11 + 13 / 16) * INCH, 'length', 'inch', '11 13/16 in'],
    [0.5, 'length', 'inch', '19 3/4 in'],
    [0.609, 'length', 'inch', '2 ft'],
    [27 * INCH, 'length', 'inch', '2 ft 3 in'],
    [27.375 * INCH, 'length', 'inch', '2 ft 3 3/8 in'],
    [47 * INCH, 'length', 'inch', '3 ft 11 in'],
    [119 * INCH, 'length', 'inch', '9 ft 11 in'],
    [119.99 * INCH, 'length', 'inch', '10 ft'],
    [240 * INCH, 'length', 'inch', '20 ft'],
    [6, 'length', 'inch', '19 ft 8 in'],
    [0.002, 'length', 'inch', '5/64 in'],
    [0.00397, 'length', 'inch', '5/32 in'],
    [118.125 * INCH, 'length', 'inch', '9 ft 10 in'],
    [0.01204, 'depth', 'metric', '12.0 mm'],
    [0.01204, 'depth', 'inch', '0.47 in'],
    [-0.0004, 'depth', 'metric', '−0.4 mm'],
    [-0.00001, 'depth', 'metric', '0.0 mm'],
    [0.85, 'depth', 'metric', '850 mm'],
    [0.0251, 'voltage', 'metric', '25 mV'],
    [12.6, 'power', 'metric', '13 W'],
    [1.2e6, 'heat_per_length', 'metric', '1.20 kJ/mm'],
    [1.2e6, 'heat_per_length', 'inch', '30.5 kJ/in'],
    [12.7, 'mass', 'inch', '28.0 lb'],
    [1.9e7, 'energy', 'metric', '19.0 MJ'],
    [50, 'temperature_difference', 'inch', '90 °F'],
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
    [0.35, 'time', 'metric', '0.3 s'],
    [4.04, 'time', 'metric', '4.0 s'],
    [45.2, 'time', 'metric', '45 s'],
    [59.7, 'time', 'metric', '1 min'],
    [0.06, 'time', 'metric', '0.06 s'],
    [326, 'time', 'metric', '5 min 26 s'],
    [750, 'time', 'metric', '13 min'],
    [4810, 'time', 'inch', '1 h 20 min'],
    [Math.PI / 4, 'angle', 'metric', '45°'],
    [95e-6, 'area', 'metric', '95 mm²'],
    [95e-6, 'area', 'inch', '0.147 in²'],
    [293.15, 'temperature', 'metric', '20 °C'],
    [293.15, 'temperature', 'inch', '68 °F'],
    [272.8, 'temperature', 'metric', '0 °C'],
    [523.15, 'temperature', 'inch', '482 °F'],
    [373.15, 'temperature', 'inch', '212 °F'],
    [525.04, 'temperature', 'inch', '485 °F'],
    [273.15 + 81.9, 'temperature', 'inch', '180 °F'],
    [273.15 + (227 - 32) / 1.8, 'temperature', 'inch', '227 °F'],
    [273.15 + (97 - 32) / 1.8, 'temperature', 'inch', '97 °F'],
    [3883.86 / 60, 'ventilation', 'inch', '137000 cfm'],
    [2600, 'volume', 'inch', '91800 ft3'],
    [2600, 'volume', 'metric', '2600 m3'],
    [0.5, 'volume', 'inch', '132 gal'],
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

  it.each<[number, AmountKind, FormatOptions, string]>([
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

it('tells two amounts that are held against each other apart', () => {
  expect(formatApart(549600, 551600, 'pressure', 'metric')).toEqual(['5.50 bar', '5.52 bar']);
  expect(formatApart(549600, 551600, 'pressure', 'inch')).toEqual(['79.7 psi', '80.0 psi']);
  expect(formatApart(604, 605, 'time', 'metric')).toEqual(['604.0 s', '605.0 s']);
  expect(formatApart(0.012, 0.012, 'depth', 'metric')).toEqual(['12.0 mm', '12.0 mm']);
});

it('writes a band from its lower to its upper end, with one unit', () => {
  expect(formatBand(0.01205, 0.01562, 'depth', 'metric')).toBe('12.1 to 15.6 mm');
  expect(formatBand(0.01205, 0.01562, 'depth', 'inch')).toBe('0.47 to 0.61 in');
  expect(formatBand(5, 90, 'time', 'metric')).toBe('5.0 s to 1 min 30 s');
  expect(formatBand(0.012, 0.012, 'depth', 'metric')).toBe('12.0 mm');
});
