import type { Job } from '../job/index.ts';
import { fromUnit, inUnit } from '../quantity/index.ts';
import { CARBON_MONOXIDE_SOURCE, type ElectrodeGas } from './carbon-monoxide.ts';
import { dilutionFlow, purgeTime } from './dilution.ts';
import { exposureLimit } from './exposure-limit.ts';
import { asksForFans, FLOW_PER_WELDER, LEAST_CEILING, ROOM_PER_WELDER } from './general-ventilation.ts';
import { confirmed, derived, hazardRow, recalled } from './hazard-row.ts';
import { CAPTURE_VELOCITY, hoodFlow, movableHood } from './hood-flow.ts';
import type { FigureOutcome, RowOutcome, RuleOutcome, SectionOutcome } from './outcome.ts';
import { matrixVentilation } from './ventilation-matrix.ts';
import { breaksRule } from './wording.ts';

const MINUTE = 60;
const VENTILATION = confirmed('29 CFR 1910.252(c)(2)');

/** Air: the room against the rule for welders, fans and hood against what they must move. */
export function fumeSection(job: Job, gas: ElectrodeGas | null): SectionOutcome {
  return {
    id: 'fume',
    title: 'Fume and gas',
    figures: [...gasFigures(gas), ...dilutionFigures(job)],
    rows: [...roomRows(job), ...hoodRows(job), ...dilutionRows(job), ...gasRows(job, gas)],
    rules: fumeRules(job),
  };
}

/** The rule for welders, by which a gouging torch is let off too lightly. */
function roomRows({ site }: Job): RowOutcome[] {
  const { room, ventilation, torches, place } = site;
  if (place === 'open_air') return [];
  const closed = place === 'closed_space';
  const asks = closed
    ? true
    : asksForFans({
        volume: room.volume ?? null,
        ceiling: room.ceiling ?? null,
        barriers: room.barriers === undefined ? null : room.barriers === 'some',
        torches,
      });
  const flow = ventilation.flow;
  return [
    hazardRow({
      id: 'room_volume',
      rule: 'Room for each torch',
      value: room.volume === undefined ? null : room.volume / torches,
      figure: ROOM_PER_WELDER,
      unit: 'm3',
      sense: 'least',
      source: VENTILATION,
      note: room.volume === undefined ? 'no volume is stated' : 'the rule was written for welders',
    }),
    hazardRow({
      id: 'room_ceiling',
      rule: 'Height of the ceiling',
      value: room.ceiling ?? null,
      figure: LEAST_CEILING,
      unit: 'm',
      sense: 'least',
      source: VENTILATION,
      note: room.ceiling === undefined ? 'no ceiling is stated' : '',
    }),
    hazardRow({
      id: 'fan_flow',
      rule: 'Air that fans bring through the room',
      value: flow ?? null,
      figure: FLOW_PER_WELDER * torches,
      unit: 'm3/min',
      sense: 'least',
      source: VENTILATION,
      note: `${closed ? 'a closed space: ' : ''}${FANS[String(asks) as keyof typeof FANS]}${flow === undefined ? '; no air flow is stated' : ''}`,
    }),
  ];
}

const FANS = {
  true: 'the rule asks for fans here, or for a hood at the source or airline respirators',
  false:
    'the rule does not ask for fans in this room; a gouging torch gives off more than the rule had in mind',
  null: 'what is stated of the room does not decide whether the rule asks for fans',
} as const;

function hoodRows({ site }: Job): RowOutcome[] {
  const { hood_flow: flow, hood_distance: distance, hood_area: area, hood_flange } = site.ventilation;
  if (flow === undefined && distance === undefined && area === undefined) return [];
  const table = distance === undefined ? null : movableHood(distance);
  const value = flow ?? null;
  const downstream = 'the jet can carry fume past a hood: place it downstream';
  return [
    hazardRow({
      id: 'hood_table',
      rule: 'Movable hood, air flow by its distance from the arc',
      value,
      figure: table === null ? null : table.flow,
      unit: 'm3/min',
      sense: 'least',
      source: confirmed('29 CFR 1910.252(c)(3)(i) table'),
      note:
        distance === undefined
          ? 'no distance is stated'
          : table === null
            ? 'the table ends at 12 in'
            : downstream,
    }),
    hazardRow({
      id: 'hood_formula',
      rule: 'Hood, air flow for 100 ft/min at the arc',
      value,
      figure:
        distance === undefined || area === undefined
          ? null
          : hoodFlow(distance, area, hood_flange === 'flanged', CAPTURE_VELOCITY),
      unit: 'm3/min',
      sense: 'least',
      source: recalled('ACGIH, Industrial Ventilation; 100 ft/min is a figure for welding'),
      note:
        distance === undefined || area === undefined
          ? 'distance and opening of the hood are not both stated'
          : downstream,
    }),
  ];
}

/** Dilution of the whole fume as iron oxide, which is the least that it asks for: too little is over, enough says nothing. */
function dilutionRows({ site }: Job): RowOutcome[] {
  const { fume, ventilation, torches } = site;
  const limit = exposureLimit('iron_oxide', fume.limits);
  const needed =
    fume.emission_mg_per_min === undefined || limit === null
      ? null
      : dilutionFlow((torches * fume.emission_mg_per_min) / MINUTE, limit.most, fume.mixing_factor);
  const row = hazardRow({
    id: 'dilution',
    rule: 'Fans alone, if all of the fume were iron oxide',
    value: ventilation.flow ?? null,
    figure: needed,
    unit: 'm3/min',
    sense: 'least',
    source: derived('general dilution equation; the fume of a torch is an assumption unless measured'),
    note:
      fume.emission_mg_per_min === undefined
        ? 'no fume of a torch is stated, and no published figure was found'
        : limit === null
          ? 'this set has no limit for iron oxide'
          : 'copper and manganese need more: see the table of substances',
  });
  // air enough for the most lenient substance alone is no finding on the fume as it is
  return [row.verdict === 'within the figure named' ? { ...row, verdict: 'not covered by the source' } : row];
}

/** Carbon burnt off the electrode and the carbon monoxide that may come of it, while one arc burns. */
function gasFigures(gas: ElectrodeGas | null): FigureOutcome[] {
  if (gas === null) return [];
  const figure = (name: string, value: number, note: string): FigureOutcome => ({
    name,
    value,
    unit: 'g/min',
    note,
    source: CARBON_MONOXIDE_SOURCE,
  });
  return [
    figure('Carbon burnt off the electrode of one torch', gas.carbon, 'while its arc burns, 95th percentile'),
    figure('Carbon monoxide from it, at least', gas.least, 'if a tenth of the carbon becomes it'),
    figure('Carbon monoxide from it, at most', gas.most, 'if all of the carbon becomes it: an upper bound'),
  ];
}

/** Fans against the carbon monoxide: short if they would not do for the least of it, no finding up to the most. */
function gasRows({ site }: Job, gas: ElectrodeGas | null): RowOutcome[] {
  const { fume, ventilation, torches, place } = site;
  const limit = exposureLimit('carbon_monoxide', fume.limits);
  if (place === 'open_air' || gas === null || limit === null) return [];
  const needed = (emission: number): number =>
    dilutionFlow(inUnit(torches * emission, 'mg/m3'), limit.most, fume.mixing_factor);
  const { flow } = ventilation;
  const row = hazardRow({
    id: 'dilution_carbon_monoxide',
    rule: 'Fans alone, if all carbon of the electrode became carbon monoxide',
    value: flow ?? null,
    figure: needed(gas.most),
    unit: 'm3/min',
    sense: 'least',
    source: CARBON_MONOXIDE_SOURCE,
    note: `${flow === undefined ? 'no air flow is stated; ' : ''}while the arc burns, settled; a tenth of it if a tenth of the carbon becomes it. Extract at the source and measure`,
  });
  const open = flow !== undefined && flow >= needed(gas.least);
  return [open && breaksRule(row.verdict) ? { ...row, verdict: 'not covered by the source' } : row];
}

function dilutionFigures({ site }: Job): FigureOutcome[] {
  const { fume, ventilation, room, torches } = site;
  const { flow } = ventilation;
  if (flow === undefined) return [];
  const effective = flow / fume.mixing_factor;
  const source = derived('general dilution equation, one well-mixed zone');
  return [
    ...(fume.emission_mg_per_min === undefined
      ? []
      : [
          {
            name: 'Fume with the fans alone, settled',
            value: fromUnit((torches * fume.emission_mg_per_min) / MINUTE / effective, 'mg/m3'),
            unit: 'mg/m3' as const,
            note: 'all of the fume together, mixing factor in it',
            source,
          },
        ]),
    ...(room.volume === undefined
      ? []
      : [
          {
            name: 'Air clears to a tenth in',
            value: purgeTime(10, 1, { volume: room.volume, flow: effective }),
            unit: 'min' as const,
            note: 'after the last arc, mixing factor in it',
            source,
          },
        ]),
  ];
}

function fumeRules({ site, plate }: Job): RuleOutcome[] {
  const { coating } = site.fume;
  const matrix = matrixVentilation(
    site.workplace ?? null,
    site.duration ?? null,
    plate.material,
    coating ?? null,
  );
  const bgr = confirmed('BGR 500 chapter 2.26, table 2; TRGS 528 is newer');
  return [
    ...coatingRules(coating),
    {
      text:
        matrix === null
          ? 'German matrix for arc-air gouging: not covered; it needs the workplace (fixed or changing), the duration, and a coated, un-, low- or high-alloy metal, and it knows neither lead nor cadmium.'
          : `German matrix for arc-air gouging asks for: ${matrix}.`,
      source: bgr,
    },
    {
      text: 'HSE names engineering control plus respiratory protection for this process, and a thorough examination of extraction every 14 months.',
      source: confirmed('HSE WL16, seen in part'),
    },
    {
      text: 'Short runs count too: short-term metals in the breathing zone were high against limits over eight hours.',
      source: confirmed('Berlinger et al. 2019, J Occup Environ Hyg 16(6)'),
    },
    ...(site.place === 'closed_space'
      ? [
          {
            text: 'In a closed space all replacing air is clean and fit to breathe; where ventilation is not enough, airline respirators, and somebody outside.',
            source: confirmed('29 CFR 1910.252(c)(4)'),
          },
        ]
      : []),
  ];
}

/** What a coating asks for before heat comes near it. */
function coatingRules(coating: Job['site']['fume']['coating']): RuleOutcome[] {
  const practice = { text: 'common practice, no source', provenance: 'common practice' as const };
  switch (coating) {
    case undefined:
      return [
        {
          text: 'Whether the metal is coated is not stated: find out before heat comes near it.',
          source: practice,
        },
      ];
    case 'other':
      return [
        {
          text: 'Fume of the coating: not covered by the limits here. Strip it where gouging is done, or have it judged first.',
          source: practice,
        },
      ];
    case 'lead':
    case 'cadmium':
      return [
        {
          text: `Coating with ${coating}: strip it where gouging is done. Where it stays: capture at the source or airline respirators, for everybody near, and never natural ventilation alone; wash before eating, and no working clothes go home.`,
          source: recalled(
            coating === 'lead' ? '29 CFR 1910.252(c)(7), 1910.1025' : '29 CFR 1910.252(c)(8), 1910.1027',
          ),
        },
      ];
    case 'zinc':
      return [
        {
          text: 'Coating with zinc: strip it where gouging is done, or capture its fume at the source: metal fume fever comes hours later.',
          source: recalled('29 CFR 1910.252(c)(6)'),
        },
      ];
    default:
      return [];
  }
}
