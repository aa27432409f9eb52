import { describe, expect, it } from 'vitest';
import { exposureLimit } from './exposure-limit.ts';
import { asksForFans } from './general-ventilation.ts';
import { mixtureIndex, shiftConcentration } from './mixture-index.ts';
import { expectedSubstances } from './substance.ts';
import { matrixVentilation } from './ventilation-matrix.ts';
import { hazardWording } from './wording.ts';

const named = (...input: Parameters<typeof expectedSubstances>): string[] =>
  expectedSubstances(...input).map(({ substance }) => substance);

describe('substances', () => {
  it('have copper from the electrode even on plain steel, and each once', () => {
    const found = named('carbon_steel', {}, 'none');
    expect(found).toContain('copper');
    expect(found).not.toContain('chromium_vi');
    expect(new Set(found).size).toBe(found.length);
  });

  it.each([
    ['austenitic_stainless', {}, 'none', ['chromium_vi', 'nickel']],
    ['low_alloy_steel', { Cr: 2.25 }, 'none', ['chromium_vi']],
    ['carbon_steel', { Ni: 0.4 }, 'none', ['nickel']],
    ['carbon_steel', {}, 'chromium', ['chromium_vi']],
    ['low_alloy_steel', {}, 'none', ['chromium_vi', 'nickel']],
    ['low_alloy_steel', { Cr: 0 }, 'none', ['nickel']],
    ['copper_alloy', {}, 'none', ['nickel']],
  ] as const)('of %s with %o and coating %s have %o', (family, composition, coating, wanted) => {
    const found = named(family, composition, coating);
    for (const substance of wanted) expect(found).toContain(substance);
  });

  it('that a family often holds are let off only by a composition that states none', () => {
    expect(named('low_alloy_steel', { Cr: 0 }, 'none')).not.toContain('chromium_vi');
    expect(named('low_alloy_steel', { Ni: 0 }, 'none')).not.toContain('nickel');
    expect(named('low_alloy_steel', { Cr: 0, Ni: 0 }, 'chromium')).toContain('chromium_vi');
    expect(named('copper_alloy', { Ni: 0 }, 'none')).not.toContain('nickel');
    const why = (composition: { Cr?: number }): string | undefined =>
      expectedSubstances('low_alloy_steel', composition, 'none').find(
        ({ substance }) => substance === 'chromium_vi',
      )?.why;
    expect(why({})).toContain('unless the composition says otherwise');
    expect(why({ Cr: 2.25 })).toBe('the composition states 2.25 % chromium');
  });

  it('of copper have no iron', () => {
    expect(named('copper_alloy', {}, null)).not.toContain('iron_oxide');
  });
});

describe('limits', () => {
  it('differ by 250 times between two sets for manganese', () => {
    expect(exposureLimit('manganese', 'osha')!.most / exposureLimit('manganese', 'acgih')!.most).toBeCloseTo(
      250,
    );
  });

  it('are none where the set has none', () => {
    expect(exposureLimit('ozone', 'eu')).toBeNull();
    expect(exposureLimit('iron_oxide', 'eu')).toBeNull();
  });

  it('mark a ceiling, which is not averaged', () => {
    expect(exposureLimit('manganese', 'osha')!.over).toBe('ceiling');
    expect(exposureLimit('copper', 'osha')!.over).toBe('shift');
  });
});

it('a mean over a shift counts the rest as clean air', () => {
  expect(shiftConcentration([])).toBe(0);
  expect(shiftConcentration([{ concentration: 8, time: 3600 }])).toBe(1);
  expect(mixtureIndex([])).toBe(0);
});

describe('asksForFans', () => {
  const room = { volume: 900, ceiling: 6, barriers: false, torches: 1 };
  it('lets a large, open room off, and shares it between torches', () => {
    expect(asksForFans(room)).toBe(false);
    expect(asksForFans({ ...room, torches: 4 })).toBe(true);
  });

  it.each([{ volume: 200 }, { ceiling: 4 }, { barriers: true }])('asks for fans with %o alone', (part) => {
    expect(asksForFans({ volume: null, ceiling: null, barriers: null, torches: 1, ...part })).toBe(true);
  });

  it('does not decide what it does not know', () => {
    expect(asksForFans({ ...room, barriers: null })).toBeNull();
  });
});

describe('matrixVentilation', () => {
  it('covers neither cast iron nor what is not stated', () => {
    expect(matrixVentilation('fixed', 'long', 'cast_iron', 'none')).toBeNull();
    expect(matrixVentilation(null, 'long', 'carbon_steel', 'none')).toBeNull();
    expect(matrixVentilation('fixed', 'long', 'carbon_steel', null)).toBeNull();
  });

  it('counts high alloy before a coating', () => {
    expect(matrixVentilation('fixed', 'short', 'austenitic_stainless', 'zinc')).toBe('capture at the source');
  });
});

describe('hazardWording', () => {
  it.each([
    [90, 90, 'most', 'within the figure named'],
    [90.1, 90, 'most', 'over the figure named'],
    [10, 11, 'least', 'short of the figure named'],
    [11, 11, 'least', 'within the figure named'],
    [null, 90, 'most', 'not covered by the source'],
    [90, null, 'most', 'not covered by the source'],
    [Number.NaN, 90, 'most', 'not covered by the source'],
    [Number.POSITIVE_INFINITY, 90, 'most', 'not covered by the source'],
  ] as const)('%s against %s at %s: %s', (value, figure, sense, wanted) => {
    expect(hazardWording(value, figure, sense)).toBe(wanted);
  });
});
