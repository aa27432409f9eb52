import { type Kit, readKit } from '@furrow/engine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type NewKit, NO_ANSWERS, newKitText } from './new-kit-text.ts';

const ANSWERED: NewKit = {
  ...NO_ANSWERS,
  noLoad: '80',
  ratedCurrent: '1000',
  leadSize: '4/0',
  leadParallels: '2',
  electrodeLead: '50',
  workLead: '40',
  hoseSize: '3/4',
  hoseLength: '50',
  delivery: '60',
  pressure: '125',
};

function kitOf(answers: NewKit, units: 'metric' | 'inch' = 'inch'): Kit {
  const read = readKit(newKitText(answers, units));
  if (!read.ok) throw new Error(read.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return read.value.kit;
}

describe('a kit in six questions', () => {
  it('reads numbers alone in the unit of their box', () => {
    const kit = kitOf(ANSWERED);
    expect(kit.leads.map(({ length }) => length / 0.3048)).toEqual([
      expect.closeTo(50, 9),
      expect.closeTo(40, 9),
    ]);
    // 4/0 AWG is 107.2 mm2
    expect(kit.leads[0]!.size * 1e6).toBeCloseTo(107.2, 1);
    expect(kit.air.path[1]).toMatchObject({ kind: 'hose', length: expect.closeTo(15.24, 9) });
    const metric = kitOf(
      { ...ANSWERED, leadSize: '95', electrodeLead: '15', hoseSize: '19', delivery: '1700', pressure: '8.6' },
      'metric',
    );
    expect(metric.leads[0]).toMatchObject({ size: expect.closeTo(95e-6, 12), length: 15 });
  });

  it('takes the slope of a straight line from no load to the rating', () => {
    const [source] = kitOf({ ...ANSWERED, ratedVoltage: '44' }).sources;
    // (80 V - 44 V) / 1000 A
    expect(source!.slope).toBeCloseTo(0.036, 9);
  });

  it('takes an outlet of the shop’s air to hold its pressure, and says so', () => {
    const shop = { ...ANSWERED, air: 'shop', outlet: '110' } as const;
    const { compressor, receiver } = kitOf(shop).air;
    expect(compressor.delivery[0]!.pressure).toBe(receiver.cut_out);
    expect(receiver.cut_out).toBeGreaterThan(receiver.cut_in);
    expect(receiver.cut_in / 6894.757).toBeCloseTo(110, 0);
    expect(newKitText(shop, 'inch')).toContain('read it with the air flowing');
  });

  it('draws a bay of a few distances where one is told, the work around its seam, and none otherwise', () => {
    expect(kitOf(ANSWERED).bay).toBeUndefined();
    const placed = {
      ...ANSWERED,
      place: 'bay',
      bayLength: '60',
      bayWidth: '30',
      powerX: '3',
      powerY: '10',
      airX: '3',
      airY: '20',
      seamX: '30',
      seamY: '15',
      seamLength: '20',
    } as const;
    const bay = kitOf(placed).bay!;
    const foot = 0.3048;
    expect(bay.name).toBe('Bay 1');
    expect(bay.outline[2]).toEqual({
      x: expect.closeTo(60 * foot, 9),
      y: expect.closeTo(30 * foot, 9),
    });
    expect(bay.seam[1]!.x - bay.seam[0]!.x).toBeCloseTo(20 * foot, 3);
    expect(bay.seam[1]!.y).toBe(bay.seam[0]!.y);
    expect(bay.power.y).toBeCloseTo(10 * foot, 9);
    expect(bay.air.y).toBeCloseTo(20 * foot, 9);
    // half a metre beyond the seam to every side
    expect(bay.workpiece.outline[0]!.x).toBeCloseTo(30 * foot - 0.5, 3);
    expect(bay.workpiece.outline[2]!.y).toBeCloseTo(15 * foot + 0.5, 3);
    expect(newKitText(placed, 'inch')).toContain('Taken around the seam');
  });

  it('asks for what has no usual value, and for nothing else', () => {
    const read = readKit(newKitText(NO_ANSWERS, 'metric'));
    const paths = read.ok ? [] : read.issues.map(({ path }) => path);
    expect(paths.length).toBeGreaterThan(5);
    const boxes =
      /^(?:sources\[0\]\.(?:no_load_voltage|slope|rating\[0\]\.current)|leads\[[01]\]\.(?:size|length)|air\.compressor\.delivery\[0\]\.(?:pressure|flow)|air\.receiver\.cut_(?:in|out)|air\.path\[1\]\.(?:size|bore|length))$/u;
    expect(paths.filter((path) => !boxes.test(path ?? ''))).toEqual([]);
  });

  it('never takes what was typed for another amount', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 300 }), fc.constantFrom('metric', 'inch'), (length, units) => {
        const kit = kitOf(
          {
            ...ANSWERED,
            leadSize: '95 mm2',
            hoseSize: '3/4 in',
            pressure: '120 psi',
            delivery: '60 scfm',
            electrodeLead: String(length),
          },
          units as 'inch',
        );
        expect(kit.leads[0]!.length).toBeCloseTo(length * (units === 'inch' ? 0.3048 : 1), 9);
      }),
      { seed: 20261127, numRuns: 40 },
    );
  });
});
