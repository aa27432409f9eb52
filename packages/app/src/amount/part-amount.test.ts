import { expect, it } from 'vitest';
import { dropText, heatText } from './part-amount.ts';

it('tells the few watts and millivolts of a joint as well as the kilowatts of a lead', () => {
  expect(heatText(12.6, 'metric')).toBe('13 W');
  expect(heatText(2310, 'metric')).toBe('2.3 kW');
  expect(dropText(0.0251, 'inch')).toBe('25 mV');
  expect(dropText(2.31, 'metric')).toBe('2.3 V');
});
