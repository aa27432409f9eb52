import { describe, expect, it } from 'vitest';
import { jobFieldAt } from '../document/index.ts';
import { fallbackText, shownText, typedValue } from './typed-value.ts';

const thickness = jobFieldAt('plate.thickness')!;
const price = jobFieldAt('kit.electrodes.*.price_each')!;

describe('typedValue', () => {
  it('keeps an amount as it is written', () => {
    expect(typedValue(thickness, ' 1 1/4 in ')).toBe('1 1/4 in');
    expect(typedValue(thickness, '32')).toBe('32');
  });

  it('takes the field out when nothing is written', () => {
    expect(typedValue(thickness, '  ')).toBeUndefined();
  });

  it('makes numbers of what can only be one', () => {
    expect(typedValue(price, '2.10')).toBe(2.1);
    expect(typedValue(price, '2,1')).toBe(2.1);
  });

  it('leaves what can be read in two ways to the reader of the job', () => {
    expect(typedValue(price, '1,500')).toBe('1,500');
    expect(typedValue(price, 'two')).toBe('two');
  });
});

describe('shownText', () => {
  it('keeps what was typed while it says what the file has', () => {
    expect(shownText(price, '2,10', '2.1')).toBe('2,10');
    expect(shownText(thickness, '32 mm ', '32 mm')).toBe('32 mm ');
  });

  it('follows the file when it was changed elsewhere', () => {
    expect(shownText(thickness, '32 mm', '1 in')).toBe('1 in');
    expect(shownText(thickness, '32 mm', undefined)).toBe('');
    expect(shownText(thickness, undefined, '1 in')).toBe('1 in');
  });
});

describe('fallbackText', () => {
  it.each([
    ['kit.trial.length_most', 'inch', '11 3/4 in'],
    ['kit.trial.length_most', 'metric', '300 mm'],
    ['heat.ambient', 'inch', '68 °F'],
    ['kit.electrodes.*.price_each', 'inch', 'no price'],
    ['rates.labour_per_hour', 'metric', 'no price'],
    ['after.refill.gas_per_arc_hour', 'metric', 'no price'],
    ['groove.depth.minus', 'metric', '0 mm'],
    ['groove.floor_width', 'inch', '0 in'],
    ['heat.losses', 'inch', 'film and radiation'],
    ['after.cleaning_min_per_m', 'inch', '3'],
  ] as const)('tells what stands in for %s in %s', (path, units, text) => {
    expect(fallbackText(jobFieldAt(path)!, units)).toBe(text);
  });
});
