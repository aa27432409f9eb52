import { describe, expect, it } from 'vitest';
import { modbusPlace } from './modbus-place.ts';

const place = (url: string, registers: readonly string[], every?: string) =>
  modbusPlace(new URL(url), registers, every);

describe('a device on the command line', () => {
  it('has the usual port, unit, pace, type and scale unless others are given', () => {
    expect(place('modbus://192.0.2.7', ['voltage [V]=holding:3'])).toEqual({
      ...{ host: '192.0.2.7', port: 502, unit: 1, interval: 100 },
      registers: [{ name: 'voltage [V]', table: 'holding', address: 3, type: 'uint16', scale: 1 }],
    });
    expect(place('modbus://192.0.2.7:1502/3', ['current [A]=input:40:float32:0.1'], '50')).toEqual({
      ...{ host: '192.0.2.7', port: 1502, unit: 3, interval: 50 },
      registers: [{ name: 'current [A]', table: 'input', address: 40, type: 'float32', scale: 0.1 }],
    });
  });

  it.each([
    ['modbus://192.0.2.7/300', ['a=holding:0'], undefined, 'A device is written as'],
    ['modbus://192.0.2.7', [], undefined, 'a --register for each'],
    ['modbus://192.0.2.7', ['voltage'], undefined, '"voltage" is no register'],
    ['modbus://192.0.2.7', ['a=coil:0'], undefined, 'is no register'],
    ['modbus://192.0.2.7', ['a=holding:70000'], undefined, 'is no register'],
    ['modbus://192.0.2.7', ['a=holding:0:double'], undefined, 'is no register'],
    ['modbus://192.0.2.7', ['a=holding:0:uint16:0'], undefined, 'is no register'],
    ['modbus://192.0.2.7', ['a=holding:0', 'a =holding:1'], undefined, 'Two registers are called "a"'],
    ['modbus://192.0.2.7', ['a=holding:0'], '5', '--every is a time'],
    ['modbus://192.0.2.7', ['a=holding:0'], 'soon', '"soon" is none'],
  ])('is refused with what is accepted, %#', (url, registers, every, message) => {
    expect(place(url, registers, every)).toContain(message);
  });
});
