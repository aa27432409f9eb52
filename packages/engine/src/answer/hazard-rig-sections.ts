import {
  distanceFromLead,
  distanceFromPair,
  fieldOfLead,
  fieldOfPair,
  IMPLANT_FIELD,
  PROJECTILE_FIELD,
} from '../hazard/index.ts';
import type { Job } from '../job/index.ts';
import { airOfKit, type Kit } from '../kit/index.ts';
import type { FieldReport, HazardRow, HazardSection, HazardSetting } from '../result/index.ts';
import { confirmed, hazardRow, recalled } from './hazard-row.ts';

const PRACTICE = { text: 'common practice, no source', provenance: 'common practice' } as const;
const KPA = 1000;
/** Cleaning air: 30 psi [kPa]. */
const CLEANING_MOST = 206.8427188;
/** Bore of a hose that needs a device against its failure from here on: 1/2 in [mm]. */
const HOSE_BORE = 12.7;
/** A lead cannot be nearer than this; at it every current of gouging is over the figure [m]. */
const NEAREST = 1e-3;
const DIRECTIVE = recalled('Directive 2013/35/EU Annex II');

/** Open-circuit volts of the kit's sources, and rules on leads. */
export function shockSection(kit: Kit | undefined): HazardSection {
  const source = confirmed('29 CFR 1910.254(b)(3)');
  return {
    id: 'shock',
    title: 'Electric shock',
    figures: [],
    rows:
      kit === undefined
        ? [noLoadRow('no_load', 'Open-circuit voltage, direct current', null, 'no kit is given')]
        : kit.sources.map((one, index) =>
            noLoadRow(
              `no_load_${index + 1}`,
              `Open-circuit voltage of ${one.name}, direct current`,
              noLoadVoltage(one),
              '',
            ),
          ),
    rules: [
      {
        text: 'No splice or repair in a cable within 10 ft of the holder, unless its insulation is as good as the cable’s; the return cable is rated for the full output.',
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

  function noLoadRow(id: string, rule: string, value: number | null, note: string): HazardRow {
    return hazardRow({ id, rule, value, figure: 100, unit: 'V', sense: 'most', source, note });
  }
}

/** Voltage without load: as stated, or the highest of the points of its curve. */
function noLoadVoltage({ no_load_voltage, points }: Kit['sources'][number]): number | null {
  if (no_load_voltage !== undefined) return no_load_voltage;
  return points === undefined ? null : Math.max(...points.map(({ voltage }) => voltage));
}

/** Current that makes the field: the leads of several torches may lie side by side, and then their fields add up [A]. */
function fieldCurrent({ current_A: current, torches }: HazardSetting): number {
  return current * torches;
}

/** Distances at which the field of the leads has fallen to the values of the directive. */
export function reportField({ site }: Job, setting: HazardSetting): FieldReport {
  const current = fieldCurrent(setting);
  const at = (field: number, what: string): FieldReport['distances'][number] => ({
    field_mT: 1000 * field,
    what,
    single_mm: 1000 * distanceFromLead(current, field),
    pair_mm: 1000 * distanceFromPair(current, field, site.leads.apart),
    source: DIRECTIVE,
  });
  return {
    apart_mm: 1000 * site.leads.apart,
    distances: [
      at(IMPLANT_FIELD, 'people with an implanted device'),
      at(PROJECTILE_FIELD, 'loose steel near strong sources'),
    ],
  };
}

/** Field at the distance of an implant wearer. */
export function fieldSection({ site }: Job, setting: HazardSetting): HazardSection {
  const current = fieldCurrent(setting);
  const several = setting.torches === 1 ? '' : `; ${setting.torches} torches, their leads taken as one`;
  const { wearer, apart } = site.leads;
  const row = (id: string, rule: string, field: number | null): HazardRow =>
    hazardRow({
      id,
      rule,
      value: field === null ? null : 1000 * field,
      figure: 1000 * IMPLANT_FIELD,
      unit: 'mT',
      sense: 'most',
      source: DIRECTIVE,
      note:
        wearer === undefined
          ? 'no implant wearer is stated to come near'
          : `${wearer < NEAREST ? 'touching, reckoned at 1 mm; ' : ''}static field; ripple is not in it${several}`,
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
export function airSection({ site }: Job, kit: Kit | undefined): HazardSection {
  const cleaning = site.cleaning_air;
  const bores =
    kit === undefined
      ? []
      : airOfKit(kit).path.flatMap((item) => (item.kind === 'hose' ? [1000 * item.bore] : []));
  return {
    id: 'air',
    title: 'Compressed air',
    figures: [],
    rows: [
      hazardRow({
        id: 'cleaning_air',
        rule: 'Air for cleaning, dead-ended',
        value: cleaning === undefined ? null : cleaning / KPA,
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
export function spaceSection({ site }: Job): HazardSection {
  const closed = site.place === 'closed_space';
  const oxygen = site.oxygen === undefined ? null : 100 * site.oxygen;
  const source = confirmed('29 CFR 1910.146');
  const note = oxygen === null ? 'no reading is stated' : '';
  const row = (id: string, rule: string, figure: number, sense: 'most' | 'least'): HazardRow =>
    hazardRow({ id, rule, value: oxygen, figure, unit: '% vol', sense, source, note });
  return {
    id: 'space',
    title: 'Closed space',
    figures: [],
    rows:
      closed || oxygen !== null
        ? [
            row('oxygen_least', 'Oxygen, at least', 19.5, 'least'),
            row('oxygen_most', 'Oxygen, at most', 23.5, 'most'),
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
