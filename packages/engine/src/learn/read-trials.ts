import {
  type CombinationIssue,
  type DefaultUsed,
  DOCUMENT_TEXT_MOST,
  type DocumentKind,
  documentCodes,
  documentJsonSchema,
  type JsonSchema,
  readDocument,
} from '../document/index.ts';
import type { Outcome } from '../issue/index.ts';
import { metalOf } from '../material/index.ts';
import { type ShopObservation, sizeBand } from './observation.ts';
import { type Trials, trialsSchema } from './trials-schema.ts';

/** Greatest size of a trials file [characters]. */
export const TRIALS_TEXT_MOST = DOCUMENT_TEXT_MOST;

const TRIALS: DocumentKind<typeof trialsSchema> = {
  name: 'trials',
  versionField: 'furrow_trials',
  schema: trialsSchema,
  codes: documentCodes('TRIALS'),
};

/** A shop's trials as read. */
export interface ReadTrials {
  readonly trials: Trials;
  /** Entries that count, as observations; those taken out are not among them. */
  readonly observations: readonly ShopObservation[];
  readonly defaultsUsed: readonly DefaultUsed[];
  /** SHA-256 of the content, in hex; layout and comments do not count. */
  readonly revision: string;
}

/**
 * Reads a shop's trials and gauged jobs from a file, YAML or JSON, or tells what is wrong and where.
 *
 * @param text - the file's content [text], at most 200 000 characters
 * @returns the trials in SI and their revision, or the issues [record]
 * @source none: bookkeeping
 * @example
 * readTrials('furrow_trials: 1\nshop: yard\nentries: []').value.observations // => []
 */
export function readTrials(text: string): Outcome<ReadTrials> {
  const outcome = readDocument(text, TRIALS, {
    wholeOf: (trials) => trials,
    contradictions: (trials) => [...namedTwice(trials), ...burntWithoutLength(trials)],
  });
  if (!outcome.ok) return outcome;
  const { whole: trials, revision, defaultsUsed } = outcome.value;
  const observations = trials.entries.filter((each) => each.taken_out === undefined).map(observationOf);
  return { ok: true, value: { trials, observations, defaultsUsed, revision } };
}

/**
 * The JSON Schema (draft 2020-12) of a trials file, made from its one schema.
 *
 * @returns the JSON Schema [record]
 * @source JSON Schema draft 2020-12
 * @example
 * trialsJsonSchema()['title'] // => "Furrow trials"
 */
export function trialsJsonSchema(): JsonSchema {
  return documentJsonSchema(trialsSchema, 'Furrow trials');
}

function namedTwice({ entries }: Trials): CombinationIssue[] {
  return entries.flatMap(({ id }, index) =>
    entries.findIndex((other) => other.id === id) === index
      ? []
      : [
          {
            at: ['entries', index, 'id'],
            message: `Entry “${id}” is there twice; one trial must not count twice.`,
            read: id,
            accepted: 'each name once; to correct an entry, change it and say so under corrected',
          },
        ],
  );
}

function burntWithoutLength({ entries }: Trials): CombinationIssue[] {
  return entries.flatMap(({ id, passes }, entry) =>
    passes.flatMap(({ electrode_burnt: burnt, length }, pass) =>
      burnt === undefined || length !== undefined
        ? []
        : [
            {
              at: ['entries', entry, 'passes', pass, 'electrode_burnt'],
              message: `Entry “${id}” states the electrode burnt but not the length cut, so not the time it took.`,
              read: 'electrode_burnt without length',
              accepted: 'both, or neither',
            },
          ],
    ),
  );
}

function observationOf(entry: Trials['entries'][number]): ShopObservation {
  const metal = metalOf(entry.material);
  const { diameter, kind } = entry.electrode;
  return {
    id: entry.id,
    kind: entry.kind,
    date: entry.date,
    family: {
      metal: metal.family,
      position: entry.position,
      electrode: kind,
      band: sizeBand(diameter),
      ...(entry.torch !== undefined && { torch: entry.torch }),
    },
    meltingEnergy: metal.meltingEnergy.value,
    gaugeSd: entry.gauge_sd,
    passes: entry.passes.map((pass) => {
      const { current, travel, length, electrode_burnt: burnt } = pass;
      const settingOf = ({ push_angle: pushAngle, ...run }: NonNullable<typeof pass.below>[number]) => ({
        ...{ diameter, pushAngle },
        ...{ current: run.current, voltage: run.voltage, travel: run.travel },
      });
      const setting = settingOf(pass);
      const below = pass.below === undefined ? {} : { below: pass.below.map(settingOf) };
      const stations = pass.stations.map(({ at, depth, width, depth_sd: depthSd, width_sd: widthSd }) => ({
        at,
        depth,
        ...(depthSd !== undefined && { depthSd }),
        ...(width !== undefined && { width }),
        ...(widthSd !== undefined && { widthSd }),
      }));
      if (burnt === undefined || length === undefined) return { setting, ...below, stations };
      return {
        setting,
        ...below,
        stations,
        wear: (burnt * Math.PI * diameter ** 2 * travel) / (4 * current * length),
      };
    }),
  };
}
