import { describe, expect, it } from 'vitest';
import { jobFieldAt } from '../document/index.ts';
import { entryOf, fallbackText, shownText, typedValue } from './typed-value.ts';

const thickness = jobFieldAt('plate.thickness')!;
const heatInput = jobFieldAt('reweld.heat_input_kJ_per_mm')!;
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

describe('entryOf', () => {
  it('turns a number in the reader’s unit into that of the file, and leaves other words to its reader', () => {
    expect(entryOf(heatInput, 'inch').fileValue('38.1')).toBe(1.5);
    expect(entryOf(heatInput, 'inch').fileValue('much')).toBe('much');
    expect(entryOf(heatInput, 'metric').fileValue('1.5')).toBe(1.5);
  });
});

describe('shownText', () => {
  it('keeps what was typed while it says what the file has', () => {
    expect(shownText('2,10', '2.1', entryOf(price, 'metric'))).toBe('2,10');
    expect(shownText('32 mm ', '32 mm', entryOf(thickness, 'metric'))).toBe('32 mm ');
    expect(shownText('32', '32 mm', entryOf(thickness, 'metric'))).toBe('32');
    expect(shownText('38.1', '1.5', entryOf(heatInput, 'inch'))).toBe('38.1');
  });

  it('follows the file when it was changed elsewhere', () => {
    const inMetric = entryOf(thickness, 'metric');
    expect(shownText('32 mm', '1 in', inMetric)).toBe('1 in');
    expect(shownText('32 mm', undefined, inMetric)).toBe('');
    expect(shownText(undefined, '1 in', inMetric)).toBe('1 in');
    expect(shownText('38.1', '2', entryOf(heatInput, 'inch'))).toBe('50.8');
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
    ['after.cleaning_min_per_m', 'inch', '0.914'],
    ['after.cleaning_min_per_m', 'metric', '3'],
  ] as const)('tells what stands in for %s in %s', (path, units, text) => {
    expect(fallbackText(jobFieldAt(path)!, units)).toBe(text);
  });
});
