import { readdirSync, readFileSync } from 'node:fs';
import {
  answerJob,
  currentRangeOf,
  fitRemovalPrior,
  lossLength,
  metalOf,
  PASS_DEPTH_MOST,
  type Prediction,
  PUBLISHED_PRIOR,
  passArea,
  predictDepth,
  predictWear,
  predictWidth,
  publishedBelief,
  REMOVAL_SHARE_MOST,
  type RemovalRow,
  type RowFit,
  readJob,
} from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { PROCESS_ENTRIES, PROCESS_ROWS, ROW_VOLTAGE } from './process-rows.ts';

/**
 * TWI Job Knowledge 12, Air carbon arc gouging, operating data table; AWS Welding Handbook, arc cutting and gouging
 * chapter, suggested current ranges; AWS C5.3, width rule. All from memory, no edition at hand: process.json says so
 * row by row. Arc voltage is not printed: 42 V is taken, the middle of the usual window (common practice, no source).
 *
 * The law was FITTED TO THESE VERY ROWS, and how few rigs they are worth is set so that each lies inside the 90 % interval
 * of a shop that is not known yet. That they lie inside is therefore no evidence for the law; leaving one row out in
 * turn is the fair figure.
 */
const METAL = metalOf('carbon_steel');
const ENERGY = METAL.meltingEnergy.value;
const PRIOR = publishedBelief(METAL, 'flat');
const INCH = 0.0254;

const inside = (value: number, { p05, p95 }: Prediction): boolean => value >= p05 && value <= p95;

interface Quantity {
  readonly name: string;
  readonly printed: (row: RemovalRow) => number | undefined;
  readonly predicted: (belief: RowFit, row: RemovalRow) => Prediction;
}

const DEPTH: Quantity = {
  name: 'depth',
  printed: (row) => row.depth,
  predicted: (belief, row) => predictDepth(publishedBelief(METAL, 'flat', belief), row.setting),
};
const WIDTH: Quantity = {
  name: 'width',
  printed: (row) => row.width,
  predicted: (belief, row) => predictWidth(publishedBelief(METAL, 'flat', belief), row.setting.diameter),
};
const WEAR: Quantity = {
  name: 'electrode wear',
  printed: (row) => row.wear,
  predicted: (belief, row) =>
    predictWear(publishedBelief(METAL, 'flat', belief), row.setting.diameter, row.setting.current),
};

describe('the committed prior', () => {
  it('is what `npm run fit` makes of the rows today', () => {
    const numbers = (belief: RowFit): number[] =>
      [belief.depth, belief.extraWidth, belief.wear].flatMap(({ mean, precision, shape, scale }) => [
        ...mean,
        ...precision.flat(),
        shape,
        scale,
      ]);
    const fitted = numbers(fitRemovalPrior(PROCESS_ROWS, ENERGY));
    const committed = numbers(PUBLISHED_PRIOR);
    expect(committed).toHaveLength(fitted.length);
    fitted.forEach((value, i) => {
      expect(Math.abs(value - committed[i]!)).toBeLessThanOrEqual(1e-12 * Math.abs(value));
    });
  });

  it('rests on 12 points of 8 rows, at 42 V', () => {
    expect(PROCESS_ROWS).toHaveLength(12);
    expect(PROCESS_ENTRIES.filter((entry) => entry.quantity === 'operating row')).toHaveLength(8);
    expect(ROW_VOLTAGE).toBe(42);
  });

  it('has slope and level near what the rows show at a glance: a -0.84, b 1.4 to 1.6, s 0.21 to 0.26', () => {
    const [a, b] = PUBLISHED_PRIOR.depth.mean as [number, number];
    expect(a).toBeCloseTo(-0.857, 3);
    expect(b).toBeCloseTo(1.391, 3);
    expect(Math.sqrt(PUBLISHED_PRIOR.depth.scale / PUBLISHED_PRIOR.depth.shape)).toBeCloseTo(0.247, 3);
  });
});

describe.each([DEPTH, WIDTH, WEAR])('$name of the rows the prior was fitted to', ({ printed, predicted }) => {
  const rows = PROCESS_ROWS.filter((row) => printed(row) !== undefined);

  it.each(rows)('$id lies inside the 90 % interval (by construction: see above)', (row) => {
    expect(inside(printed(row)!, predicted(PUBLISHED_PRIOR, row))).toBe(true);
  });
});

describe('each row predicted from the others: the fair figure', () => {
  /** Rows that lie outside the 90 % interval of a prior fitted without them. */
  const missed = (
    { printed, predicted }: Quantity,
    apart: (row: RemovalRow) => string,
  ): [number, string[]] => {
    const rows = PROCESS_ROWS.filter((row) => printed(row) !== undefined);
    const outside = rows.filter((row) => {
      const others = PROCESS_ROWS.filter((other) => apart(other) !== apart(row));
      return !inside(printed(row)!, predicted(fitRemovalPrior(others, ENERGY), row));
    });
    return [rows.length, outside.map(({ id }) => id)];
  };
  const byPoint = (row: RemovalRow): string => row.id;
  const byPrintedRow = (row: RemovalRow): string => row.id.replace(/ (slow|fast)$/, '');

  // 10 of 12: 83 % where 90 % is stated. With 12 points 2 or more outside happen in a third of all cases by chance.
  it('depth: 10 of 12 points, the same when both ends of a printed row are left out', () => {
    expect(missed(DEPTH, byPoint)).toEqual([12, ['cac-mech-8 slow', 'cac-man-6.4']]);
    expect(missed(DEPTH, byPrintedRow)).toEqual([12, ['cac-mech-8 slow', 'cac-man-6.4']]);
  });

  it('width: 4 of 4', () => {
    expect(missed(WIDTH, byPoint)).toEqual([4, []]);
  });

  it('electrode wear: 7 of 8', () => {
    expect(missed(WEAR, byPoint)).toEqual([8, ['cac-mech-16 slow']]);
  });
});

describe('the width rule, electrode and 3.2 mm (AWS C5.3, memory)', () => {
  it.each([6.35, 8, 9.5, 12.7, 15.9, 19])(
    'lies inside the 90 %% interval at %d mm, near its middle',
    (mm) => {
      const width = predictWidth(PRIOR, mm / 1000);
      expect(inside((mm + 3.2) / 1000, width)).toBe(true);
      expect(Math.abs(width.p50 - (mm + 3.2) / 1000)).toBeLessThan(0.5e-3);
    },
  );
});

describe('the published current ranges (AWS Welding Handbook, memory)', () => {
  const table = PROCESS_ENTRIES.find(({ id }) => id === 'cac-current-range')!;
  const sizes = table.inputs['electrode_diameter_in'] as string[];
  const ranges = table.output['current_A'] as [number, number][];
  const inches = (size: string): number => {
    const [over, under = '1'] = size.split('/');
    return Number(over) / Number(under);
  };

  it.each(sizes.map((size, i) => [size, ...ranges[i]!] as const))(
    'are the engine’s: %s in, %d to %d A',
    (size, least, most) => {
      expect(currentRangeOf({ diameter: inches(size) * INCH })).toMatchObject({
        least,
        most,
        source: { provenance: 'memory' },
      });
    },
  );

  // Two tables, recalled apart: 16 mm at 1250 A is above 1200 A, 13 mm by hand at 550 A below 600 A.
  it('hold the current of every operating row but for 16 mm, a little above, and 13 mm by hand, a little below', () => {
    const outside = PROCESS_ROWS.filter(({ setting }) => {
      const range = currentRangeOf({ diameter: setting.diameter })!;
      return setting.current < range.least || setting.current > range.most;
    });
    expect(outside.map(({ id }) => id)).toEqual(['cac-mech-16 slow', 'cac-mech-16 fast', 'cac-man-13']);
  });

  const examples = new URL('../examples/', import.meta.url);
  it.each(readdirSync(examples).filter((name) => name.endsWith('.yaml') && !name.endsWith('-kit.yaml')))(
    'bound every plan for %s',
    (name) => {
      const read = readJob(readFileSync(new URL(name, examples), 'utf8'));
      if (!read.ok) throw new Error(JSON.stringify(read.issues));
      const { plan, alternatives } = answerJob({ job: read.value, version: 'test' });
      const plans = [...(plan === undefined ? [] : [plan]), ...alternatives];
      expect(plans.length).toBeGreaterThan(0);
      for (const { electrode_diameter_mm: diameter, passes } of plans) {
        const size = sizes.findIndex((written) => Math.abs(inches(written) * 25.4 - diameter) < 0.01);
        const [least, most] = ranges[size]!;
        expect(passes.length).toBeGreaterThan(0);
        for (const { current_A: current } of passes) {
          expect(current).toBeGreaterThanOrEqual(least);
          expect(current).toBeLessThanOrEqual(most);
        }
      }
    },
  );
});

describe('the power that melts the groove out, against the arc’s power (energy balance)', () => {
  /** Share of the arc's power at a depth; width as printed, else as predicted. */
  const share = (row: RemovalRow, depth: number): number => {
    const { diameter, travel, voltage, current } = row.setting;
    const width = row.width ?? predictWidth(PRIOR, diameter).p50;
    return (passArea({ width, depth }) * travel * ENERGY) / (voltage * current);
  };
  const predicted = (row: RemovalRow): number => share(row, predictDepth(PRIOR, row.setting).p50);

  it.each(PROCESS_ROWS)('$id: below it at the predicted depth', (row) => {
    expect(predicted(row)).toBeLessThan(1);
  });

  it('at the predicted depth only cac-man-6.4 passes the 85 % that a plan may use', () => {
    const over = PROCESS_ROWS.filter((row) => predicted(row) > REMOVAL_SHARE_MOST);
    expect(over.map(({ id }) => id)).toEqual(['cac-man-6.4']);
    expect(PROCESS_ROWS.map(predicted).sort((a, b) => b - a)[0]).toBeCloseTo(0.867, 2);
  });

  it('at the printed depth every row but one uses less than 80 % of it', () => {
    const others = PROCESS_ROWS.filter(({ id }) => id !== 'cac-mech-8 slow');
    for (const row of others) expect(share(row, row.depth), row.id).toBeLessThan(0.8);
  });

  // 9 mm deep with an 8 mm electrode at 300 A and 840 mm/min would take all of the arc's power (101 %) at the predicted
  // width, and three quarters of it in a slot no wider than the electrode. Its pairing of deep with slow is an inference
  // in the table as recalled, and the row lies farthest from the law: it is a doubtful row, kept and named, not hidden.
  it('cac-mech-8 at its slow end is doubtful: its printed depth would take 101 %', () => {
    const row = PROCESS_ROWS.find(({ id }) => id === 'cac-mech-8 slow')!;
    expect(share(row, row.depth)).toBeCloseTo(1.01, 2);
    expect(share({ ...row, width: row.setting.diameter }, row.depth)).toBeCloseTo(0.75, 2);
  });
});

describe('common practice, no source', () => {
  const HALF_INCH = {
    diameter: INCH / 2,
    current: 850,
    voltage: 42,
    travel: (35 * INCH) / 60,
    pushAngle: Math.PI / 4,
  };
  const depth = (changed: Partial<typeof HALF_INCH> = {}): number =>
    predictDepth(PRIOR, { ...HALF_INCH, ...changed }).p50;

  it('a half-inch electrode at 850 A, 42 V and 35 in/min makes a groove between 1/4 and 1/2 in deep', () => {
    expect(depth()).toBeGreaterThan(INCH / 4);
    expect(depth()).toBeLessThan(INCH / 2);
    expect(depth()).toBeCloseTo(0.00924, 5);
  });

  it.each([40, 44])('and so at %d V, an end of the usual window', (voltage) => {
    expect(depth({ voltage })).toBeGreaterThan(INCH / 4);
    expect(depth({ voltage })).toBeLessThan(INCH / 2);
  });

  it.each([45, 50, 60])('and so at a push angle of %d deg', (degrees) => {
    expect(depth({ pushAngle: (degrees * Math.PI) / 180 })).toBeGreaterThan(INCH / 4);
    expect(depth({ pushAngle: (degrees * Math.PI) / 180 })).toBeLessThan(INCH / 2);
  });

  it('a job that states no angle and no voltage is planned at 45 deg and 42 V in a window of 40 to 44 V', () => {
    const text = readFileSync(new URL('../examples/casting-wash.yaml', import.meta.url), 'utf8');
    expect(text).not.toMatch(/angle|voltage/);
    const read = readJob(text);
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    const { kit } = read.value.job;
    expect(kit.push_angle).toBeCloseTo(Math.PI / 4, 12);
    expect(kit.arc_voltage).toEqual({ least: 40, most: 44, set: 42 });
  });

  it.each([
    [0.4, 5.9],
    [0.8, 11.9],
  ])('at 35 in/min a loss window of %d s leaves %d mm ungouged', (window, mm) => {
    expect(Math.round(lossLength(HALF_INCH.travel, window) * 10_000) / 10).toBe(mm);
  });

  it('a pass is at most 1.5 electrode diameters deep, and no operating row is deeper', () => {
    expect(PASS_DEPTH_MOST).toBe(PROCESS_ENTRIES.find(({ id }) => id === 'cac-depth-limit')!.output['ratio']);
    for (const row of PROCESS_ROWS) {
      expect(row.depth / row.setting.diameter, row.id).toBeLessThanOrEqual(PASS_DEPTH_MOST);
    }
  });
});
