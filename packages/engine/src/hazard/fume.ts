import type { Job } from '../job/index.ts';
import { dilutionFlow } from './dilution.ts';
import { exposureLimit, LIMIT_SET_NAMES, type LimitSet } from './exposure-limit.ts';
import { mixtureIndex, shiftConcentration } from './mixture-index.ts';
import type { FumeOutcome, SubstanceOutcome } from './outcome.ts';
import { expectedSubstances, SUBSTANCE_NAMES, type Substance } from './substance.ts';
import { hazardWording } from './wording.ts';

const SETS: readonly LimitSet[] = ['osha', 'acgih', 'eu'];
const MINUTE = 60;

interface Measured {
  readonly substance: Substance;
  /** Mean over eight hours [mg/m3]. */
  readonly mean: number;
  /** Highest reading [mg/m3]. */
  readonly highest: number;
}

/** What the air may carry, by every set of limits, with what was measured of it. */
export function fumeOf({ site, plate }: Job): FumeOutcome {
  const measured = measuredOf(site.fume.measured ?? []);
  const expected = expectedSubstances(plate.material, plate.composition ?? {}, site.fume.coating ?? null);
  const others = measured
    .filter(({ substance }) => !expected.some((one) => one.substance === substance))
    .map(({ substance }) => ({ substance, why: 'measured in the breathing zone' }));
  return {
    set: LIMIT_SET_NAMES[site.fume.limits],
    substances: [...expected, ...others].map(({ substance, why }) =>
      substanceReport(
        substance,
        why,
        measured.find((one) => one.substance === substance),
        site,
      ),
    ),
    mixtures: SETS.map((set) =>
      mixtureReport(
        set,
        measured,
        [...expected, ...others].map(({ substance }) => substance),
      ),
    ),
  };
}

function measuredOf(readings: NonNullable<Job['site']['fume']['measured']>): readonly Measured[] {
  const substances = [...new Set(readings.map(({ substance }) => substance))];
  return substances.map((substance) => {
    const own = readings.filter((reading) => reading.substance === substance);
    return {
      substance,
      mean: shiftConcentration(own.map(({ mg_per_m3: concentration, time }) => ({ concentration, time }))),
      highest: Math.max(...own.map(({ mg_per_m3 }) => mg_per_m3)),
    };
  });
}

function substanceReport(
  substance: Substance,
  why: string,
  measured: Measured | undefined,
  { fume, torches }: Job['site'],
): SubstanceOutcome {
  return {
    name: SUBSTANCE_NAMES[substance],
    why,
    measured: measured?.mean ?? null,
    highest: measured?.highest ?? null,
    limits: SETS.map((set): SubstanceOutcome['limits'][number] => {
      const limit = exposureLimit(substance, set);
      const emission = isGas(substance) ? undefined : fume.emission_mg_per_min;
      return {
        set: LIMIT_SET_NAMES[set],
        most: limit?.most ?? null,
        written: limit?.written ?? '',
        ceiling: limit?.over === 'ceiling',
        source: limit?.source ?? null,
        flowIfAll:
          limit === null || emission === undefined
            ? null
            : dilutionFlow((torches * emission) / MINUTE, limit.most, fume.mixing_factor),
        verdict: hazardWording(concentrationFor(limit, measured), limit?.most ?? null, 'most'),
      };
    }),
  };
}

/** A ceiling holds at any moment, any other limit for the mean of a shift. */
function concentrationFor(
  limit: ReturnType<typeof exposureLimit>,
  measured: Measured | undefined,
): number | null {
  if (measured === undefined || limit === null) return null;
  return limit.over === 'ceiling' ? measured.highest : measured.mean;
}

function isGas(substance: Substance): boolean {
  return substance === 'carbon_monoxide' || substance === 'nitrogen_dioxide' || substance === 'ozone';
}

/** Index over what was both measured and limited; of all that the air may carry, the rest is named. */
function mixtureReport(
  set: LimitSet,
  measured: readonly Measured[],
  reckonedWith: readonly Substance[],
): FumeOutcome['mixtures'][number] {
  const parts = measured.flatMap((one) => {
    const limit = exposureLimit(one.substance, set);
    const concentration = concentrationFor(limit, one);
    return limit === null || concentration === null
      ? []
      : [{ substance: one.substance, concentration, limit: limit.most }];
  });
  const index = parts.length === 0 ? null : mixtureIndex(parts);
  const missing = reckonedWith.filter((one) => !parts.some(({ substance }) => substance === one));
  const over = hazardWording(index, 1, 'most');
  return {
    set: LIMIT_SET_NAMES[set],
    index,
    notCovered: missing.map((substance) => SUBSTANCE_NAMES[substance]),
    // what the index leaves out may be what fails
    verdict: missing.length > 0 && over === 'within the figure named' ? 'not covered by the source' : over,
  };
}
