import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { readLogger } from '../../delimited/index.ts';
import type { Issue, Outcome } from '../../issue/index.ts';
import type { Job, ReadJob } from '../../job/index.ts';
import { type Knowledge, WIDTH_NOISE } from '../../learn/index.ts';
import type { PlanOutcome } from '../../plan/index.ts';
import { inUnit } from '../../quantity/index.ts';
import type { Answer, SurveyReport } from '../../result/index.ts';
import {
  stateBudget,
  stateGaugeCheck,
  stateSeam,
  stateSection,
  stateSurveyFile,
} from '../../result/index.ts';
import type { DepthAlong } from '../../run/index.ts';
import {
  checkOf,
  type GivenSurvey,
  isReadingsFile,
  measureSection,
  type Readings,
  readSurveyFile,
  type SeamGauged,
  type SeamOutcome,
  type SeamPast,
  type SeamTeaching,
  type Section,
  type SurveyFile,
} from '../../survey/index.ts';
import type { GaugeOfSurvey } from './answer-gauge.ts';
import { answerSeam } from './answer-seam.ts';
import { type DepthByLog, depthByLog } from './depth-by-log.ts';
import { entryOfGroove, type GaugedGroove, type RanPass, ranByHand } from './groove-entry.ts';

/** One file of a survey. */
export interface SurveyInput {
  readonly name: string;
  /** Its content as it is [bytes]. */
  readonly bytes: Uint8Array;
}

/** What is asked of a survey. */
export interface SurveyQuestion {
  readonly files: readonly SurveyInput[];
  /** What a person says of how the files are read [record]; left out: nothing. */
  readonly given?: GivenSurvey;
  /** Job that the groove was cut for, with its answer and what was known; left out: sections alone. */
  readonly job?: {
    readonly read: ReadJob;
    readonly answer: Answer;
    readonly knowledge: Knowledge | undefined;
  };
  /** Depth along the seam by the log of the run; left out: the plan is the prediction. */
  readonly run?: DepthAlong;
  /** What names the readings as an entry of the shop's trials; left out: no entry is made. */
  readonly entry?: Pick<GaugedGroove, 'id' | 'date' | 'torch'>;
  /** How the passes were run, by the log; left out: as a readings file says, else as planned. */
  readonly ran?: readonly RanPass[] | undefined;
  /** The gauge, by its study and checks; left out: as a readings file says, else as the job does. */
  readonly gauge?: GaugeOfSurvey;
  /** The gauge that the shop keeps: used where neither the question nor a readings file tells another; left out: none. */
  readonly shopGauge?: GaugeOfSurvey | undefined;
  /** Cutoff of the profile filter [m]; left out: none. */
  readonly filter?: number;
  /** Called with the share of the work that is done, 0 to 1 [-]; left out: nobody is told. */
  readonly progress?: (share: number) => void;
  /** Version of the program, for the result. */
  readonly version: string;
}

/** Sections of one survey at most [-]. */
const SECTIONS_MOST = 5000;
/** Part of the work that reading is taken to be, and sections between two words of how far it is [-]. */
const READING = 0.6;
const TOLD_EVERY = 20;

/**
 * Reads and measures what was surveyed of a groove, and says what it means for the job.
 *
 * @param question - files, and what belongs to them [record], at least one file
 * @returns the report, or what is wrong with a file [record]
 * @source composes `readSurveyFile`, `measureSection` and the verdict along the seam
 * @example
 * const bytes = Uint8Array.from('station (mm);depth (mm)\n100;12,4\n', (c) => c.charCodeAt(0));
 * answerSurvey({ files: [{ name: 'g.csv', bytes }], version: '0' }).value.reading[0].kind // => "stations"
 */
export function answerSurvey(question: SurveyQuestion): Outcome<SurveyReport> {
  const { files, given = {}, job, gauge, filter, version, progress } = question;
  const hashes = files.map(({ bytes }) => bytesToHex(sha256(bytes)));
  const read: SurveyFile[] = [];
  const issues: Issue[] = [];
  const first = files.flatMap(({ name, bytes }) => {
    const outcome = isReadingsFile(bytes) ? readSurveyFile(name, bytes) : undefined;
    return outcome?.ok === true && outcome.value.record !== undefined ? [outcome.value.record] : [];
  });
  const listed = first.flatMap(({ files: each = [] }) => each);
  const log = first.findLast(({ run }) => run !== undefined)?.run;
  const recuts = first.flatMap(({ recuts: each = [] }) => each);
  const when = new Map<string, Pick<SeamGauged, 'afterRecut' | 'afterPass'>>();
  for (const [index, { name, bytes }] of files.entries()) {
    // the log of the run is no file of the groove
    if (hashes[index] === log?.sha256) continue;
    const told = listed.find((each) => each.sha256 === hashes[index]);
    const outcome = readSurveyFile(name, bytes, { ...given, ...givenOf(told) }, (share) =>
      progress?.((READING * (index + share)) / files.length),
    );
    if (outcome.ok) {
      read.push(outcome.value);
      if (told !== undefined)
        when.set(name, {
          ...(told.after_recut === undefined ? {} : { afterRecut: told.after_recut }),
          ...(told.after_pass === undefined ? {} : { afterPass: told.after_pass }),
        });
    } else
      issues.push(...outcome.issues.map((issue) => ({ ...issue, message: `${name}: ${issue.message}` })));
  }
  if (issues.length > 0) return { ok: false, issues };
  const options = filter === undefined ? {} : { filterCutoff: filter };
  const scans = read.flatMap(({ name, sections }) =>
    sections.slice(0, SECTIONS_MOST).map((scan) => ({ scan, file: name })),
  );
  const beyond = read.reduce((sum, { sections }) => sum + Math.max(0, sections.length - SECTIONS_MOST), 0);
  const measured = scans.map(({ scan, file }, i): { section: Section; file: string } => {
    if (i % TOLD_EVERY === 0) progress?.(READING + ((1 - READING) * i) / scans.length);
    return { section: measureSection(scan, options), file };
  });
  progress?.(1);
  const other = otherGauge(question.shopGauge, first);
  const shop = other === undefined ? question.shopGauge : undefined;
  const hand = handGauge(gauge ?? shop, first, job?.read.job);
  const handSd = hand.u;
  const gaugeFailed = hand.check?.verdict === 'fails';
  const gauged = [
    ...measured.flatMap(({ section, file }): SeamGauged[] =>
      'declined' in section.depth || section.station === undefined
        ? []
        : [
            {
              at: section.station,
              depth: section.depth.value,
              u: Math.max(section.depth.u95 / 2, 1e-6),
              ...('declined' in section.width
                ? {}
                : { width: { value: section.width.value, u: Math.max(section.width.u95 / 2, 1e-6) } }),
              from: 'scan',
              file,
              row: null,
              afterRecut: 0,
              ...when.get(file),
            },
          ],
    ),
    ...read.flatMap(({ name, stations }) =>
      stations.flatMap((station): SeamGauged[] => {
        const { at, depth, width, track, row } = station;
        const afterPass = station.afterPass ?? when.get(name)?.afterPass;
        if (depth === undefined || handSd === undefined) return [];
        return [
          {
            at,
            depth,
            u: handSd,
            ...(width === undefined ? {} : { width: { value: width, u: WIDTH_NOISE * handSd } }),
            ...(track === undefined ? {} : { track }),
            ...(afterPass === undefined ? {} : { afterPass }),
            from: 'gauge',
            ...(gaugeFailed ? { gaugeFailed } : {}),
            file: name,
            row,
            afterRecut: station.afterRecut ?? when.get(name)?.afterRecut ?? 0,
          },
        ];
      }),
    ),
  ];
  const hasHand = read.some(({ stations }) => stations.length > 0);
  const unplaced = measured.filter(({ section }) => section.station === undefined).length;
  const predicted = byLog(question, log, hashes);
  const run = question.run ?? predicted.by?.depth;
  const seam = job === undefined ? null : answerSeam(job, gauged, run, recuts, handSd);
  const past = recuts.flatMap((_, count): SeamPast[] => {
    const before = gauged.filter(({ afterRecut: after = 0 }) => after <= count);
    const then = job && answerSeam(job, before, run, recuts.slice(0, count));
    return then === undefined || then === null ? [] : [{ afterRecut: count, seam: then }];
  });
  const plan = job?.answer.basis?.plan;
  return {
    ok: true,
    value: {
      inputs: {
        program_version: version,
        files: files.map(({ name }, index) => ({ file: name, sha256: hashes[index]! })),
        run: predicted.by === undefined || log === undefined ? null : { file: log.name, sha256: log.sha256 },
        job_revision: job?.read.revision ?? null,
        knowledge: job?.answer.inputs.knowledge.id ?? null,
        filter_mm: filter === undefined ? null : inUnit(filter, 'mm'),
        gauge_u_mm: hasHand && handSd !== undefined ? inUnit(handSd, 'mm') : null,
        gauge_u_from: hasHand ? hand.from : 'no reading was gauged by hand',
        gauge_budget: hasHand ? stateBudget(hand.lines ?? []) : [],
      },
      reading: read.map(stateSurveyFile),
      sections: measured.map(({ section, file }) => stateSection(section, file)),
      seam:
        seam === null || job === undefined || plan === undefined
          ? null
          : stateSeam(
              seam,
              taughtBy(
                seam,
                job.read.job,
                plan,
                { ...question, ran: question.ran ?? predicted.by?.passes },
                first,
              ),
              recuts,
              past,
            ),
      gauge_check: hand.check === undefined ? null : stateGaugeCheck(hand.check),
      remarks: [
        ...(other === undefined || !hasHand ? [] : [other]),
        ...(predicted.why === undefined ? [] : [predicted.why]),
        ...(beyond > 0
          ? [
              `${beyond} sections beyond the first ${SECTIONS_MOST} of a file were not measured: split the file.`,
            ]
          : []),
        ...(hasHand && gaugeFailed
          ? [
              'The gauge failed its check against the block: no reading by it counts. Set it, check it, read again.',
            ]
          : []),
        ...(job !== undefined && seam === null
          ? ['The job has no plan, so nothing is said of its seam.']
          : []),
        ...(job !== undefined && unplaced > 0
          ? [
              `${unplaced} of the sections have no place along the seam, so the seam does not use them: name it in the file, or with --station.`,
            ]
          : []),
        'Whoever measures decides; the program signs nothing. Local codes and licensed practice govern.',
      ],
    },
  };
}

/** The depth by the log that the readings name, or why it does not predict; neither where none is named or another was given. */
function byLog(
  { job, run, files }: SurveyQuestion,
  log: Readings['run'],
  hashes: readonly string[],
): { readonly by?: DepthByLog; readonly why?: string } {
  if (job === undefined || log === undefined || run !== undefined) return {};
  const instead = 'The plan is the prediction in its place.';
  const file = files[hashes.indexOf(log.sha256)];
  if (file === undefined) return { why: `The log ${log.name} of the run is not here. ${instead}` };
  const outcome = depthByLog({ bytes: file.bytes, description: log.description }, job);
  return outcome.ok
    ? { by: outcome.value }
    : { why: `The log ${log.name}: ${outcome.issues[0]?.message ?? 'it cannot be read.'} ${instead}` };
}

/** Why the gauge that the shop keeps says nothing of these readings; undefined where it does. */
function otherGauge(shop: GaugeOfSurvey | undefined, records: readonly Readings[]): string | undefined {
  if (shop === undefined) return undefined;
  const named = records.findLast(({ gauge }) => gauge !== undefined)?.gauge;
  if (named !== undefined && named.trim().toLowerCase() !== shop.name?.trim().toLowerCase())
    return `The readings were taken with “${named}”, and the gauge kept with the shop is “${shop.name}”: its study is not used.`;
  return records.some(({ reading_spread: spread }) => spread !== undefined)
    ? 'The record states the spread of a reading itself: that counts in place of the study of the gauge kept with the shop.'
    : undefined;
}

/** The gauge that depths were read with: by its own file, else as a readings file says, else as the job does. */
function handGauge(
  gauge: GaugeOfSurvey | undefined,
  records: readonly Readings[],
  job: Job | undefined,
): GaugeOfSurvey {
  const recorded = records.findLast(({ gauge_check: each }) => each !== undefined)?.gauge_check;
  const own = recorded === undefined ? undefined : checkOf(recorded);
  if (gauge?.u !== undefined) {
    // the check of the day counts beside those kept with the gauge: one that failed is not outvoted
    if (own === undefined || (gauge.check !== undefined && own.verdict !== 'fails')) return gauge;
    return {
      ...gauge,
      u: gauge.check === undefined ? Math.hypot(gauge.u, own.off, own.u) : gauge.u,
      lines:
        gauge.check === undefined && gauge.lines !== undefined
          ? [...gauge.lines, { what: 'deviation', u: Math.hypot(own.off, own.u) }]
          : gauge.lines,
      check: own,
    };
  }
  const check = gauge?.check ?? own;
  const studied = records.find(({ reading_spread: spread }) => spread !== undefined);
  const alone = studied?.reading_spread ?? job?.kit.gauge.reading_sd;
  const source =
    studied?.spread_from ??
    (studied !== undefined
      ? 'the readings file'
      : job === undefined
        ? 'no job states it'
        : "the job's gauge, one reading");
  // a deviation that is not corrected is part of the uncertainty
  return check === undefined || alone === undefined
    ? { u: alone, from: source, check }
    : { u: Math.hypot(alone, check.off, check.u), from: `${source}, and its check against a block`, check };
}

/** What the readings file says of how a file that it lists is read. */
function givenOf(told: NonNullable<Readings['files']>[number] | undefined): GivenSurvey {
  if (told === undefined) return {};
  const { unit, vertical, station, description } = told;
  const described = description === undefined ? undefined : readLogger(description);
  return {
    ...(described?.ok === true ? described.value.given : {}),
    ...(unit === undefined ? {} : { unit }),
    ...(vertical === undefined ? {} : { vertical }),
    ...(station === undefined ? {} : { station }),
  };
}

/** What the readings of a seam teach the shop: those of the cut as planned that are no faults at one place. */
function taughtBy(
  { readings, apart }: SeamOutcome,
  job: Job,
  plan: PlanOutcome,
  { entry: named, ran }: SurveyQuestion,
  records: readonly Readings[],
): SeamTeaching {
  const gauged = readings.flatMap(({ reading, why }) =>
    (why === null || why === 'before_last_pass' || why === 'cut_again') &&
    (reading.afterRecut ?? 0) === 0 &&
    !apart.includes(reading)
      ? [reading]
      : [],
  );
  const { entry, ...taught } = entryOfGroove({
    id: '',
    date: '',
    ...named,
    job,
    plan,
    gauged,
    ran: ran ?? records.flatMap((record) => ranByHand(record, plan)),
  });
  const isInvented = records.some(({ invented }) => invented === 'yes');
  return { ...taught, entry: named === undefined || isInvented ? null : entry };
}
