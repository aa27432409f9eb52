import {
  beliefOfFamily,
  type Drift,
  driftOf,
  type Family,
  familyName,
  type Knowledge,
  knowledgeOf,
  type ReadTrials,
  type ScoredEntry,
  type Shift,
  type ShopObservation,
  scoreEntries,
  shiftOf,
} from '../../learn/index.ts';
import { metalOf } from '../../material/index.ts';
import { inUnit } from '../../quantity/index.ts';
import { lnDepthParts, SEAM_RANGE, STARTING_DEPTH } from '../../removal/index.ts';
import type { KnowledgeReport } from '../../result/index.ts';

/** Weight below which something is named as an outlier [-]. */
const OUTLIER_WEIGHT = 0.5;
/** Standard deviations from the median to the ends of a 90 % interval [-]. */
const EDGE = 1.6449;

/**
 * Tells what a shop has learned from its trials and gauged jobs, and how its predictions fared.
 *
 * @param read - the trials as read [record], from `readTrials`
 * @returns the report [record]
 * @source none: composition
 * @example
 * answerKnowledge(readTrials('furrow_trials: 1\nshop: yard\nentries: []').value).scores.predictions // => 0
 */
export function answerKnowledge(read: ReadTrials): KnowledgeReport {
  const knowledge = knowledgeOf(read);
  const { observations } = knowledge;
  const entries = scoreEntries(knowledge.shop, observations);
  const { trials } = read;
  return {
    knowledge: knowledge.name,
    shop: knowledge.shop,
    families: familiesOf(observations).map((family) => familyReport(knowledge, family)),
    seam_range_mm: inUnit(SEAM_RANGE, 'mm'),
    scores: {
      predictions: entries.length,
      inside_90: entries.filter(isInside).length,
      crps_mean:
        entries.length === 0 ? null : entries.reduce((sum, { crps }) => sum + crps, 0) / entries.length,
      entries: entries.map(scored),
    },
    drift: driftReport(driftOf(entries), shiftOf(entries)),
    outliers: outliersOf(knowledge),
    taken_out: trials.entries.flatMap(({ id, taken_out: out }) =>
      out === undefined ? [] : [{ entry: id, date: out.date, reason: out.reason }],
    ),
    corrected: trials.entries.flatMap(({ id, corrected = [] }) =>
      corrected.map(({ date, reason }) => ({ entry: id, date, reason })),
    ),
  };
}

/** The families of the observations, each once, by name. */
function familiesOf(observations: readonly ShopObservation[]): Family[] {
  const byName = new Map(observations.map(({ family }) => [familyName(family), family]));
  return [...byName].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, family]) => family);
}

function familyReport(knowledge: Knowledge, family: Family): KnowledgeReport['families'][number] {
  const name = familyName(family);
  const own = knowledge.observations.filter((each) => familyName(each.family) === name);
  const { metal, position, electrode, band, torch } = family;
  return {
    family: name,
    metal,
    position,
    electrode_kind: electrode,
    size_band: band,
    torch: torch ?? null,
    trials: own.filter(({ kind }) => kind === 'trial').length,
    jobs: own.filter(({ kind }) => kind === 'job').length,
    readings: own.reduce((sum, { passes }) => sum + readingsOf(passes), 0),
    doubt: doubtOf(knowledge, family, own),
    levels: levelsOf(knowledge),
  };
}

function readingsOf(passes: ShopObservation['passes']): number {
  return passes.reduce((sum, { stations }) => sum + stations.length, 0);
}

/** Standard deviation of what is not known of the family, at the setting of its latest pass. */
function doubtOf(knowledge: Knowledge, family: Family, own: readonly ShopObservation[]): number {
  const belief = beliefOfFamily(knowledge, metalOf(family.metal), family);
  const { setting } = own.at(-1)!.passes.at(-1)!;
  const variance = lnDepthParts(belief, setting).reduce((sum, part, i) => {
    const { job, pass, seam } = belief.depth[i]!.levels;
    return sum + part.weight * (part.variance - job ** 2 - pass ** 2 - seam ** 2);
  }, 0);
  return Math.sqrt(variance);
}

type Levels = KnowledgeReport['families'][number]['levels'];

/** The four standard deviations, which all families of a shop have in common. */
function levelsOf({ depth, observations }: Knowledge): Levels {
  const { mode, levelNames } = depth.learned;
  const passes = observations.flatMap((each) => each.passes);
  const taught = {
    family: observations.length,
    job: observations.length > 1 ? observations.length : 0,
    pass: observations.filter((each) => each.passes.length > 1).length,
    seam: passes.filter(({ stations }) => stations.length > 1).length,
  };
  const what = {
    family: ['trial or job', 'trials and jobs'],
    job: ['trial or job', 'trials and jobs'],
    pass: ['entry with repeated passes', 'entries with repeated passes'],
    seam: ['pass with several stations', 'passes with several stations'],
  };
  const level = (name: keyof Levels): Levels[keyof Levels] => {
    const at = levelNames.indexOf(name);
    const [sd, lnSd] = [mode.sds[at]!, Math.sqrt(mode.covariance[at]![at]!)];
    const start =
      name === 'family'
        ? `the published rows (from memory), worth ${STARTING_DEPTH.family.worth} observations`
        : `a starting value (judgement, no source), worth ${STARTING_DEPTH[name].worth} observations`;
    return {
      p05: sd * Math.exp(-EDGE * lnSd),
      p50: sd,
      p95: sd * Math.exp(EDGE * lnSd),
      from:
        taught[name] === 0
          ? start
          : `${taught[name]} ${what[name][taught[name] === 1 ? 0 : 1]}, beside ${start}`,
    };
  };
  return { family: level('family'), job: level('job'), pass: level('pass'), seam: level('seam') };
}

function isInside({ place }: ScoredEntry): boolean {
  return place > 0.05 && place < 0.95;
}

function scored(entry: ScoredEntry): KnowledgeReport['scores']['entries'][number] {
  const [p05, p50, p95] = entry.predicted;
  return {
    entry: entry.id,
    date: entry.date,
    predicted_mm: { p05: inUnit(p05, 'mm'), p50: inUnit(p50, 'mm'), p95: inUnit(p95, 'mm') },
    measured_mm: inUnit(entry.measured, 'mm'),
    inside: isInside(entry),
    place: entry.place,
    crps: entry.crps,
  };
}

function driftReport({ sum, limit, since }: Drift, shift: Shift): KnowledgeReport['drift'] {
  const way = sum > 0 ? 'deeper' : 'shallower';
  return {
    row: shift.entries,
    row_off_mm: inUnit(shift.by, 'mm'),
    sum,
    limit,
    since: since ?? null,
    says:
      since === undefined
        ? 'No drift: readings scatter about their predictions.'
        : `Readings run ${way} than predicted since ${since}: look for a new batch of electrodes or a worn nozzle.`,
  };
}

/** Entries, passes and readings that the fit weighs down. */
function outliersOf({ depth, observations }: Knowledge): KnowledgeReport['outliers'] {
  const { weights } = depth.learned;
  return observations.flatMap(({ id, passes }, g) => {
    const entry = (what: string, weight: number) =>
      weight < OUTLIER_WEIGHT ? [{ entry: id, what, weight }] : [];
    return [
      ...entry('all of it', weights.group[g]!),
      ...passes.flatMap(({ stations }, p) => {
        const places = [...stations].sort((a, b) => a.at - b.at);
        return [
          ...entry(`pass ${p + 1}`, weights.pass[g]![p]!),
          ...places.flatMap(({ at }, i) =>
            entry(`pass ${p + 1}, reading at ${inUnit(at, 'mm').toFixed(0)} mm`, weights.reading[g]![p]![i]!),
          ),
        ];
      }),
    ];
  });
}
