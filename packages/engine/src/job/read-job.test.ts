import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ISSUE_CODES, type Issue } from '../issue/index.ts';
import { jobFields } from './fields.ts';
import { JOB_TEXT_MOST, type ReadJob, readJob } from './read-job.ts';

const EXAMPLES = new URL('../../../../examples/', import.meta.url);
const FILES = readdirSync(EXAMPLES).filter((name) => name.endsWith('.yaml') && !name.endsWith('-kit.yaml'));

/** A whole job with one field to a line, so that a test can name the line it changes. */
const JOB = `furrow: 1
title: Trial seam
seam:
  length: 2 m
plate:
  thickness: 25 mm
groove:
  depth:
    wanted: 8 mm
    plus: 3 mm
  width:
    least: 10 mm
    most: 20 mm
kit:
  electrodes:
    - diameter: 3/8 in
      count: 20
  current:
    least: 200 A
    most: 900 A
  travel:
    least: 6 in/min
    most: 100 in/min
`;

function changed(from: string, to: string): string {
  expect(JOB.split(from).length, `“${from}” stands once in the job`).toBe(2);
  return JOB.replace(from, to);
}

function good(text: string): ReadJob {
  const outcome = readJob(text);
  expect(outcome).toMatchObject({ ok: true });
  return (outcome as Extract<typeof outcome, { ok: true }>).value;
}

function issues(text: string): readonly Issue[] {
  const outcome = readJob(text);
  expect(outcome.ok).toBe(false);
  return outcome.ok ? [] : outcome.issues;
}

function onlyIssue(text: string): Issue {
  const found = issues(text);
  expect(found).toHaveLength(1);
  return found[0]!;
}

describe('a job that is well written', () => {
  it('comes out in SI', () => {
    const { job } = good(JOB);
    expect(job.seam).toMatchObject({ length: 2, path: 'straight', position: 'flat' });
    expect(job.plate).toMatchObject({ material: 'carbon_steel', thickness: 0.025 });
    expect(job.kit.electrodes[0]!.diameter).toBeCloseTo(0.009525, 12);
    expect(job.kit.travel.most).toBeCloseTo((100 * 0.0254) / 60, 12);
    expect(job.kit.push_angle).toBeCloseTo(Math.PI / 4, 12);
    expect(job.groove.assurance).toBeCloseTo(0.95, 12);
  });

  it.each(FILES)('%s reads', (name) => {
    good(readFileSync(new URL(name, EXAMPLES), 'utf8'));
  });

  it('may be JSON', () => {
    const json = JSON.stringify({
      furrow: 1,
      title: 'Trial seam',
      seam: { length: '2 m' },
      plate: { thickness_mm: 25 },
      groove: { depth: { wanted: '8 mm', plus_mm: 3 }, width: { least: '10 mm', most: '20 mm' } },
      kit: {
        electrodes: [{ diameter: '3/8 in', count: 20 }],
        current: { least_A: 200, most_A: 900 },
        travel: { least: '6 in/min', most: '100 in/min' },
      },
    });
    expect(good(json).revision).toBe(good(JOB).revision);
  });

  it.each([
    ['thickness: 25 mm', 'thickness_mm: 25'],
    ['thickness: 25 mm', 'thickness_cm: 2.5'],
    ['length: 2 m', 'length_m: 2'],
    ['least: 200 A', 'least_A: 200'],
    ['least: 6 in/min', 'least_in_per_min: 6'],
    ['plus: 3 mm', 'plus_mm: 3.0e0'],
  ])('takes “%s” also as “%s”', (plain, keyed) => {
    expect(good(changed(plain, keyed)).revision).toBe(good(JOB).revision);
  });

  it('takes the girth from the diameter', () => {
    const { job } = good(changed('length: 2 m', 'path: girth\n  diameter: 1.5 m'));
    expect(job.seam.length).toBeCloseTo(Math.PI * 1.5, 12);
  });

  it('follows references', () => {
    const text = changed(
      '    - diameter: 3/8 in\n      count: 20',
      '    - &e { diameter: 3/8 in, count: 20 }\n    - *e',
    );
    expect(good(text).job.kit.electrodes).toHaveLength(2);
  });
});

describe('defaults', () => {
  it('lists each one, with what stood in and why', () => {
    const { defaultsUsed } = good(changed('      count: 20\n', ''));
    expect(defaultsUsed).toContainEqual({
      path: 'groove.assurance',
      value: '95 %',
      why: 'the usual level of this program',
    });
    const paths = defaultsUsed.map(({ path }) => path);
    expect(new Set(paths).size).toBe(paths.length);
    const withFallback = jobFields()
      .filter(({ fallback }) => fallback !== undefined)
      // of the lists this file has electrodes only: a list that is not there has no entries to fill in
      .filter(({ path }) => !path.includes('.*') || path.startsWith('kit.electrodes.*'))
      .map((field) => field.path.replace('.*', '[0]'));
    // what hangs on the rest of the job has no text in the form
    expect([...paths].sort()).toEqual([...withFallback, 'heat.interpass_most'].sort());
  });

  it('lists none that the file states', () => {
    const { defaultsUsed } = good(`${JOB}rates:\n  labour_per_hour: 50\n`);
    expect(defaultsUsed.map(({ path }) => path)).not.toContain('rates.labour_per_hour');
  });

  it('takes a field left empty as one left out', () => {
    const read = good(`${JOB}rates:\n  labour_per_hour:\n`);
    expect(read.defaultsUsed.map(({ path }) => path)).toContain('rates.labour_per_hour');
    expect(read.revision).toBe(good(JOB).revision);
  });
});

describe('the revision', () => {
  it('does not depend on comments, layout, order of keys or line ends', () => {
    const { revision } = good(JOB);
    expect(revision).toMatch(/^[0-9a-f]{64}$/);
    expect(good(`# a comment\n\n${JOB}`).revision).toBe(revision);
    expect(good(JOB.replaceAll('\n', '\r\n')).revision).toBe(revision);
    expect(good(`\uFEFF${JOB}`).revision).toBe(revision);
    expect(
      good(changed('    least: 200 A\n    most: 900 A', '    most: 900 A # amperes\n    least: 200 A'))
        .revision,
    ).toBe(revision);
    expect(good(changed('  length: 2 m', '  { length: 2 m }')).revision).toBe(revision);
    expect(good(changed('thickness: 25 mm', 'thickness: "25.0 mm"')).revision).toBe(revision);
  });

  it('is the same for a default written out', () => {
    expect(good(`${JOB}plan:\n  seed: 1\n`).revision).toBe(good(JOB).revision);
  });

  it.each([
    ['thickness: 25 mm', 'thickness: 25.1 mm'],
    ['title: Trial seam', 'title: Trial seams'],
    ['count: 20', 'count: 21'],
    ['most: 900 A', 'most: 901 A'],
  ])('differs where “%s” becomes “%s”', (from, to) => {
    expect(good(changed(from, to)).revision).not.toBe(good(JOB).revision);
  });

  it('depends on the order of the electrodes, which the planner sees', () => {
    const two = (first: string, second: string) =>
      changed('    - diameter: 3/8 in\n      count: 20', `    - ${first}\n    - ${second}`);
    const a = '{ diameter: 3/8 in, count: 20 }';
    const b = '{ diameter: 1/2 in, count: 20 }';
    expect(good(two(a, b)).revision).not.toBe(good(two(b, a)).revision);
  });
});

describe('an amount', () => {
  it.each([
    ['a bare number', '25'],
    ['a bare number in quotes', '"25"'],
  ])('that is %s is ambiguous, and both readings are shown', (_what, written) => {
    expect(onlyIssue(changed('thickness: 25 mm', `thickness: ${written}`))).toMatchObject({
      code: 'AMOUNT_AMBIGUOUS',
      path: 'plate.thickness',
      position: { line: 6, column: 14 },
      read: '25',
      nearest: '25 mm',
      message: expect.stringMatching(/25 mm.*25 in/),
    });
  });

  it.each([
    ['AMOUNT_AMBIGUOUS', '"1,500 mm"', '1,500 mm', '1.5 mm'],
    ['AMOUNT_UNIT', '25 mmm', '25 mmm', '25 mm'],
    ['AMOUNT_KIND', '25 A', '25 A', undefined],
    ['AMOUNT_NOT_UNDERSTOOD', 'thick', 'thick', '9.5 mm'],
    ['AMOUNT_RANGE', '1 mm', '1 mm', expect.stringContaining('2.0 mm')],
    ['AMOUNT_RANGE', '9 m', '9 m', expect.stringContaining('1.00 m')],
  ] as const)('is told as %s where %s is written', (code, written, read, nearest) => {
    const issue = onlyIssue(changed('thickness: 25 mm', `thickness: ${written}`));
    expect(issue).toMatchObject({ code, path: 'plate.thickness', position: { line: 6, column: 14 }, read });
    expect(issue.nearest).toEqual(nearest);
    expect(issue.accepted).toMatch(/ (mm|in)/);
  });

  it.each(['[25]', '{ mm: 25 }', 'true'])('may not be %s', (written) => {
    const issue = onlyIssue(changed('thickness: 25 mm', `thickness: ${written}`));
    expect(issue).toMatchObject({
      code: 'JOB_FIELD_VALUE',
      path: 'plate.thickness',
      accepted: expect.stringContaining('9.5 mm'),
      position: { line: 6 },
    });
  });

  it('is written as text even where a bare number would be clear', () => {
    expect(onlyIssue(changed('groove:', 'groove:\n  assurance: 0.95'))).toMatchObject({
      code: 'JOB_FIELD_VALUE',
      path: 'groove.assurance',
      read: '0.95',
      accepted: expect.stringContaining('%'),
    });
    good(changed('groove:', 'groove:\n  assurance: "0.95"'));
  });

  it.each(['.nan', '.inf', '-.inf'])('may not be %s, with or without its unit in the key', (written) => {
    expect(issues(changed('thickness: 25 mm', `thickness: ${written}`))).not.toEqual([]);
    expect(issues(changed('thickness: 25 mm', `thickness_mm: ${written}`))).not.toEqual([]);
  });

  it('has the place of the key as written when its unit stands in the key', () => {
    expect(onlyIssue(changed('thickness: 25 mm', 'thickness_mm: 25000'))).toMatchObject({
      code: 'AMOUNT_RANGE',
      path: 'plate.thickness',
      position: { line: 6, column: 17 },
    });
  });
});

describe('a field', () => {
  it.each([
    ['thickness: 25 mm', 'thickness: 25 mm\n  thickness_mm: 25', 'plate.thickness_mm'],
    ['thickness: 25 mm', 'thickness_in: 1\n  thickness_mm: 25', 'plate.thickness_mm'],
    ['thickness: 25 mm', 'thickness_mm: 25\n  thickness: 25 mm', 'plate.thickness_mm'],
  ])('stated twice is refused: “%s” as “%s”', (from, to, path) => {
    expect(onlyIssue(changed(from, to))).toMatchObject({
      code: 'JOB_FIELD_UNKNOWN',
      path,
      nearest: 'thickness',
      message: expect.stringContaining('stated twice'),
    });
  });

  it('with its unit in its key takes a number only', () => {
    const found = issues(changed('thickness: 25 mm', 'thickness_mm: 25 mm'));
    expect(found.map(({ code }) => code).sort()).toEqual(['JOB_FIELD_MISSING', 'JOB_FIELD_UNKNOWN']);
    expect(found.find(({ code }) => code === 'JOB_FIELD_UNKNOWN')).toMatchObject({
      position: { line: 6, column: 17 },
      message: expect.stringContaining('plain number'),
    });
  });

  it('that is misspelt is told with the nearest known one', () => {
    expect(onlyIssue(changed('count: 20', 'count: 20\n      lenght: 17 in'))).toMatchObject({
      code: 'JOB_FIELD_UNKNOWN',
      path: 'kit.electrodes[0].lenght',
      read: 'lenght',
      nearest: 'length',
      accepted: expect.stringContaining('diameter, kind, length'),
      position: { line: 18, column: 15 },
    });
  });

  it('without a near name gets the list of known ones', () => {
    const issue = onlyIssue(`${JOB}zzzzzzzzzzzzzz: 1\n`);
    expect(issue.nearest).toBeUndefined();
    expect(issue.message).toContain('furrow, title, note, seam');
    expect(issue.position).toEqual({ line: 24, column: 17 });
  });

  it.each([
    ['    wanted: 8 mm\n', '', 'groove.depth.wanted'],
    ['wanted: 8 mm', 'wanted:', 'groove.depth.wanted'],
    ['title: Trial seam\n', '', 'title'],
    ['furrow: 1\n', '', 'furrow'],
    ['plate:\n  thickness: 25 mm\n', '', 'plate'],
  ])('that is missing is named: “%s” as “%s”', (from, to, path) => {
    const issue = onlyIssue(changed(from, to));
    expect(issue).toMatchObject({ code: 'JOB_FIELD_MISSING', path, position: expect.anything() });
    expect(issue.message).toContain('missing');
  });

  it.each([
    ['title: Trial seam', 'title: ""', 'title', '', 'at least 1 character'],
    ['title: Trial seam', 'title: [1]', 'title', '[1]', 'text'],
    [
      'title: Trial seam',
      `title: ${'x'.repeat(121)}`,
      'title',
      `${'x'.repeat(59)}…`,
      'at most 120 characters',
    ],
    ['count: 20', 'count: 2.5', 'kit.electrodes[0].count', '2.5', 'a whole number'],
    ['count: 20', 'count: -1', 'kit.electrodes[0].count', '-1', 'a number of at least 0'],
    ['count: 20', 'count: 1e30', 'kit.electrodes[0].count', '1e+30', 'a number of at most 100000'],
    ['count: 20', 'count: many', 'kit.electrodes[0].count', 'many', 'a number'],
    ['furrow: 1', 'furrow: "1"', 'furrow', '1', 'the number 1, without quotes'],
  ])('with a value that is not accepted: “%s” as “%s”', (from, to, path, read, accepted) => {
    expect(onlyIssue(changed(from, to))).toMatchObject({
      code: 'JOB_FIELD_VALUE',
      path,
      read,
      accepted,
      position: expect.anything(),
    });
  });

  it('of fixed choices is told with the nearest of them', () => {
    expect(
      onlyIssue(changed('thickness: 25 mm', 'thickness: 25 mm\n  material: carbon steel')),
    ).toMatchObject({
      code: 'JOB_FIELD_VALUE',
      path: 'plate.material',
      read: 'carbon steel',
      nearest: 'carbon_steel',
      accepted: expect.stringContaining('austenitic_stainless'),
      position: { line: 7, column: 13 },
    });
  });

  it('that refers to another place is told by what stands there', () => {
    const text = JOB.replace('title: Trial seam', 'title: &t Trial seam').replace(
      'thickness: 25 mm',
      'thickness: *t',
    );
    expect(onlyIssue(text)).toMatchObject({ code: 'AMOUNT_NOT_UNDERSTOOD', read: 'Trial seam' });
    const group = JOB.replace('length: 2 m', 'length: &n 12').replace('thickness: 25 mm', 'thickness: *n');
    expect(issues(group).map(({ code }) => code)).toEqual(['AMOUNT_AMBIGUOUS', 'AMOUNT_AMBIGUOUS']);
  });

  it('must be printable: no control characters, no half characters', () => {
    for (const written of ['"a\\u0007b"', '"\\u001b[2J"', '"\\ud800"']) {
      expect(onlyIssue(changed('title: Trial seam', `title: ${written}`))).toMatchObject({
        code: 'JOB_FIELD_VALUE',
        path: 'title',
      });
    }
    good(changed('title: Trial seam', 'title: Trial seam\nnote: "two\\nlines, a\\ttab, 45°, 焊"'));
  });
});

describe('the version', () => {
  it.each(['2', '0', '1.5', '.nan', '-1'])('%s is refused', (version) => {
    expect(onlyIssue(changed('furrow: 1', `furrow: ${version}`))).toMatchObject({
      code: 'JOB_VERSION',
      path: 'furrow',
      accepted: '1',
      position: { line: 1, column: 9 },
    });
  });

  it('2 is refused before anything else, since its fields may be others', () => {
    expect(onlyIssue('furrow: 2\nnew_field: 1\n').code).toBe('JOB_VERSION');
  });
});

describe('fields that contradict each other', () => {
  it.each([
    ['  length: 2 m', '  path: straight', 'seam.length'],
    ['  length: 2 m', '  path: girth', 'seam.diameter'],
    ['  length: 2 m', '  path: girth\n  diameter: 1 m\n  length: 3.0 m', 'seam.length'],
    ['plus: 3 mm', 'plus: 3 mm\n    minus: 8 mm', 'groove.depth.minus'],
    ['wanted: 8 mm', 'wanted: 25 mm', 'groove.depth.wanted'],
    ['groove:', 'groove:\n  ligament_least: 25 mm', 'groove.ligament_least'],
    ['groove:', 'groove:\n  floor_width: 21 mm', 'groove.floor_width'],
    ['groove:', 'groove:\n  shape: wash', 'groove.floor_width'],
    ['    least: 10 mm', '    least: 21 mm', 'groove.width.least'],
    ['least: 200 A', 'least: 901 A', 'kit.current.least'],
    ['least: 6 in/min', 'least: 101 in/min', 'kit.travel.least'],
    ['kit:', 'kit:\n  arc_voltage: { least: 45 V, most: 44 V, set: 44 V }', 'kit.arc_voltage.least'],
    ['kit:', 'kit:\n  arc_voltage: { set: 45 V }', 'kit.arc_voltage.set'],
    [
      'count: 20',
      'count: 20\n      current_least: 500 A\n      current_most: 400 A',
      'kit.electrodes[0].current_least',
    ],
    ['count: 20', 'count: 20\n      kind: plain\n      length: 70 mm', 'kit.electrodes[0].stub'],
    ['kit:', 'locks: { electrode_diameter: 1/2 in }\nkit:', 'locks.electrode_diameter'],
    ['kit:', 'heat: { kept_least: 50 %, kept_most: 30 % }\nkit:', 'heat.kept_least'],
    ['thickness: 25 mm', 'thickness: 25 mm\n  composition: { C: 60, Cr: 60 }', 'plate.composition'],
  ])('“%s” as “%s” is told at %s', (from, to, path) => {
    const found = issues(changed(from, to));
    const issue = found.find((one) => one.path === path);
    expect(issue, JSON.stringify(found)).toMatchObject({
      code: 'JOB_COMBINATION',
      position: { line: expect.any(Number), column: expect.any(Number) },
    });
    expect(issue?.accepted?.length).toBeGreaterThan(0);
    expect(found.every(({ code }) => code === 'JOB_COMBINATION')).toBe(true);
  });

  it('a girth may state a length that agrees with its diameter', () => {
    expect(
      good(changed('length: 2 m', 'path: girth\n  diameter: 1 m\n  length: 3.14 m')).job.seam.length,
    ).toBe(3.14);
  });
});

describe('a file that is no job', () => {
  it.each([
    ['empty', ''],
    ['blank', ' \n\n'],
    ['a comment', '# nothing\n'],
    ['a word', 'hello'],
    ['a list', '- furrow: 1\n- title: x\n'],
    ['JSON null', 'null'],
    ['a bracket', '{'],
    ['two documents', `${JOB}---\n${JOB}`],
    ['bound to nothing', 'furrow: *nowhere'],
    ['a tab as indentation', changed('  thickness: 25 mm', '\tthickness: 25 mm')],
    ['a group that holds itself', 'furrow: 1\nseam: &s { x: *s }'],
    ['a list that holds itself', 'furrow: 1\nkit: &k [*k]'],
    ['many brackets', `furrow: 1\nnote: ${'['.repeat(50_000)}${']'.repeat(50_000)}`],
    ['many open brackets', `{"furrow": 1, "note": ${'['.repeat(150_000)}`],
    ['many dashes', `furrow: 1\nnote:\n  ${'- '.repeat(600)}x`],
    ['many question marks', '? '.repeat(90_000)],
    ['30 levels', `furrow: 1\nnote: ${'{ a: '.repeat(30)}1${' }'.repeat(30)}`],
    ['a merge of a number, after YAML 1.1', '%YAML 1.1\n---\nfurrow: 1\nplate: { <<: 5 }\n'],
  ])('%s is told as such', (_what, text) => {
    const found = issues(text);
    expect(found.length).toBeLessThanOrEqual(5);
    for (const issue of found) {
      expect(issue.code).toBe('JOB_SYNTAX');
      expect(issue.message).not.toMatch(/call stack|undefined|YAML\.parse/);
    }
  });

  it('a reference to a reference to a reference does not blow up', () => {
    const bomb = Array.from({ length: 9 }, (_, i) =>
      i === 0
        ? 'a0: &a0 [x, x, x]'
        : `a${i}: &a${i} [${Array(9)
            .fill(`*a${i - 1}`)
            .join(', ')}]`,
    );
    expect(onlyIssue(`furrow: 1\n${bomb.join('\n')}`).code).toBe('JOB_SYNTAX');
  });

  it.each(['furrow: 1\nfurrow: 1\n', '{"furrow": 1, "furrow": 1}', 'furrow: 1\nseam: {1: a, "1": b}'])(
    'with a key that stands twice names it: %s',
    (text) => {
      expect(onlyIssue(text)).toMatchObject({
        code: 'JOB_SYNTAX',
        message: expect.stringContaining('stands twice'),
        position: expect.anything(),
      });
    },
  );

  it('with an unprintable character has its place', () => {
    expect(onlyIssue(changed('25 mm', '25\0 mm'))).toMatchObject({
      code: 'JOB_SYNTAX',
      read: 'U+0000',
      position: { line: 6, column: 16 },
    });
    expect(onlyIssue(`${JOB}\u001b[2J`)).toMatchObject({ read: 'U+001B', position: { line: 24, column: 1 } });
  });

  it('too large is refused unread', () => {
    expect(onlyIssue('#'.repeat(JOB_TEXT_MOST + 1)).code).toBe('JOB_TOO_LARGE');
    expect(onlyIssue('#'.repeat(JOB_TEXT_MOST)).code).toBe('JOB_SYNTAX');
  });

  it('with thousands of wrong fields tells the first ones', () => {
    const text = `${JOB}${Array.from({ length: 9_000 }, (_, i) => `k${i}: 1`).join('\n')}`;
    expect(issues(text)).toHaveLength(50);
  });
});

describe('a key that is a trap', () => {
  it.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty', '<<'])(
    '%s is an unknown field',
    (key) => {
      for (const text of [
        `${JOB}${key}: { polluted: yes }\n`,
        changed('thickness: 25 mm', `thickness: 25 mm\n  ${key}: 1`),
        changed('count: 20', `count: 20\n      ${key}: { count: 1 }`),
      ]) {
        expect(onlyIssue(text)).toMatchObject({ code: 'JOB_FIELD_UNKNOWN', read: key });
      }
      expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    },
  );

  it('is shown without characters that steer a screen', () => {
    const issue = onlyIssue(`${JOB}"\\u001b[2J\\0": 1\n`);
    expect(`${issue.message}${issue.path}${issue.read}`).not.toMatch(/\p{Cc}/u);
  });

  it('may be a number or nothing', () => {
    for (const key of ['1', 'null', 'true']) {
      expect(onlyIssue(`${JOB}${key}: 3\n`).code).toBe('JOB_FIELD_UNKNOWN');
    }
  });

  it('is plain text: a list, a group or a reference is refused where it stands', () => {
    for (const key of ['? [1, 2]\n', '?\n', '[1]', '{ a: 1 }', '{{}}']) {
      expect(onlyIssue(`${JOB}${key}: 3\n`)).toMatchObject({
        code: 'JOB_SYNTAX',
        message: 'Line 24: here a group, a list or a reference stands where the name of a field belongs.',
        position: { line: 24 },
      });
    }
  });
});

it('uses codes of the table only', () => {
  for (const text of ['', 'furrow: 2', JOB.replaceAll(' mm', ''), JOB.replaceAll('least', 'leats')]) {
    for (const { code } of issues(text)) expect(Object.keys(ISSUE_CODES)).toContain(code);
  }
});

it('an amount that YAML parted at its decimal comma is told to be put in quotes', () => {
  const outcome = readJob('furrow: 1\nplate: { thickness: 9,5 mm }\n');
  const parted = outcome.ok ? undefined : outcome.issues.find((issue) => issue.code === 'JOB_FIELD_UNKNOWN');
  expect(parted?.message).toContain('put the amount in quotes');
});
