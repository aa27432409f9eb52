import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { STANDING_CAUTIONS, STOP_WORK } from '../../hazard/index.ts';
import { type ReadJob, readJob } from '../../job/index.ts';
import { readKit } from '../../kit/index.ts';
import { sentenceText } from '../../quantity/index.ts';
import type { HazardReport, HazardRow } from '../../result/index.ts';
import { answerJob } from '../job/answer-job.ts';
import { answerHazard } from './answer-hazard.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../../../../examples/${name}.yaml`, import.meta.url), 'utf8');
const PENSTOCK = example('penstock-seam');
/** The demo job without its site. */
const PLAIN = PENSTOCK.replace(/\nsite:\n(?:[ \t].*\n|\n)*/u, '\n');

function job(text: string): ReadJob {
  const read = readJob(text);
  if (!read.ok) throw new Error(read.issues.map(({ message }) => message).join('\n'));
  return read.value;
}

const demo = job(PENSTOCK);
const answer = answerJob({ job: demo, version: 'test' });
const kit = readKit(example('yard-kit'));
if (!kit.ok) throw new Error('the kit of the examples cannot be read');
const yard = kit.value;

/** The report of the plain job with a site of its own; its plan does not hang on the site. */
function withSite(lines: string): HazardReport {
  return answerHazard(job(`${PLAIN}\nsite:\n${lines}\n`), answer);
}

function rowsOf(report: HazardReport): readonly HazardRow[] {
  return [...report.noise.flatMap(({ rows }) => rows), ...report.sections.flatMap(({ rows }) => rows)];
}

function row(report: HazardReport, id: string): HazardRow {
  const found = rowsOf(report).find((one) => one.id === id);
  if (found === undefined) throw new Error(`no row ${id}`);
  return found;
}

const issuesOf = (lines: string): string => {
  const read = readJob(`${PLAIN}\nsite:\n${lines}\n`);
  return read.ok ? '' : read.issues.map(({ message }) => message).join(' ');
};

describe('a job that states nothing of its site', () => {
  const report = answerHazard(job(PLAIN), answer);

  it('stands a crew in for the arc time of the plan, at the usual band', () => {
    const [crew] = report.noise;
    expect(crew?.stated).toBe(false);
    expect(crew?.tasks[0]?.level_dBA).toEqual({ least: 100, most: 120 });
    expect(crew?.tasks[0]?.source.text).toContain('up to 120 dBA at the operator’s ear');
    expect(crew?.tasks[0]?.time_min).toBeCloseTo(answer.plan!.arc_time_s.p90 / 60, 9);
  });

  it('says “not covered” wherever a value is missing, and permits nothing', () => {
    for (const one of rowsOf(report)) {
      if (one.value === null) {
        expect(one.verdict).toBe('not covered by the source');
        expect(one.note).not.toBe('');
      }
    }
    expect(row(report, 'cleaning_air').verdict).toBe('not covered by the source');
    expect(report.defers).toContain('Nothing here permits work');
  });

  it('carries every caution and every condition to stop, each figure with its source', () => {
    expect(report.cautions).toEqual(STANDING_CAUTIONS);
    expect(report.stop_work).toEqual(STOP_WORK);
    for (const { rows, figures, rules } of report.sections) {
      for (const { source } of [...rows, ...figures, ...rules]) expect(source.text).not.toBe('');
    }
  });

  it('has no limit from memory that binds', () => {
    const near = job(`${PLAIN}\nsite:\n  leads: { wearer: 100 mm }\n`);
    const { limits } = answerHazard(near, answerJob({ job: near, version: 'test' }));
    const recalled = limits.filter(({ source }) => source.provenance === 'memory');
    expect(recalled.map(({ id, hard }) => [id, hard])).toEqual([['implant_distance', false]]);
    expect(limits.map(({ id }) => id)).toContain('shade_table');
  });
});

describe('the setting that hazards are told for', () => {
  const report = answerHazard(demo, answer);

  it('has the greatest current of the plan, and the arc time that nine jobs in ten keep to', () => {
    const { passes, arc_time_s } = answer.plan!;
    expect(report.setting.current_A).toBe(Math.max(...passes.map(({ current_A }) => current_A)));
    expect(report.setting.arc_time_min).toBeCloseTo(arc_time_s.p90 / 60, 12);
  });

  it('has the current of the source where there is no plan', () => {
    const { basis: _basis, plan: _plan, ...refused } = answer;
    const { setting, limits } = answerHazard(demo, refused);
    expect(setting).toMatchObject({ of: 'source', current_A: demo.job.kit.current.most, arc_time_min: null });
    expect(limits).toEqual([]);
  });

  it('holds the upper end of a level against each rule', () => {
    for (const { tasks, rows } of report.noise) {
      const loudest = Math.max(...tasks.flatMap(({ level_dBA }) => level_dBA?.most ?? []));
      expect(rows.find(({ id }) => id === 'osha_top')!.value).toBe(loudest);
    }
    const bands = answerHazard(job(PLAIN), answer).noise[0]!;
    expect(bands.tasks[0]!.level_dBA!.most).toBeGreaterThan(bands.tasks[0]!.level_dBA!.least);
    expect(bands.rows.find(({ id }) => id === 'osha_top')!.value).toBe(bands.tasks[0]!.level_dBA!.most);
  });
});

it('asks for the air of a welder for each torch that burns', () => {
  const asked = (torches: number): number =>
    row(withSite(`  place: open_bay\n  torches: ${torches}`), 'fan_flow').figure!;
  expect(asked(1)).toBeCloseTo(56.634, 3);
  expect(asked(3)).toBeCloseTo(3 * asked(1), 9);
});

describe('what is over or short of a figure named', () => {
  const report = withSite(
    '  eyes: { shade: 9 }\n  fire: { clear: 12 m, clear_ahead: 18 m, watch: 30 min }\n  fume: { measured: [{ substance: copper, mg_per_m3: 0.3, time: 8 h }] }',
  );

  it('never reads as satisfied: an at-least rule is fallen short of, an at-most rule is gone over', () => {
    for (const id of ['shade_least', 'fire_clear_ahead', 'fire_watch_nfpa']) {
      expect(row(report, id).verdict).toBe('short of the figure named');
    }
    expect(row(report, 'hot_plate').verdict).toBe('over the figure named');
  });

  it('is gathered whole, so that it can stand first', () => {
    const rules = report.breaches.map(({ of, rule }) => `${of}: ${rule}`);
    expect(rules).toContain('Fire: Clear of what can burn, ahead along the jet');
    expect(rules).toContain('Fume and gas: Copper fume, OSHA PEL');
    expect(rules).toContain('Fume and gas: Additive index, OSHA PEL');
    const broken = rowsOf(report).filter(({ verdict }) => /^(over|short)/u.test(verdict));
    expect(broken.length).toBeGreaterThan(3);
    for (const one of broken) expect(rules.some((text) => text.endsWith(`: ${one.rule}`))).toBe(true);
    expect(
      rules.some((text) => sentenceText(text, 'metric').includes('watch after the last arc, OSHA')),
    ).toBe(false);
  });
});

describe('noise by crew', () => {
  const tasks = (rest: string): string =>
    `  crews: [{ name: A, ${rest}, tasks: [{ name: g, time: 90 min, level_dBA: 110 }, { name: h, work: other, time: 60 min, level_dBA: 100 }, { name: i, work: other, time: 330 min, level_dBA: 84 }] }]`;

  it('reads 350 % by one family and 6502 % by the other of one shift', () => {
    const [crew] = withSite(tasks('shift: 8 h')).noise;
    expect(crew!.five_dB!.pel_dose_percent.most).toBeCloseTo(350, 6);
    expect(crew!.three_dB!.dose_percent.most).toBeCloseTo(6502.187951, 5);
  });

  it('names a missing rating, and covers nothing by it', () => {
    const report = withSite(`${tasks('shift: 8 h, worn: plug_and_muff')}\n  noise: { muff_NRR_dB: 25 }`);
    expect(report.noise[0]!.protection.says).toContain('rating (NRR) of the plug is missing');
    expect(row(report, 'eu_limit').verdict).toBe('not covered by the source');
  });

  it('says where plug and muff together are not enough', () => {
    const report = withSite(
      `${tasks('shift: 8 h, worn: plug_and_muff')}\n  noise: { plug_NRR_dB: 29, muff_NRR_dB: 25 }`,
    );
    const { protection } = report.noise[0]!;
    expect(protection.attenuation_dB).toBe(16);
    expect(protection.says).toContain('together are not enough');
  });

  it('counts no protection where none is worn, whatever is in stock', () => {
    const report = withSite(`${tasks('shift: 8 h, worn: none')}\n  noise: { plug_NRR_dB: 29 }`);
    expect(report.noise[0]!.protection.attenuation_dB).toBe(0);
    expect(row(report, 'eu_limit').verdict).toBe('over the figure named');
  });

  it('reckons no dose of work whose level nobody knows', () => {
    const report = withSite('  crews: [{ name: A, tasks: [{ name: odd jobs, work: other, time: 2 h }] }]');
    expect(report.noise[0]!.missing).toContain('“odd jobs”');
    expect(report.noise[0]!.five_dB).toBeNull();
    expect(row(report, 'osha_pel').verdict).toBe('not covered by the source');
  });

  it('raises the upper end of the band for several torches, not a measured level', () => {
    const two = withSite('  torches: 2\n  crews: [{ name: A, tasks: [{ name: g, time: 1 h }] }]');
    expect(two.noise[0]!.tasks[0]!.level_dBA!.least).toBe(100);
    expect(two.noise[0]!.tasks[0]!.level_dBA!.most).toBeCloseTo(123.01, 2);
    const measured = withSite(
      '  torches: 2\n  noise: { at_ear_dBA: 109 }\n  crews: [{ name: A, tasks: [{ name: g, time: 1 h }] }]',
    );
    expect(measured.noise[0]!.tasks[0]!.level_dBA).toEqual({ least: 109, most: 109 });
  });

  it('takes a shift of no noisy work at all', () => {
    const report = withSite('  crews: [{ name: A, tasks: [{ name: rest, time: 0 min }] }]');
    expect(report.noise[0]!.missing).toContain('take no time');
    expect(() => JSON.stringify(report)).not.toThrow();
  });
});

describe('what cannot be', () => {
  it.each([
    ['  crews: [{ name: A, shift: 30 h, tasks: [{ name: g, time: 1 h }] }]', /“30 h” is outside .* to 24 h/u],
    [
      '  crews: [{ name: A, shift: 8 h, tasks: [{ name: g, time: 9 h }] }]',
      /take 9 h, longer than its shift of 8 h/u,
    ],
    [
      '  crews: [{ name: A, tasks: [{ name: g, time: 1 h }] }, { name: A, tasks: [{ name: g, time: 1 h }] }]',
      /Two crews are called “A”/u,
    ],
    ['  fire: { radius: 20 ft }', /outside what is accepted here, 10\.67 m \(35 ft\)/u],
    ['  fume: { emission_mg_per_min: 0 }', /Fume of one torch/u],
    ['  noise: { plug_NRR_dB: 400 }', /at most 50/u],
  ])('%s is refused in words of the shop', (lines, message) => {
    expect(issuesOf(lines)).toMatch(message);
  });
});

describe('with a kit', () => {
  const report = answerHazard(demo, answer, yard);

  it('holds every source and the widest hose against their figures', () => {
    expect(row(report, 'no_load_1')).toMatchObject({ value: 78, verdict: 'within the figure named' });
    expect(row(report, 'hose_bore').verdict).toBe('over the figure named');
  });

  it('lays the fire zone around the seam of the bay, with its lobe ahead of the travel', () => {
    const { fire_zone: zone } = report;
    expect(zone.plan).toBe('bay');
    const end = zone.seam_m.at(-1)!;
    expect(Math.max(...zone.with_jet_m.map(({ x_m }) => x_m))).toBeCloseTo(end.x_m + zone.ahead_m, 6);
    expect(Math.max(...zone.round_m.map(({ x_m }) => x_m))).toBeLessThan(end.x_m + 1.01 * zone.radius_m);
  });
});

describe('air', () => {
  it('holds what was measured against every set, ceilings by the highest reading', () => {
    const report = withSite(
      [
        '  fume:',
        '    measured:',
        '      - { substance: iron_oxide, mg_per_m3: 4, time: 8 h }',
        '      - { substance: copper, mg_per_m3: 0.05, time: 8 h }',
        '      - { substance: manganese, mg_per_m3: 0.3, time: 8 h }',
        '      - { substance: manganese, mg_per_m3: 6, time: 60 s }',
      ].join('\n'),
    );
    const [osha, acgih, eu] = report.fume.mixtures;
    // 4/10 + 0.05/0.1 + 6/5, the last a ceiling
    expect(osha!.index).toBeCloseTo(2.1, 6);
    expect(acgih!.verdict).toBe('over the figure named');
    expect(eu!.not_covered).toContain('Copper fume');
    const manganese = report.fume.substances.find(({ name }) => name === 'Manganese fume')!;
    expect(manganese.limits[0]!.verdict).toBe('over the figure named');
  });

  it('does not call air good by a set that leaves out what was measured', () => {
    const report = withSite('  fume: { measured: [{ substance: ozone, mg_per_m3: 0.01, time: 1 h }] }');
    expect(report.fume.mixtures.find(({ set }) => set === 'EU limit value')!.verdict).toBe(
      'not covered by the source',
    );
  });

  it('does not call air good while what is to be expected in it was not measured', () => {
    const some = withSite('  fume: { measured: [{ substance: iron_oxide, mg_per_m3: 1, time: 8 h }] }');
    const osha = some.fume.mixtures[0]!;
    expect(osha.index).toBeCloseTo(0.1, 9);
    expect(osha.not_covered).toContain('Copper fume');
    expect(osha.not_covered).not.toContain('Iron oxide fume');
    expect(osha.verdict).toBe('not covered by the source');
    const all = some.fume.substances.map(({ name }) => name);
    for (const { index, not_covered } of withSite('  torches: 1').fume.mixtures) {
      expect(index).toBeNull();
      expect(not_covered).toEqual(all);
    }
  });

  it('calls air within the figure once all that is to be expected was measured', () => {
    const clean = ['iron_oxide', 'manganese', 'chromium_vi', 'nickel', 'copper', 'carbon_monoxide'];
    const lines = [...clean, 'nitrogen_dioxide', 'ozone'].map(
      (substance) => `      - { substance: ${substance}, mg_per_m3: 0.0001, time: 8 h }`,
    );
    const [osha] = withSite(`  fume:\n    measured:\n${lines.join('\n')}`).fume.mixtures;
    expect(osha).toMatchObject({ not_covered: [], verdict: 'within the figure named' });
  });

  it('shows the air that dilution would need, for every torch', () => {
    const report = withSite(
      '  torches: 2\n  ventilation: { flow: 100 m3/min }\n  fume: { emission_mg_per_min: 500 }',
    );
    // 3 x 1000 mg/min / 10 mg/m3
    expect(row(report, 'dilution').figure).toBeCloseTo(300, 6);
    expect(row(report, 'dilution').verdict).toBe('short of the figure named');
  });

  it('does not call fans enough that are enough for iron oxide alone', () => {
    const report = withSite('  ventilation: { flow: 200 m3/min }\n  fume: { emission_mg_per_min: 500 }');
    expect(row(report, 'dilution')).toMatchObject({ value: 200, verdict: 'not covered by the source' });
    expect(row(report, 'dilution').figure).toBeCloseTo(150, 6);
    expect(row(report, 'dilution').note).toContain('copper and manganese need more');
  });
});

describe('gas of the electrode', () => {
  it('bounds the carbon monoxide from above, and from below by a tenth of the carbon', () => {
    const { figures } = withSite('  ventilation: { flow: 100 m3/min }').sections.find(
      ({ id }) => id === 'fume',
    )!;
    const of = (part: string) => figures.find(({ name }) => name.includes(part))!.value!;
    // 15.5 mm3 of electrode per ampere-minute, a little more at its 95th percentile, at 1.7 g/cm3
    const usual = 15.5e-3 * 1.7 * answer.plan!.passes[0]!.current_A;
    expect(of('Carbon burnt')).toBeGreaterThan(usual);
    expect(of('Carbon burnt')).toBeLessThan(1.7 * usual);
    expect(of('at most')).toBeCloseTo((of('Carbon burnt') * 28.01) / 12.011, 9);
    expect(of('at least')).toBeCloseTo(of('at most') / 10, 9);
  });

  it('finds fans short only where they would not do for the least of it', () => {
    const at = (flow: number) =>
      row(withSite(`  ventilation: { flow: ${flow} m3/min }`), 'dilution_carbon_monoxide');
    const { figure } = at(100);
    expect(at(0.09 * figure!).verdict).toBe('short of the figure named');
    expect(at(0.11 * figure!).verdict).toBe('not covered by the source');
    expect(at(1.01 * figure!).verdict).toBe('within the figure named');
    expect(
      withSite('  place: open_air').sections.flatMap(({ rows }) => rows.map(({ id }) => id)),
    ).not.toContain('dilution_carbon_monoxide');
  });
});

describe('coatings', () => {
  const of = (coating: string) =>
    withSite(`  workplace: changing\n  duration: short\n  fume: { coating: ${coating} }`);
  it.each([
    ['lead', 'Lead'],
    ['cadmium', 'Cadmium'],
    ['zinc', 'Zinc oxide fume'],
  ])('counts the fume of %s with its limits, and asks for more than a draught', (coating, name) => {
    const report = of(coating);
    const substance = report.fume.substances.find((one) => one.name === name)!;
    expect(substance.limits[0]!.most_mg_per_m3).toBeGreaterThan(0);
    const rules = report.sections.find(({ id }) => id === 'fume')!.rules.map(({ text }) => text);
    expect(rules.join(' ')).toContain('strip it where gouging is done');
    if (coating !== 'zinc') {
      expect(rules.join(' ')).toContain('never natural ventilation alone');
      expect(rules.filter((text) => sentenceText(text, 'metric').includes('asks for: natural'))).toEqual([]);
    }
  });
});

it('adds up the field of several torches, whose leads may lie side by side', () => {
  const one = withSite('  leads: { wearer: 2 m }');
  const two = withSite('  torches: 2\n  leads: { wearer: 2 m }');
  expect(row(two, 'field_single').value).toBeCloseTo(2 * row(one, 'field_single').value!, 9);
  expect(two.field.distances[0]!.single_mm).toBeCloseTo(2 * one.field.distances[0]!.single_mm, 6);
  expect(row(two, 'field_single').note).toContain('2 torches');
});

it('never lets oxygen stand in for air, and has the electrode changed with the power off', () => {
  const rules = (lines: string) =>
    withSite(lines)
      .sections.flatMap((section) => section.rules.map(({ text }) => text))
      .join(' ');
  expect(rules('  torches: 1')).toContain('never oxygen in its place');
  expect(rules('  torches: 1')).toContain('The electrode is changed with the power off');
  expect(rules('  torches: 1')).toContain('all-metal places');
  expect(rules('  place: closed_space')).toContain('Never oxygen to ventilate');
});

describe('the closed space', () => {
  it('asks for oxygen, fans and an attendant', () => {
    const report = withSite('  place: closed_space\n  oxygen: 18.9 %');
    expect(row(report, 'oxygen_least').verdict).toBe('short of the figure named');
    expect(row(report, 'oxygen_most').verdict).toBe('within the figure named');
    expect(row(report, 'fan_flow').note).toContain('a closed space');
    const rules = report.sections.find(({ id }) => id === 'space')!.rules.map(({ text }) => text);
    expect(rules.join(' ')).toContain('attendant outside');
  });
});

it('asks for preheat in the words of its source, and for more than that only as practice', () => {
  const { rules } = withSite('  torches: 1').sections.find(({ id }) => id === 'heat')!;
  const preheat = rules.filter(({ text }) => sentenceText(text, 'metric').startsWith('Preheat'));
  expect(preheat.map(({ source }) => source)).toEqual([
    { text: 'ASME PCC-2 Article 304, 304-2.6.2', provenance: 'confirmed' },
    { text: 'common practice, no source', provenance: 'common practice' },
  ]);
  expect(preheat[0]!.text).toContain('may be needed');
  expect(preheat[1]!.text).toContain('at least as the welding procedure asks');
});

it('finds an implant wearer who touches a lead over the figure, not uncovered', () => {
  const report = withSite('  leads: { wearer: 0 mm }');
  for (const id of ['field_single', 'field_pair']) {
    expect(row(report, id).verdict).toBe('over the figure named');
    expect(row(report, id).note).toContain('taken at 1 mm');
  }
});

describe('the shade table', () => {
  it('is advice, unless the job states it as binding; then the plan stays inside it', () => {
    const bound = answerJob({ job: job(`${PLAIN}\nsite:\n  eyes: { table: binding }\n`), version: 'test' });
    const limit = bound.plan!.limits.find(({ id }) => id === 'shade_table')!;
    expect(limit.hard).toBe(true);
    expect(Math.max(...bound.plan!.passes.map(({ current_A }) => current_A))).toBeLessThanOrEqual(1000);
    expect(answer.plan!.limits.find(({ id }) => id === 'shade_table')!.hard).toBe(false);
  });
});

it('tells the hazards of a refused job all the same, at the greatest current of its source', () => {
  const refused = job(PLAIN.replace('plus: 6 mm', 'plus: 0.2 mm'));
  const none = answerJob({ job: refused, version: 'test' });
  const report = answerHazard(refused, none);
  expect(none.plan).toBeUndefined();
  expect(report.setting).toMatchObject({ of: 'source', current_A: 1200, arc_time_min: null });
  expect(row(report, 'shade_least').note).toContain('no row above 1000 A');
  expect(report.noise).toEqual([]);
});
