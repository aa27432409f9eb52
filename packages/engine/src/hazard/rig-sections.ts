import type { Job } from '../job/index.ts';
import { amountOf, FOOT, say } from '../quantity/index.ts';
import { confirmed, hazardRow, recalled } from './hazard-row.ts';
import {
  distanceFromLead,
  distanceFromPair,
  fieldOfLead,
  fieldOfPair,
  IMPLANT_FIELD,
  PROJECTILE_FIELD,
} from './magnetic-field.ts';
import type { FieldOutcome, HazardSettingOutcome, RowOutcome, SectionOutcome } from './outcome.ts';
import type { HazardQuestion } from './question.ts';

const PRACTICE = { text: 'common practice, no source', provenance: 'common practice' } as const;
/** Cleaning air: 30 psi [Pa]. */
const CLEANING_MOST = 206_842.7188;
/** Bore of a hose that needs a device against its failure from here on: 1/2 in [m]. */
const HOSE_BORE = 12.7e-3;
/** A lead cannot be nearer than this; at it every current of gouging is over the figure [m]. */
const NEAREST = 1e-3;
const DIRECTIVE = recalled('Directive 2013/35/EU Annex II');

/** Open-circuit volts of the kit's sources, and rules on leads. */
export function shockSection(sources: HazardQuestion['sources']): SectionOutcome {
  const source = confirmed('29 CFR 1910.254(b)(3)');
  return {
    id: 'shock',
    title: 'Electric shock',
    figures: [],
    rows:
      sources === undefined
        ? [noLoadRow('no_load', 'Open-circuit voltage, direct current', null, 'no kit is given')]
        : sources.map(({ name, noLoadVoltage }, index) =>
            noLoadRow(
              `no_load_${index + 1}`,
              `Open-circuit voltage of ${name}, direct current`,
              noLoadVoltage,
              '',
            ),
          ),
    rules: [
      {
        text: say`No splice or repair in a cable within ${amountOf(10 * FOOT, 'length')} of the holder, unless its insulation is as good as the cable’s; the return cable is rated for the full output.`,
        source: confirmed('29 CFR 1926.351(b)'),
      },
      {
        text: 'Dry gloves, whole insulation, electrode and work never touched together; power off before the holder is touched.',
        source: PRACTICE,
      },
      {
        text: 'The electrode is changed with the power off, by the switch at hand or by a word to whoever stands at the source.',
        source: PRACTICE,
      },
      {
        text: 'Wet, damp, hot or all-metal places: direct current only, a source marked for increased hazard of shock, dry insulating mats and clothing, nobody alone, and a way to cut the power that is always in reach.',
        source: recalled('IEC 60974-1 and IEC 60974-9, environments of increased hazard of electric shock'),
      },
    ],
  };

  function noLoadRow(id: string, rule: string, value: number | null, note: string): RowOutcome {
    return hazardRow({ id, rule, value, figure: 100, unit: 'V', sense: 'most', source, note });
  }
}

/** Current that makes the field: the leads of several torches may lie side by side, and then their fields add up [A]. */
function fieldCurrent({ current, torches }: HazardSettingOutcome): number {
  return current * torches;
}

/** Distances at which the field of the leads has fallen to the values of the directive. */
export function fieldOf({ site }: Job, setting: HazardSettingOutcome): FieldOutcome {
  const current = fieldCurrent(setting);
  const at = (field: number, what: string): FieldOutcome['distances'][number] => ({
    field,
    what,
    single: distanceFromLead(current, field),
    pair: distanceFromPair(current, field, site.leads.apart),
    source: DIRECTIVE,
  });
  return {
    apart: site.leads.apart,
    distances: [
      at(IMPLANT_FIELD, 'people with an implanted device'),
      at(PROJECTILE_FIELD, 'loose steel near strong sources'),
    ],
  };
}

/** Field at the distance of an implant wearer. */
export function fieldSection({ site }: Job, setting: HazardSettingOutcome): SectionOutcome {
  const current = fieldCurrent(setting);
  const several = setting.torches === 1 ? '' : `; ${setting.torches} torches, their leads taken as one`;
  const { wearer, apart } = site.leads;
  const row = (id: string, rule: string, field: number | null): RowOutcome =>
    hazardRow({
      id,
      rule,
      value: field,
      figure: IMPLANT_FIELD,
      unit: 'mT',
      sense: 'most',
      source: DIRECTIVE,
      note:
        wearer === undefined
          ? 'no implant wearer is stated to come near'
          : `${wearer < NEAREST ? 'touching, taken at 1 mm; ' : ''}static field; ripple is not in it${several}`,
    });
  const near = wearer === undefined ? undefined : Math.max(wearer, NEAREST);
  return {
    id: 'field',
    title: 'Magnetic field',
    figures: [],
    rows: [
      row(
        'field_single',
        'Field beside a single lead, implant wearer',
        near === undefined ? null : fieldOfLead(current, near),
      ),
      row(
        'field_pair',
        'Field beside leads laid together, implant wearer',
        near === undefined ? null : fieldOfPair(current, near, apart),
      ),
    ],
    rules: [
      {
        text: 'People with an implanted device stay out unless cleared in person, medically and technically: no safe current is known, and gouging lies above what most guidance discusses.',
        source: confirmed('TWI FAQ on pacemakers; CTU Prague journal 2023'),
      },
      {
        text: 'Leads together, away from the body, never over the shoulder or round the arm.',
        source: confirmed('TWI FAQ on pacemakers'),
      },
    ],
  };
}

/** Compressed air: for cleaning, and hoses that may fail. */
export function airSection({ site }: Job, bores: HazardQuestion['hoseBores'] = []): SectionOutcome {
  const cleaning = site.cleaning_air;
  return {
    id: 'air',
    title: 'Compressed air',
    figures: [],
    rows: [
      hazardRow({
        id: 'cleaning_air',
        rule: 'Air for cleaning, dead-ended',
        value: cleaning ?? null,
        figure: CLEANING_MOST,
        unit: 'kPa',
        sense: 'most',
        source: confirmed('29 CFR 1910.242(b)'),
        note: cleaning === undefined ? 'no pressure is stated' : 'with chip guarding; never on persons',
      }),
      hazardRow({
        id: 'hose_bore',
        rule: 'Widest hose without a device against its failure',
        value: bores.length === 0 ? null : Math.max(...bores),
        figure: HOSE_BORE,
        unit: 'mm',
        sense: 'most',
        source: recalled('29 CFR 1926.302(b)(7), construction'),
        note:
          bores.length === 0
            ? 'no kit with hoses is given'
            : 'a wider hose needs a device that cuts the pressure at its source',
      }),
    ],
    rules: [
      {
        text: 'Compressed air only, never oxygen in its place: not through the torch, not to freshen a place, not to blow dust off. Metal, oil and clothing burn in it at a spark.',
        source: recalled('29 CFR 1910.252(c)(4) on ventilation, ANSI Z49.1'),
      },
      {
        text: 'The jet of the torch is no cleaning air: never towards persons or clothing. Hoses and couplings are secured.',
        source: confirmed('29 CFR 1910.242(b)'),
      },
    ],
  };
}

/** Closed space: oxygen and what else it asks for; told in short where the place is not closed. */
export function spaceSection({ site }: Job): SectionOutcome {
  const closed = site.place === 'closed_space';
  const oxygen = site.oxygen ?? null;
  const source = confirmed('29 CFR 1910.146');
  const note = oxygen === null ? 'no reading is stated' : '';
  const row = (id: string, rule: string, figure: number, sense: 'most' | 'least'): RowOutcome =>
    hazardRow({ id, rule, value: oxygen, figure, unit: '% vol', sense, source, note });
  return {
    id: 'space',
    title: 'Closed space',
    figures: [],
    rows:
      closed || oxygen !== null
        ? [
            row('oxygen_least', 'Oxygen, at least', 0.195, 'least'),
            row('oxygen_most', 'Oxygen, at most', 0.235, 'most'),
          ]
        : [],
    rules: closed
      ? [
          {
            text: 'Never oxygen to ventilate or to freshen it: clothing and hair burn at a spark.',
            source: recalled('29 CFR 1910.252(c)(4)'),
          },
          { text: 'Permit, air test before and during work, ventilation or airline respirators.', source },
          {
            text: 'An attendant outside; cylinders and power source outside.',
            source: confirmed('29 CFR 1910.252(a)(4), (c)(4)'),
          },
          {
            text: 'At every longer stop: electrode out of the holder, power disconnected, air closed.',
            source: recalled('29 CFR 1910.252(a)(4)'),
          },
        ]
      : [
          {
            text: 'The place is not stated as a closed space. A vessel, a pit, a box girder or a tank is one: state it, and this section asks for more.',
            source,
          },
        ],
  };
}
