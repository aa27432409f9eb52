import { liveSourceSchema } from '@furrow/contract';
import { describe, expect, it } from 'vitest';
import { sourceOf } from './live-source-form.tsx';

const values = {
  url: ' mqtt://127.0.0.1:1883 ',
  topic: 'rig/1',
  host: 'rig',
  port: '1502',
  unit: '3',
  interval: '50',
  registers: 'arc voltage [V], 0, uint16, 0.1\n\ncurrent [A], 4, float32',
  seed: '7',
};

describe('the source of a live run as its form has it', () => {
  it('is one that the server takes', () => {
    for (const kind of ['http', 'mqtt', 'modbus', 'rehearsal'] as const)
      expect(liveSourceSchema.safeParse(sourceOf(kind, values)).success, kind).toBe(true);
    expect(sourceOf('mqtt', values)).toMatchObject({ url: 'mqtt://127.0.0.1:1883' });
    expect(sourceOf('modbus', values)).toMatchObject({
      port: 1502,
      unit: 3,
      interval_ms: 50,
      registers: [
        { name: 'arc voltage [V]', address: 0, type: 'uint16', scale: 0.1 },
        { name: 'current [A]', address: 4, type: 'float32', scale: 1 },
      ],
    });
  });

  it.each([
    'arc voltage [V]',
    'arc voltage [V], -1',
    'arc voltage [V], 0, word',
    'arc voltage [V], 0, int16, much',
    ', 0',
  ])('says which line of the registers is not read: %s', (line) => {
    expect(sourceOf('modbus', { ...values, registers: `a, 1\n${line}` })).toContain(
      'Line 2 of the registers',
    );
  });

  it('asks for a register where none is named', () => {
    expect(sourceOf('modbus', { ...values, registers: ' \n' })).toBe('Name at least one register.');
  });
});
