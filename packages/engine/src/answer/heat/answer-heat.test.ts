import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type ReadJob, readJob } from '../../job/index.ts';
import { metalOf } from '../../material/index.ts';
import { stationCuts } from '../../plan/index.ts';
import { joinSentences, type Sentence, sentencesWritten, sentenceText } from '../../quantity/index.ts';
import { predictWidth, publishedBelief } from '../../removal/index.ts';
import type { HeatRange } from '../../result/index.ts';
import { answerJob } from '../job/answer-job.ts';
import { answerHeat, type HeatQuestion } from './answer-heat.ts';
import type { HeatAnswer } from './heat-answer.ts';

const PENSTOCK = readFileSync(new URL('../../../../../examples/penstock-seam.yaml', import.meta.url), 'utf8');
/** The demo job with its heat part set by the test, run quickly and without pauses, so that waits are those of the heat. */
const BARE = PENSTOCK.replace(/^heat:\n(?: .*\n)+/m, '').replace(
  'rates:\n',
  'plan: { objective: time }\nrates:\n  layer_time: 0 s\n  layer_cleaning_min_per_m: 0\n',
);

function read(text: string): ReadJob {
  const outcome = readJob(text);
  if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
  return outcome.value;
}

function heatOf(text: string, question: HeatQuestion = { quality: 'quick' }): HeatAnswer | null {
  const job = read(text);
  const solving = answerHeat(job, answerJob({ job, version: 'test' }), question);
  let last = 0;
  for (let step = solving.next(); ; step = solving.next()) {
    if (step.done) return step.value;
    expect(step.value).toBeGreaterThanOrEqual(last - 1e-9);
    expect(step.value).toBeLessThanOrEqual(1 + 1e-9);
    last = step.value;
  }
}

/** Sentences as a metric reader has them. */
function joined(sentences: readonly Sentence[]): string {
  return sentenceText(joinSentences(sentences), 'metric');
}

function expectOrdered({ least, middle, most }: HeatRange): void {
  // a thousandth is what the field's own time steps leave open
  expect(middle).toBeGreaterThanOrEqual(least - 1e-3);
  expect(most).toBeGreaterThanOrEqual(middle - 1e-3);
}

/** Fails on the first number that JSON cannot carry. */
function expectFinite(value: unknown, path: string): void {
  if (typeof value === 'number') expect(Number.isFinite(value), path).toBe(true);
  else if (typeof value === 'object' && value !== null) {
    for (const [key, item] of Object.entries(value)) expectFinite(item, `${path}.${key}`);
  }
}

describe('the heat of the demo job', () => {
  const { report, field } = heatOf(BARE)!;

  it('is told as bands in order, in numbers that JSON can carry', () => {
    expectFinite(report, 'report');
    for (const range of [
      report.kept_share,
      report.back_face_degC,
      report.t85_s!,
      report.width_past_ac1_mm!,
      report.width_past_ac3_mm!,
      report.depth_past_ac1_mm!,
      ...report.passes.flatMap((pass) => [pass.kept_kJ_per_mm, pass.before_degC, pass.at_station_s]),
    ]) {
      expectOrdered(range);
    }
    expect(report.kept_share.most - report.kept_share.least).toBeGreaterThan(0.05);
  });

  it('does not let a pass keep and lose more than its arc gives', () => {
    for (const pass of report.passes) {
      expect(pass.kept_kJ_per_mm.most + 0.85 * pass.with_melt_kJ_per_mm).toBeLessThan(pass.gross_kJ_per_mm);
    }
  });

  it('closes the balance: what was given is cut out, lost or stored', () => {
    const { given_kJ_per_m, cut_out_kJ_per_m, lost_kJ_per_m, stored_kJ_per_m, error } = report.balance;
    const kept = report.passes.reduce((sum, pass) => sum + pass.kept_kJ_per_mm.middle, 0);
    expect(given_kJ_per_m / 1000).toBeCloseTo(kept, 6);
    expect(Math.abs(given_kJ_per_m - cut_out_kJ_per_m - lost_kJ_per_m - stored_kJ_per_m)).toBeLessThan(1e-3);
    expect(error).toBeLessThan(1e-6);
  });

  it('heats less of the plate past Ac3 than past Ac1, and the face past both', () => {
    expect(report.transformation!.ac3_degC).toBeGreaterThan(report.transformation!.ac1_degC);
    for (const end of ['least', 'middle', 'most'] as const) {
      expect(report.width_past_ac3_mm![end]).toBeLessThan(report.width_past_ac1_mm![end]);
      expect(report.depth_past_ac1_mm![end]).toBeGreaterThan(0);
    }
  });

  it('shows the passes in time, each after the one before and the first when the torch has come there', () => {
    const times = report.passes.map((pass) => pass.at_station_s.middle);
    expect(times[0]).toBeGreaterThan(60);
    expect([...times].sort((a, b) => a - b)).toEqual(times);
    const frames = field.frames.map((frame) => frame.time);
    expect([...frames].sort((a, b) => a - b)).toEqual(frames);
    expect(frames.length).toBeGreaterThan(40);
    expect(frames.length).toBeLessThan(130);
    expect(new Set(field.frames.map((frame) => frame.pass)).size).toBe(times.length + 1);
    for (const time of times) expect(frames.some((each) => each > time && each < time + 2)).toBe(true);
  });

  it('puts two methods of preheat side by side with the reasons, and gouges at the re-weld’s', () => {
    const { methods, differences, gouging } = report.preheat!;
    expect(methods[0]!.temperature_degC).toBeCloseTo(81.56, 1);
    expect(methods[1]!.parts.find(({ name }) => name.includes('Pcm'))!.value).toBeCloseTo(0.24167, 4);
    expect(differences.length).toBeGreaterThan(3);
    expect(gouging).toMatchObject({ stated: false, temperature_degC: methods[0]!.temperature_degC });
    const recalled = methods.filter(({ source }) => source.provenance === 'memory');
    expect(recalled.length).toBe(2);
  });

  it('gives hardness as a band that is wider than its formulas', () => {
    const { least_HV, most_HV, formulas, skin_HV } = report.hardness!;
    for (const { value_HV } of formulas) {
      expect(value_HV.least).toBeGreaterThanOrEqual(least_HV + 27.9);
      expect(value_HV.most).toBeLessThanOrEqual(most_HV - 27.9);
      expectOrdered(value_HV);
    }
    expect(skin_HV).toBeGreaterThan(most_HV);
  });

  it('adds the ground skin to the refill of the whole seam', () => {
    const { gouged_area_mm2, ground_area_mm2, added_percent, refill_kg, added_kg } = report.skin;
    expect(added_percent).toBeCloseTo((ground_area_mm2 / gouged_area_mm2 - 1) * 100, 9);
    // the cap of the weld is a tenth of what fills the groove
    expect(refill_kg).toBeCloseTo(1.1 * ground_area_mm2 * 6000 * 7850e-9, 9);
    expect(added_kg / refill_kg).toBeCloseTo(1 - gouged_area_mm2 / ground_area_mm2, 9);
  });

  it('tells for which pass the balance asks for more than arcs were measured to bring', () => {
    const { report: much } = heatOf(withHeat('kept_least: 60 %, kept_most: 80 %'))!;
    const told = [report, much]
      .flatMap(({ cautions }) => cautions)
      .map((caution) => sentenceText(caution, 'metric'))
      .filter((caution) => caution.includes('balances only if'));
    const beyond = [...report.passes, ...much.passes].filter(
      ({ reaching_share }) => reaching_share.middle > 0.84,
    );
    expect(told.map((caution) => /^Pass (\d+)/u.exec(caution)![1])).toEqual(
      beyond.map(({ number }) => String(number)),
    );
    expect(beyond.length).toBeGreaterThan(0);
    for (const { reaching_share, kept_kJ_per_mm, gross_kJ_per_mm } of report.passes) {
      expectOrdered(reaching_share);
      expect(reaching_share.middle).toBeGreaterThan(kept_kJ_per_mm.middle / gross_kJ_per_mm + 0.3);
    }
  });

  it('says that nothing was measured of the heat kept', () => {
    expect(joined(report.cautions)).toContain('has not been measured for this process');
    expect(report.assumptions.map(({ topic }) => topic)).toContain('Heat that reaches the work');
  });
});

it('keeps temperatures and thicknesses of its sentences until the reader’s units are known', () => {
  const { report } = heatOf(withHeat('interpass_most: 300 degC, preheat: 100 degC'))!;
  const inch = JSON.stringify(sentencesWritten(report, 'inch'));
  expect(inch).toContain(
    'lets the plate be at 572 °F between passes; for this metal at most 482 °F is usual',
  );
  expect(inch).toContain('The whole plate is at 212 °F');
  for (const key of ['cautions', 'cooling_remarks', 'assumptions'] as const) {
    const told = JSON.stringify(
      sentencesWritten(report, 'inch')[key].map((one) => (typeof one === 'string' ? one : one.text)),
    );
    expect(
      told.replaceAll(
        /degC by|EN [\d-]+|from \d+ to \d+ degC|above \d+ degC|(?:above|below|beyond|about|at|to) \d+ degC/gu,
        '',
      ),
    ).not.toMatch(/\d °C|\d mm\b/u);
  }
  expect(JSON.stringify(sentencesWritten(report, 'metric'))).toContain('The whole plate is at 100 °C');
});

const withHeat = (part: string): string => BARE.replace('\nplate:', `\nheat: { ${part} }\n\nplate:`);

it('is null for a job without a plan', () => {
  const refused = BARE.replace('{ least: 200 A, most: 1200 A }', '{ least: 100 A, most: 300 A }');
  expect(heatOf(refused)).toBeNull();
});

it('tells no hardness without a composition, and of the preheat only the table by thickness, and why, and has the skin ground all the same', () => {
  const { report } = heatOf(BARE.replace(/\n {2}composition:.*/, ''))!;
  expect(joined(report.cautions)).toContain('Grind the skin off');
  expect(report).toMatchObject({ hardness: null, preheat: { gouging: { known: false } } });
  expect(report.hardness_missing).toContain('composition');
  expect(report.preheat!.methods.map(({ method }) => method)).toEqual([
    'AWS D1.1, prequalified table, category B',
  ]);
  expect(joined(report.preheat!.differences)).toContain('composition');
  expect(report.assumptions.some(({ topic }) => topic === 'Composition')).toBe(true);
});

it('takes the share of heat that the job states, and gouges at the stated preheat', () => {
  const { report } = heatOf(withHeat('kept_least: 30 %, kept_most: 40 %, preheat: 60 degC'))!;
  expect(report.kept_share.least).toBeCloseTo(0.3, 12);
  expect(report.kept_share.middle).toBeCloseTo(0.35, 12);
  expect(report.kept_share.most).toBeCloseTo(0.4, 12);
  expect(report.preheat!.gouging).toMatchObject({ stated: true });
  expect(report.limits.find(({ id }) => id === 'gouging_preheat')).toMatchObject({
    verdict: 'fails',
    hard: false,
  });
});

it('waits for the interpass temperature where one is low, longer for more heat', () => {
  const { report } = heatOf(withHeat('interpass_most: 52 degC, preheat: 50 degC, kept_least: 30 %'))!;
  const waits = report.passes.slice(1).map(({ wait_s }) => wait_s);
  expect(Math.max(...waits.map(({ most }) => most))).toBeGreaterThan(0);
  for (const pass of report.passes.slice(1)) expect(pass.before_degC.most).toBeLessThan(52.2);
});

it('cautions where the interpass temperature is never reached', () => {
  const { report } = heatOf(withHeat('interpass_most: 70 degC, preheat: 80 degC, losses: none'))!;
  expectFinite(report, 'report');
  expect(joined(report.cautions)).toContain('is not reached within a day');
});

it('holds the back face and the hardness against what the job states, as soft limits', () => {
  const { report } = heatOf(withHeat('back_face: paint, back_face_most: 360 degC, hardness_most_HV: 350'))!;
  const byId = new Map(report.limits.map((limit) => [limit.id, limit]));
  expect(byId.get('back_face_field')).toMatchObject({ verdict: 'holds', demand: report.back_face_degC.most });
  expect(byId.get('hardness')).toMatchObject({ verdict: 'fails', hard: false });
});

it('holds stainless steel to its own interpass temperature, and has its skin ground', () => {
  const stainless = BARE.replace('carbon_steel', 'austenitic_stainless')
    .replace('plus: 6 mm', 'plus: 9 mm')
    .replace('ligament_least: 10', 'ligament_least: 6')
    .replace(/\n {2}composition:.*/u, '');
  const known = read(stainless);
  expect(known.job.heat.interpass_most).toBeCloseTo(423.15, 9);
  expect(known.defaultsUsed.find(({ path }) => path === 'heat.interpass_most')).toMatchObject({
    value: '150 °C',
  });
  const { report } = heatOf(stainless)!;
  expect(report.hardness).toBeNull();
  const cautions = joined(report.cautions);
  expect(cautions).toContain('Grind the skin off');
  expect(cautions).not.toContain('HV');
  const hotter = heatOf(stainless.replace('\nplate:', '\nheat: { interpass_most: 250 degC }\nplate:'))!;
  expect(joined(hotter.report.cautions)).toContain('for this metal at most 150 °C is usual');
});

it('works out neither preheat nor hardness where manganese is not stated: counted as absent it would ask for too little', () => {
  const { report } = heatOf(BARE.replace(/composition: \{[^}]*\}/u, 'composition: { C: 0.16 }'))!;
  expect(report.hardness).toBeNull();
  expect(report.preheat!.gouging.known).toBe(false);
  expect(joined(report.preheat!.differences)).toContain('manganese');
});

it('names the elements that it counts as absent', () => {
  const { report } = heatOf(BARE)!;
  expect(joined(report.preheat!.methods[0]!.remarks)).toContain('counted as absent: Mo, Cr, Cu, Ni');
});

it('takes the hardness where the face cools quickest, not in its middle', () => {
  const { t85_s, hardness } = heatOf(BARE)!.report;
  const reached = /the times here reach from ([\d.]+) to/u.exec(hardness!.note)![1];
  expect(Number(reached)).toBeLessThan(Math.min(t85_s!.least, t85_s!.middle, t85_s!.most) + 1e-3);
});

it('follows the most heat where the groove is deepest', () => {
  const known = read(BARE);
  const { job } = known;
  const { plan } = answerJob({ job: known, version: 'test' }).basis!;
  const passWidth = predictWidth(
    publishedBelief(metalOf(job.plate.material, job.plate.composition), job.seam.position),
    plan.electrode.diameter,
  ).p50;
  const passes = stationCuts({ job, plan, passWidth, station: 3 });
  const deepest = (floor: readonly { depth: number }[]): number =>
    Math.max(...floor.map(({ depth }) => depth));
  expect(deepest(passes.at(-1)!.floor)).toBeCloseTo(plan.floorDepth.p50, 4);
  expect(deepest(passes.at(-1)!.deepFloor)).toBeCloseTo(plan.floorDepth.p95, 4);
});

it('looks at the place that is asked for, later the farther along', () => {
  const at = (station: number): number =>
    heatOf(BARE, { quality: 'quick', station })!.report.passes[0]!.at_station_s.middle;
  expect(at(1)).toBeLessThan(at(5));
});

it('follows the whole of a short seam in three dimensions, behind as hot as a section of it within its grid or hotter', () => {
  const { ends } = heatOf(BARE.replace('length: 6 m', 'length: 60 mm'))!.report;
  expect(ends).toMatchObject({ window_mm: 60, whole_seam: true });
  expect(ends!.back_face_degC).toBeGreaterThan(100);
  expect(ends!.back_face_degC).toBeGreaterThan(ends!.section_back_face_degC - 5);
});

it('has no end to follow on a girth, nor in a quick look at a long seam', () => {
  const girth = BARE.replace('length: 6 m', 'diameter: 2 m').replace('path: straight', 'path: girth');
  expect(heatOf(girth)!.report.ends).toBeUndefined();
  expect(heatOf(BARE)!.report.ends).toBeUndefined();
});

it('estimates the error of its grid when refined, and follows the end of the seam', () => {
  const { report } = heatOf(BARE, { quality: 'refined' })!;
  expect(report.ends).toMatchObject({ window_mm: 48, whole_seam: false });
  expect(report.grid_error_percent).toBeGreaterThan(0);
  expect(report.grid_error_percent).toBeLessThan(15);
});
