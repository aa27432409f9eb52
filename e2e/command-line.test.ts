import {
  closeSync,
  existsSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  watch,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PROGRAM_VERSION } from '@furrow/contract';
import { gaugeReportSchema, heatSchema, runSchema, surveySchema } from '@furrow/engine';
import { afterAll, describe, expect, it } from 'vitest';
import { pdfPages } from './pdf-pages.ts';
import { runFurrow, serveFurrow } from './run-furrow.ts';

const EXAMPLES = fileURLToPath(new URL('../examples', import.meta.url));
const POCKET = join(EXAMPLES, 'defect-pocket.yaml');
const SEAM = join(EXAMPLES, 'penstock-seam.yaml');
const POCKET_TEXT = readFileSync(POCKET, 'utf8');
const folder = mkdtempSync(join(tmpdir(), 'furrow-command-'));

function fileWith(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const REFUSED = fileWith(
  'refused.yaml',
  POCKET_TEXT.replace('plus: 4 mm', 'plus: 0.2 mm').replace('rates:', 'plan: { gauge_stops: never }\nrates:'),
);
const BAD = fileWith('bad.yaml', POCKET_TEXT.replace('wanted: 6 mm', 'wanted: "1,500 mm"'));

/** Keys that other programs rely on. */
const CONTRACT = {
  inputs: ['revision', 'program_version', 'seed', 'posterior_id', 'knowledge', 'defaults_used'],
  plan: [
    'electrode_diameter_mm',
    'passes',
    'floor_depth_mm',
    'width_mm',
    'root_radius_mm',
    'ligament_mm',
    'assurance',
    'arc_time_s',
    'electrodes_used',
    'removed_mm3_per_mm',
    'gauge_stops',
  ],
  pass: [
    'layer',
    'offset_mm',
    'current_A',
    'arc_voltage_V',
    'push_angle_deg',
    'travel_mm_per_min',
    'depth_mm',
    'dwell_s',
  ],
};

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe.concurrent('command line', () => {
  it('prints a plan as one JSON object with the promised keys', async () => {
    const { code, out, err } = await runFurrow(['plan', POCKET, '--json']);
    expect([code, err]).toEqual([0, '']);
    const answer = JSON.parse(out);
    expect(Object.keys(answer)).toEqual(expect.arrayContaining(['inputs', 'plan', 'alternatives']));
    expect(Object.keys(answer.inputs)).toEqual(expect.arrayContaining(CONTRACT.inputs));
    expect(answer.inputs.program_version).toBe(PROGRAM_VERSION);
    const { plan } = answer;
    expect(Object.keys(plan)).toEqual(expect.arrayContaining(CONTRACT.plan));
    for (const pass of plan.passes) {
      expect(Object.keys(pass)).toEqual(expect.arrayContaining(CONTRACT.pass));
      expect(pass.depth_mm.p05).toBeLessThan(pass.depth_mm.p50);
      expect(pass.depth_mm.p50).toBeLessThan(pass.depth_mm.p95);
    }
    expect(Object.keys(plan.assurance)).toEqual(
      expect.arrayContaining(['depth_reached', 'not_too_deep', 'ligament_kept']),
    );
    for (const key of ['floor_depth_mm', 'width_mm']) {
      expect(Object.keys(plan[key])).toEqual(expect.arrayContaining(['p05', 'p50', 'p95']));
    }
    for (const key of ['arc_time_s', 'electrodes_used']) {
      expect(Object.keys(plan[key])).toEqual(expect.arrayContaining(['p50', 'p90']));
    }
  });

  it('prints the same bytes for the same job, from a file and from standard input', async () => {
    const [file, input] = await Promise.all([
      runFurrow(['plan', POCKET, '--json']),
      runFurrow(['plan', '-', '--json'], { input: POCKET_TEXT }),
    ]);
    expect(input).toEqual(file);
  });

  it('prints a plan for people, in either system of units', async () => {
    const [metric, inch] = await Promise.all([
      runFurrow(['plan', POCKET]),
      runFurrow(['plan', POCKET, '--units', 'inch']),
    ]);
    expect([metric.code, inch.code]).toEqual([0, 0]);
    expect(metric.out).toMatch(/[Tt]ravel +\d+ mm\/min/u);
    expect(inch.out).toMatch(/[Tt]ravel +[\d.]+ in\/min/u);
  });

  it.each([
    ['hazards', POCKET],
    ['supply', SEAM, '--kit', join(EXAMPLES, 'yard-kit.yaml')],
    ['plan', REFUSED],
  ])('writes every sentence out in JSON: %s', async (...args) => {
    const { out } = await runFurrow([...args, '--json']);
    expect(Object.keys(JSON.parse(out) as object).length).toBeGreaterThan(1);
    expect(out).not.toMatch(/"say":/u);
  });

  it('exits with 3 for a refusal and says what binds and what frees it', async () => {
    const { code, out, err } = await runFurrow(['plan', REFUSED, '--json']);
    expect([code, err]).toEqual([3, '']);
    const { plan, refusal } = JSON.parse(out);
    expect(plan).toBeUndefined();
    expect(refusal.binding.length).toBeGreaterThan(0);
    for (const bound of refusal.binding) {
      expect(Object.keys(bound)).toEqual(
        expect.arrayContaining(['constraint', 'demand', 'limit', 'unit', 'remedy']),
      );
    }
    const told = await runFurrow(['plan', REFUSED]);
    expect(told.code).toBe(3);
    expect(told.out).toContain(refusal.binding[0].remedy.slice(0, 20));
  });

  it.each([
    {
      what: 'a wrong amount',
      args: ['plan', BAD, '--json'],
      says: /bad\.yaml:\d+:\d+: .*1\.5 mm.*AMOUNT_AMBIGUOUS/su,
    },
    { what: 'no such file', args: ['plan', join(folder, 'none.yaml')], says: /there is no such file/u },
    { what: 'a folder', args: ['check-file', folder], says: /this is a folder/u },
    { what: 'an unknown command', args: ['gouge'], says: /unknown command/u },
    { what: 'an unknown option', args: ['plan', POCKET, '--sideways'], says: /unknown option/u },
    { what: 'unknown units', args: ['plan', POCKET, '--units', 'cubit'], says: /metric, inch/u },
    { what: 'no file', args: ['plan'], says: /missing required argument/u },
    { what: 'no place for the card', args: ['card', POCKET], says: /--output/u },
    { what: 'a port that is none', args: ['serve', '--port', '99999'], says: /0 to 65535/u },
    {
      what: 'a card in a folder that is not there',
      args: ['card', POCKET, '-o', join(folder, 'no', 'a.pdf')],
      says: /could not be written/u,
    },
  ])('exits with 2 for $what, with nothing on standard output', async ({ args, says }) => {
    const { code, out, err } = await runFurrow(args);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(says);
    expect(err).not.toMatch(/\n\s+at /u);
  });

  it.each([
    { what: 'bytes that are no text', input: Uint8Array.of(0xff, 0xfe, 0x00, 0x80), says: /UTF-8/u },
    { what: 'far too much text', input: 'a'.repeat(5_000_000), says: /bytes/u },
    { what: 'nothing', input: '', says: /\[JOB_/u },
    { what: 'text that is no job', input: 'dear all: [', says: /-:\d+:\d+: .*\[JOB_SYNTAX\]/u },
    { what: 'deep nesting', input: '['.repeat(50_000), says: /\[JOB_/u },
  ])('exits with 2 for $what', async ({ what, input, says }) => {
    const file = fileWith(`${what}.yaml`, input);
    const runs = await Promise.all([
      runFurrow(['check-file', file]),
      runFurrow(['check-file', '-'], { input }),
    ]);
    for (const { code, out, err } of runs) expect([code, out, /\n\s+at /u.test(err)]).toEqual([2, '', false]);
    expect(runs[1].err).toMatch(says);
  });

  it('checks a file and lists the defaults that stand in', async () => {
    const { code, out } = await runFurrow(['check-file', POCKET]);
    expect(code).toBe(0);
    expect(out).toMatch(/is in order.*revision [0-9a-f]{12}/u);
    expect(out).toMatch(/plan\.seed: 1 \(/u);
  });

  it('prints a JSON Schema of the job', async () => {
    const { code, out } = await runFurrow(['schema']);
    const schema = JSON.parse(out);
    expect(code).toBe(0);
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(Object.keys(schema.properties)).toEqual(
      expect.arrayContaining(['seam', 'plate', 'groove', 'kit']),
    );
    expect(schema.required).toEqual(expect.arrayContaining(['furrow', 'groove', 'kit']));
  });

  it('writes the card on a front and a back, and on one page where it says why there is no plan', async () => {
    for (const [job, exit, pages] of [
      [POCKET, 0, 2],
      [REFUSED, 3, 1],
    ] as const) {
      const card = join(folder, `${exit}.pdf`);
      const { code } = await runFurrow(['card', job, '-o', card, '--paper', 'letter']);
      expect(code).toBe(exit);
      const bytes = readFileSync(card);
      expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
      expect(pdfPages(bytes)).toBe(pages);
    }
  });

  it('leaves the old card or the new one when it is killed while it writes, never a part of one', async () => {
    const place = mkdtempSync(join(folder, 'card-'));
    const card = join(place, 'card.pdf');
    await runFurrow(['card', REFUSED, '-o', card]);
    const old = readFileSync(card);
    for (let round = 0; round < 3; round += 1) {
      writeFileSync(card, old);
      const kill = new AbortController();
      const watcher = watch(place, (_event, name) => {
        if (name !== 'card.pdf') kill.abort();
      });
      await runFurrow(['card', POCKET, '-o', card], { signal: kill.signal });
      watcher.close();
      expect(kill.signal.aborted).toBe(true);
      const bytes = readFileSync(card);
      const whole = /%%EOF\s+%furrow [0-9a-f]{64}\n$/u.test(bytes.toString('latin1'));
      expect(bytes.equals(old) || (whole && pdfPages(bytes) === 2)).toBe(true);
    }
    expect(readdirSync(place).filter((name) => name.endsWith('.pdf'))).toEqual(['card.pdf']);
  });

  it('writes no card over a file that is none', async () => {
    const notes = fileWith('notes.pdf', 'the only copy');
    const { code, out, err } = await runFurrow(['card', POCKET, '-o', notes]);
    expect([code, out, readFileSync(notes, 'utf8')]).toEqual([2, '', 'the only copy']);
    expect(err).toContain(`${notes}: nothing was written.`);
  });

  it('ends quietly when its reader has read enough', async () => {
    const run = await runFurrow(['schema'], { unread: true });
    expect([run.code, run.err]).toEqual([0, '']);
  });

  it.skipIf(!existsSync('/dev/full'))('tells that its output could not be written', async () => {
    const full = openSync('/dev/full', 'w');
    const run = await runFurrow(['schema'], { output: full });
    closeSync(full);
    expect([run.code, run.err]).toEqual([
      2,
      'The output could not be written: the disk is full; make room and try again.\n',
    ]);
  });

  it('serves the bench, tells where, and stops when asked', async () => {
    const data = join(folder, 'data');
    const served = serveFurrow(['--port', '0', '--data', data]);
    const page = await fetch(await served.url);
    expect(await page.text()).toContain('<title>Furrow</title>');
    const entry = new URL(await served.url);
    const jobs = (headers: Record<string, string>) => fetch(new URL('/api/jobs', entry), { headers });
    expect((await jobs({})).status).toBe(401);
    const token = readFileSync(join(data, 'access-token'), 'utf8').trim();
    expect(entry.searchParams.get('token')).toBe(token);
    expect((await jobs({ authorization: `Bearer ${token}` })).status).toBe(200);
    const { code, out } = await served.stop();
    expect(out).toContain(`Saved jobs live in ${data}`);
    expect(code).toBe(0);
  });
});

describe('with a kit', () => {
  const KIT = join(EXAMPLES, 'yard-kit.yaml');
  const KIT_TEXT = readFileSync(KIT, 'utf8');

  it('tells as JSON what power, leads, air and place make of the plan', async () => {
    const { code, out } = await runFurrow(['supply', SEAM, '--kit', KIT, '--json']);
    expect(code).toBe(0);
    const supply = JSON.parse(out);
    expect(Object.keys(supply)).toEqual(
      expect.arrayContaining(['limits', 'electric', 'air', 'place', 'connections', 'checks', 'time']),
    );
    expect(supply.limits.length).toBeGreaterThan(0);
    expect(supply.checks.length).toBeGreaterThan(0);
  });

  it('lists ten checks or fewer for every day, and after a change what it can have put out', async () => {
    const round = (...rest: string[]) => runFurrow(['commission', SEAM, '--kit', KIT, ...rest]);
    const [daily, leads, none, wrong] = await Promise.all([
      round('--depth', 'daily', '--json'),
      round('--depth', 'change', '--changed', 'leads', 'gauge', '--units', 'inch'),
      round('--depth', 'change'),
      round('--changed', 'leads'),
    ]);
    expect(daily.code).toBe(0);
    const { checks, left_out: leftOut, says } = JSON.parse(daily.out);
    expect(checks).toHaveLength(10);
    expect(leftOut.length).toBeGreaterThan(20);
    expect(says).toContain('It does not look for');
    expect(leads.out).toMatch(
      /After a change: \d+ checks.*Polarity.*Zero of the depth gauge.*Left out: .*Stick-out/su,
    );
    expect([none.code, wrong.code]).toEqual([2, 2]);
    expect(none.err).toContain('needs --changed with one or more of seam, electrode, leads');
  });

  it('tells the same for people, and shows the margins inside the plan', async () => {
    const [supply, plan] = await Promise.all([
      runFurrow(['supply', SEAM, '--kit', KIT, '--units', 'inch']),
      runFurrow(['plan', SEAM, '--kit', KIT, '--json']),
    ]);
    expect([supply.code, plan.code]).toEqual([0, 0]);
    expect(supply.out).toMatch(/Checks before the first arc/u);
    const ids = JSON.parse(plan.out).plan.limits.map((limit: { id: string }) => limit.id);
    expect(ids).toContain('terminal_voltage');
  });

  it('checks a kit, prints its schema, and tells a bad one by line and column', async () => {
    const bad = fileWith(
      'bad-kit.yaml',
      KIT_TEXT.replace(/no_load_voltage: [^,\n}]+/u, 'no_load_voltage: -5 V'),
    );
    const [good, schema, refused] = await Promise.all([
      runFurrow(['check-kit', KIT]),
      runFurrow(['schema', '--kit']),
      runFurrow(['check-kit', bad]),
    ]);
    expect([good.code, schema.code]).toEqual([0, 0]);
    expect(JSON.parse(schema.out)['$schema']).toContain('2020-12');
    expect([refused.code, refused.out]).toEqual([2, '']);
    expect(refused.err).toMatch(/bad-kit\.yaml:\d+:\d+: /u);
  });
});

describe('heat', () => {
  it('tells the heat as JSON in the words of the contract, with what it was computed from', async () => {
    const { code, out, err } = await runFurrow(['heat', POCKET, '--quick', '--json']);
    expect([code, err]).toEqual([0, '']);
    const { inputs, heat } = JSON.parse(out);
    expect(Object.keys(inputs)).toEqual(expect.arrayContaining(['revision', 'program_version']));
    expect(heatSchema.parse(heat)).toEqual(heat);
    expect(heat.quality).toBe('quick');
    expect(Math.abs(heat.balance.error)).toBeLessThan(1e-6);
    const { least, middle, most } = heat.back_face_degC;
    expect([least, middle, most]).toEqual([least, middle, most].toSorted((one, other) => one - other));
  });

  it('tells it for people at the place asked for, the same every time', async () => {
    const args = ['heat', SEAM, '--quick', '--station', '30 in', '--units', 'inch'];
    const [one, other] = await Promise.all([runFurrow(args), runFurrow(args)]);
    expect(one.code).toBe(0);
    expect(one.out).toContain('Section 2 ft 6 in from the start of the seam; a quick look.');
    for (const part of ['Preheat for the re-weld', 'Carburised skin', 'What it rests on', '°F']) {
      expect(one.out).toContain(part);
    }
    expect(other.out).toBe(one.out);
  });

  it('follows a stated preheat and limit of the back face', async () => {
    const text = readFileSync(SEAM, 'utf8').replace(/\nheat:[\s\S]*?(?=\n\S|$)/u, '');
    const { out } = await runFurrow([
      'heat',
      fileWith('warm.yaml', `${text}\nheat: { preheat: 120 °C, back_face_most: 900 °C }\n`),
      '--quick',
      '--json',
    ]);
    const { heat } = JSON.parse(out);
    expect(heat.preheat.gouging).toMatchObject({ stated: true });
    expect(heat.preheat.gouging.temperature_degC).toBeCloseTo(120, 9);
    // the plate cools a little until the torch comes by
    expect(heat.passes[0].before_degC.middle).toBeGreaterThan(110);
    expect(heat.passes[0].before_degC.middle).toBeLessThanOrEqual(120);
    expect(heat.limits.map(({ title }: { title: string }) => title).join(' ')).toMatch(/back face/iu);
  });

  it('refuses a place off the seam and bad input with 2, and a job without a plan with 3', async () => {
    const [off, wrong, refused] = await Promise.all([
      runFurrow(['heat', SEAM, '--station', '9 m']),
      runFurrow(['heat', SEAM, '--station', 'the middle']),
      runFurrow(['heat', REFUSED]),
    ]);
    expect([off.code, wrong.code, refused.code]).toEqual([2, 2, 3]);
    expect(off.err).toContain('9 m is not on the seam');
    expect(refused.err).toContain('No plan, so no heat to follow');
    expect([off.out, wrong.out, refused.out]).toEqual(['', '', '']);
  });
});

describe('furrow rehearse and furrow run', () => {
  it('plays a rig and finds in its log what was made to happen, at its place', async () => {
    const log = join(folder, 'rehearsal.csv');
    const played = await runFurrow(['rehearse', POCKET, '--faults', 'arc_out@90 mm:1 s', '-o', log]);
    expect(played).toMatchObject({ code: 0 });
    const reviewed = await runFurrow(['run', log, '--job', POCKET, '--json']);
    expect(reviewed.code).toBe(0);
    const report = runSchema.parse(JSON.parse(reviewed.out));
    expect(report.inputs.rehearsal).toBe(true);
    const [out] = report.events.filter(({ kind }) => kind === 'arc_out');
    expect(Math.abs(out!.from_mm! - 90)).toBeLessThan(3 * out!.place_sd_mm!);
    const text = await runFurrow(['run', log, '--units', 'inch']);
    expect(text.out).toContain('A rehearsal');
    expect(text.out).not.toMatch(/\d mm\b/u);
  });

  it('tells of a log that cannot be read on standard error alone', async () => {
    for (const content of ['', 'hello', 'a,b\n1,2\n', new Uint8Array([0, 1, 2, 0])]) {
      const refused = await runFurrow(['run', fileWith('no-log.csv', content), '--json']);
      expect(refused.code).toBe(2);
      expect(refused.out).toBe('');
      expect(refused.err).toContain('no-log.csv');
    }
  });
});

describe('furrow gauge', () => {
  const GAUGE = join(EXAMPLES, 'gauges/bridge-gauge.yaml');

  it('says what one reading is worth, and everything as JSON', async () => {
    const text = await runFurrow(['gauge', GAUGE]);
    expect([text.code, text.out.split('\n')[0]]).toEqual([
      0,
      expect.stringMatching(/^bridge gauge 3: one reading is within /u),
    ]);
    const { out } = await runFurrow(['gauge', GAUGE, '--json']);
    expect(gaugeReportSchema.safeParse(JSON.parse(out)).success).toBe(true);
  });

  it('ends with 2 where a study is not whole', async () => {
    const told = await runFurrow([
      'gauge',
      fileWith('gauge.yaml', 'furrow_gauge: 1\ngauge: g\ncrossed: []\n'),
    ]);
    expect([told.code, told.out]).toEqual([2, '']);
    expect(told.err).toContain('gauge.yaml');
  });
});

describe('furrow survey', () => {
  const table = fileWith(
    'gauge.csv',
    'station (m);depth (mm)\n0,3;15\n1,7;15\n2,4;9\n2,5;9,1\n2,6;9\n3,8;15\n5,2;15\n',
  );

  it('tells the verdict in words first, and everything as JSON with the keys others rely on', async () => {
    const text = await runFurrow(['survey', table, '--job', SEAM]);
    expect(text.code).toBe(0);
    expect(text.out.split('\n')[0]).toMatch(/^The groove fails: /u);
    const json = await runFurrow(['survey', table, '--job', SEAM, '--json', '-o', join(folder, 'survey')]);
    const report = JSON.parse(json.out);
    expect(Object.keys(report)).toEqual(['inputs', 'reading', 'sections', 'seam', 'gauge_check', 'remarks']);
    expect(Object.keys(report.seam)).toEqual(
      expect.arrayContaining(['curve', 'stretches', 'rule', 'measure_next', 'recut']),
    );
    expect(surveySchema.safeParse(report).success).toBe(true);
    expect(readdirSync(join(folder, 'survey')).sort()).toEqual([
      'depth-curve.csv',
      'depth-curve.dxf',
      'depth-curve.svg',
    ]);
  });

  it('adds what was measured to the trials of the shop, and says what it left out', async () => {
    const trials = fileWith('trials.yaml', 'furrow_trials: 1\nshop: bay 2\n# kept by hand\nentries: []\n');
    // more passes than any plan of this seam has
    const ran = `passes:\n${[1, 2, 3, 4].map((number) => `  - { number: ${number}, travel: 700 mm/min }\n`).join('')}`;
    const readings = fileWith(
      'readings.yaml',
      `furrow_readings: 1\n${ran}stations:\n  - { at: 3 m, depth: 7.5 mm, after_pass: 1 }\n  - { at: 3 m, depth: 15 mm }\n  - { at: 4 m, depth: 15 mm }\n`,
    );
    const told = await runFurrow(['survey', readings, '--job', SEAM, '--teach', trials]);
    expect(told.code).toBe(0);
    const text = readFileSync(trials, 'utf8');
    expect(text).toContain('# kept by hand');
    expect(text).toMatch(/id: j-01[\s\S]*travel: 700 mm\/min[\s\S]*depth: 7\.5 mm/u);
    // where the floor between was not read, both layers teach together
    expect(text).toMatch(/below: \[[\s\S]*travel: 700 mm\/min[\s\S]*at: 4 m, depth: 15 mm/u);
    expect(told.out).toContain('3 readings can teach the shop how deep it cuts, as entry j-01');
    const known = await runFurrow(['knowledge', trials, '--json']);
    expect(JSON.parse(known.out).knowledge.jobs).toBe(1);
    const alone = await runFurrow(['survey', readings, '--teach', trials]);
    expect([alone.code, readFileSync(trials, 'utf8')]).toEqual([2, text]);
  });

  it('takes the gauge that the record names, from beside it, and one that a person names before that', async () => {
    const record = readFileSync(new URL('../examples/readings/penstock-seam.yaml', import.meta.url), 'utf8');
    const gauge = fileURLToPath(new URL('../examples/gauges/bridge-gauge.yaml', import.meta.url));
    const named = fileWith('named.yaml', record.replace('../gauges/bridge-gauge.yaml', 'kept.yaml'));
    fileWith('kept.yaml', readFileSync(gauge, 'utf8'));
    const report = JSON.parse((await runFurrow(['survey', named, '--job', SEAM, '--json'])).out);
    expect(report.inputs.gauge_u_from).toMatch(/^bridge gauge 3: a crossed gauge study/u);
    expect(report.inputs.gauge_u_mm).toBeCloseTo(0.2141, 3);
    const lost = fileWith('lost.yaml', record.replace('../gauges/bridge-gauge.yaml', 'nowhere.yaml'));
    const without = await runFurrow(['survey', lost, '--job', SEAM]);
    expect([without.code, without.err]).toEqual([
      2,
      expect.stringContaining('nowhere.yaml: there is no such file'),
    ]);
    expect((await runFurrow(['survey', lost, '--job', SEAM, '--gauge', gauge])).code).toBe(0);
  });

  it('ends with 2 and the message where nothing can be read', async () => {
    const nothing = await runFurrow(['survey', fileWith('notes.txt', 'hello there\nworld\n')]);
    expect(nothing.code).toBe(2);
    expect(nothing.err).toMatch(/notes\.txt: .*SURVEY_NOT_READABLE/su);
  });
});
