import { z } from 'zod';
import {
  type CommissionCheck,
  type Connection,
  commissionCheckSchema,
  connectionSchema,
  type Turning,
} from '../commission/index.ts';
import { defaultUsedSchema } from '../document/index.ts';
import { type Issue, issueSchema } from '../issue/index.ts';
import type { ChosenPolarity, KitTime, PlaceOutcome, ReadKit } from '../kit/index.ts';
import { type Candidate, type Limit, limitSchema, type Stated, sourceSchema } from '../limit/index.ts';
import { inUnit, sentenceSchema } from '../quantity/index.ts';
import type { AirOutcome, ElectricLoop, LoopResult, SenseLanding } from '../supply/index.ts';
import { airReportSchema, stateAir } from './air.ts';
import { electricSchema, stateElectric } from './electric.ts';
import { placeReportSchema, statePlace } from './place.ts';

const kitReportSchema = z
  .object({
    title: z.string().describe('Name, in words.'),
    revision: z.string().describe('Content hash of the kit as read, defaults included (SHA-256, hex).'),
    defaults_used: z.array(defaultUsedSchema),
  })
  .meta({ id: 'KitReport', description: 'The kit that was used.' });

const supplySettingSchema = z
  .object({
    of: z
      .enum(['plan', 'plan_without_kit'])
      .describe(
        '`plan`: of the plan told; `plan_without_kit`: the kit carries no plan, so this is the one it fails.',
      ),
    electrode_diameter_mm: z.number().describe('Electrode diameter [mm].'),
    current_A: z.number().describe('Current [A].'),
    arc_voltage_V: z.number().describe('Arc voltage [V].'),
    travel_mm_per_min: z.number().describe('Slowest travel of the plan [mm/min].'),
    pass_length_mm: z.number().describe('Length of one pass [mm].'),
    passes: z.number().describe('Passes [-].'),
    pass_time_s: z
      .number()
      .describe('Arc time of the slowest pass, for which the torch blows without a pause [s].'),
  })
  .meta({
    id: 'SupplySetting',
    description: 'The heaviest pass of the plan, or of the plan that the process alone would allow.',
  });

const kitTimeSchema = z
  .object({
    limited_by: z
      .enum(['process', 'kit', 'nothing'])
      .describe(
        "`kit`: without the kit's margins the job would be quicker, or possible at all; `nothing`: no plan either way.",
      ),
    with_kit_s: z
      .number()
      .nullable()
      .describe('Median time of the job within the kit [s]; null where the kit carries no plan.'),
    without_kit_s: z
      .number()
      .nullable()
      .describe('Median time of the job by the process alone [s]; null where there is no plan at all.'),
    binding: z.array(z.string()).describe("Identifiers of the kit's limits that the quicker plan fails."),
    says: sentenceSchema.describe('The same in one sentence.'),
  })
  .meta({
    id: 'KitTime',
    description:
      "Whether the kit or the process sets the time: the job planned with and without the kit's margins.",
  });

const turningSchema = z
  .object({
    travel_mm_per_min: z
      .number()
      .describe(
        'Travel of the first pass, of the middle row where the gauge sets it: the speed of the surface.',
      ),
    shell_rev_per_min: z.number().describe('Revolutions of the shell in a minute.'),
    turn_s: z.number().describe('Time of one turn of the shell.'),
    roll_diameter_mm: z
      .number()
      .nullable()
      .describe('Diameter of a turning roll; null where the kit states none.'),
    roll_rev_per_min: z
      .number()
      .nullable()
      .describe('Revolutions of a roll on the gouged surface in a minute; null where the kit states none.'),
  })
  .meta({ id: 'Turning', description: 'How a girth turns under the torch, which stands still.' });

/** What the kit makes of a plan: margins, loop, air, place, connections and checks. */
export const supplySchema = z
  .object({
    kit: kitReportSchema,
    setting: supplySettingSchema
      .nullable()
      .describe(
        'The setting that everything below is computed for; null where no plan exists even without the kit.',
      ),
    polarity: z
      .object({
        electrode: z.enum(['electrode_positive', 'electrode_negative']),
        source: sourceSchema,
      })
      .nullable()
      .describe('Pole of the electrode and who says so; null without a setting.'),
    time: kitTimeSchema,
    limits: z
      .array(limitSchema)
      .describe(
        "Margins of power, leads and air at the setting; the same entries stand among the plan's limits.",
      ),
    electric: electricSchema.nullable(),
    air: airReportSchema
      .nullable()
      .describe(
        'The air while the torch blows for one pass; null without a setting or where `issues` says why.',
      ),
    place: placeReportSchema
      .nullable()
      .describe('Where things stand in the bay; null where the kit describes no bay or `issues` says why.'),
    turning: turningSchema
      .exactOptional()
      .describe('How the shell turns in the first pass; for a girth alone.'),
    connections: z
      .array(connectionSchema)
      .describe('What is connected from where to where; empty where the loop has no working point.'),
    checks: z
      .array(commissionCheckSchema)
      .describe(
        'Checks before the first arc, each with the reading to expect; empty where there is no plan to run.',
      ),
    issues: z.array(issueSchema).describe('Parts of the kit that could not be worked out, and why.'),
    cautions: z.array(z.string()).describe('What the numbers do not know of, in words.'),
  })
  .meta({
    id: 'SupplyReport',
    description:
      'What the kit makes of a plan: margins, loop, air, place, connections and checks. Only there where a kit was given.',
  });

/** The kit that was used. */
export type KitReport = Stated<typeof kitReportSchema>;
/** The heaviest pass of the plan, or of the plan that the process alone would allow. */
export type SupplySetting = Stated<typeof supplySettingSchema>;
/** Whether the kit or the process sets the time: the job planned with and without the kit's margins. */
export type KitTimeReport = Stated<typeof kitTimeSchema>;
/** What the kit makes of a plan. */
export type SupplyReport = Stated<typeof supplySchema>;

/** How a girth turns under the torch. */
export interface GirthTurning extends Turning {
  /** Travel of the first pass [m/s]. */
  readonly travel: number;
  /** Diameter of a turning roll; undefined where the kit states none [m]. */
  readonly rollDiameter: number | undefined;
}

/** What the kit makes of one setting, in SI. */
export interface SettingOutcome {
  /** `plan`: of the plan told; `plan_without_kit`: of the one that the kit fails. */
  readonly of: SupplySetting['of'];
  /** The heaviest pass, with the electrode itself. */
  readonly candidate: Candidate;
  /** Passes of the plan [-]. */
  readonly passes: number;
  readonly polarity: ChosenPolarity;
  readonly limits: readonly Limit[];
  readonly loop: ElectricLoop;
  readonly solved: LoopResult;
  readonly landings: readonly SenseLanding[];
  readonly air: AirOutcome | undefined;
  readonly place: PlaceOutcome | undefined;
  /** How a girth turns in its first pass; undefined for a straight seam. */
  readonly turning: GirthTurning | undefined;
  readonly connections: readonly Connection[];
  readonly checks: readonly CommissionCheck[];
  readonly issues: readonly Issue[];
}

/** What the kit makes of a plan, in SI. */
export interface SupplyOutcome {
  readonly kit: Pick<ReadKit, 'kit' | 'revision' | 'defaultsUsed'>;
  readonly time: KitTime;
  /** Undefined where no plan exists even without the kit. */
  readonly setting: SettingOutcome | undefined;
}

/**
 * States what a kit makes of a plan as it leaves: every number in the unit of its key.
 *
 * @param outcome - the supply in SI [record], as `answerJob` composes it
 * @returns the report with units in its keys [record]
 * @source none: unit conversion
 * @example
 * stateSupply({ kit: demoKit, time: kitTime(undefined, undefined, []), setting: undefined }).time.limited_by // => "nothing"
 */
export function stateSupply({ kit, time, setting }: SupplyOutcome): SupplyReport {
  const electric = setting && stateElectric(setting.loop, setting.solved, setting.landings);
  const air = setting?.air && stateAir(setting.air, setting.candidate.travel);
  const place = setting?.place && statePlace(setting.place);
  return {
    kit: { title: kit.kit.title, revision: kit.revision, defaults_used: kit.defaultsUsed },
    time: {
      limited_by: time.limitedBy,
      with_kit_s: time.withKit ?? null,
      without_kit_s: time.withoutKit ?? null,
      binding: time.binding.map(({ id }) => id),
      says: time.says,
    },
    setting: setting === undefined ? null : stateSetting(setting),
    polarity:
      setting === undefined
        ? null
        : { electrode: setting.polarity.polarity, source: setting.polarity.source },
    limits: setting?.limits ?? [],
    electric: electric ?? null,
    air: air ?? null,
    place: place ?? null,
    ...(setting?.turning !== undefined && { turning: stateTurning(setting.turning) }),
    connections: setting?.connections ?? [],
    checks: setting?.checks ?? [],
    issues: setting?.issues ?? [],
    cautions: [
      ...(electric?.kind === 'operating_point' ? electric.cautions : []),
      ...(air?.cautions ?? []),
      ...(place?.cautions ?? []),
    ],
  };
}

function stateSetting({ of, candidate, passes }: SettingOutcome): SupplySetting {
  return {
    of,
    electrode_diameter_mm: inUnit(candidate.electrode.diameter, 'mm'),
    current_A: candidate.current,
    arc_voltage_V: candidate.voltage,
    travel_mm_per_min: inUnit(candidate.travel, 'mm_per_min'),
    pass_length_mm: inUnit(candidate.passLength, 'mm'),
    passes,
    pass_time_s: candidate.passLength / candidate.travel,
  };
}

function stateTurning({
  travel,
  shell,
  turn,
  roll,
  rollDiameter,
}: GirthTurning): Stated<typeof turningSchema> {
  return {
    travel_mm_per_min: inUnit(travel, 'mm_per_min'),
    shell_rev_per_min: 60 * shell,
    turn_s: turn,
    roll_diameter_mm: rollDiameter === undefined ? null : inUnit(rollDiameter, 'mm'),
    roll_rev_per_min: roll === undefined ? null : 60 * roll,
  };
}
