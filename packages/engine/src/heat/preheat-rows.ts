import type { Job } from '../job/index.ts';
import {
  type Composition,
  carbonEquivalentCEN,
  carbonEquivalentCET,
  carbonEquivalentIIW,
  crackingParameterPcm,
  metalOf,
} from '../material/index.ts';
import { amountOf, fromUnit, inUnit, type Sentence, say } from '../quantity/index.ts';
import type { GougingStart } from './gouging-start.ts';
import type { PreheatOutcome, PreheatRow } from './outcome.ts';
import { preheatHydrogenControl } from './preheat-hydrogen-control.ts';
import { preheatMethodB } from './preheat-method-b.ts';
import { preheatPrequalified } from './preheat-prequalified.ts';

/** Hydrogen up to which the prequalified table's low-hydrogen category is told [mL/100 g] (judgement). */
const LOW_HYDROGEN = 10;
/** Temperatures that differ by less are the same to a person with a crayon [K]. */
const SAME = 15;

/** The preheats of a steel side by side, or why there are none. */
export function preheatOutcome(job: Job, start: GougingStart): PreheatOutcome | string {
  const { material, composition } = job.plate;
  if (!metalOf(material).hardens) {
    return 'Both methods are for carbon and low-alloy steel; for this metal follow its own welding procedure.';
  }
  if (composition?.C === undefined || composition.Mn === undefined) {
    return tableAlone(job, start);
  }
  const methods = [methodB(job, composition), hydrogenControl(job, composition), prequalified(job)];
  return { methods, differences: differencesOf(methods, job, composition), gouging: start };
}

const NO_COMPOSITION =
  'The other methods need the composition, with carbon and manganese at least: state it from the certificate.';

/** What can be told by thickness alone, where the steel is one that the code's table may list. */
function tableAlone(job: Job, start: GougingStart): PreheatOutcome | string {
  return metalOf(job.plate.material).prequalified
    ? { methods: [prequalified(job)], differences: [NO_COMPOSITION], gouging: start }
    : NO_COMPOSITION.replace('The other methods need', 'Both methods need');
}

function methodB({ plate, reweld, heat }: Job, composition: Composition): PreheatRow {
  const result = preheatMethodB({
    composition,
    thickness: plate.thickness,
    hydrogen: reweld.hydrogen_mL_per_100g,
    heatInput: fromUnit(reweld.heat_input_kJ_per_mm, 'kJ/mm'),
  });
  return {
    method: 'EN 1011-2, method B',
    temperature: result.temperature,
    parts: [
      { name: 'carbon equivalent CET', value: carbonEquivalentCET(composition), unit: '%' },
      { name: 'of the carbon equivalent', value: result.ofCarbon, unit: 'K' },
      { name: 'of the thickness', value: result.ofThickness, unit: 'K' },
      { name: 'of the hydrogen', value: result.ofHydrogen, unit: 'K' },
      { name: 'of the heat input', value: result.ofHeat, unit: 'K' },
    ],
    insideRange: result.outside.length === 0,
    remarks: [
      ...absentOf(composition),
      ...result.outside.map((each) => `Outside the range of the method: ${each}.`),
      ...(result.temperature <= heat.ambient
        ? ['Not above the ambient temperature: no preheat is asked for.']
        : []),
      'Where the CET of the filler is less than 0.03 % below that of the plate, the filler’s CET + 0.03 % governs; the filler is not known here.',
    ],
    source: { text: 'EN 1011-2:2001 Annex C, method B', provenance: 'memory' },
  };
}

/** Elements of CET that the job does not state and that count as absent: each of them would ask for more. */
function absentOf(composition: Composition): string[] {
  const absent = (['Mo', 'Cr', 'Cu', 'Ni'] as const).filter((element) => composition[element] === undefined);
  return absent.length === 0
    ? []
    : [`Not stated and counted as absent: ${absent.join(', ')}; what there is of them asks for more.`];
}

function hydrogenControl({ plate, reweld }: Job, composition: Composition): PreheatRow {
  const { hydrogen_mL_per_100g: hydrogen, restraint } = reweld;
  const result = preheatHydrogenControl(composition, hydrogen, plate.thickness, restraint);
  return {
    method: 'AWS D1.1, hydrogen control',
    temperature: result.temperature,
    parts: [
      { name: 'cracking parameter Pcm', value: result.pcm, unit: '%' },
      { name: 'susceptibility index', value: result.index, unit: '-' },
      ...(result.group === null
        ? []
        : [
            {
              name: `group ${result.group}`,
              value: 'ABCDEFG'.indexOf(result.group) + 1,
              unit: 'of 7' as const,
            },
          ]),
    ],
    insideRange: result.group !== null,
    remarks: [
      ...(result.group === null
        ? ['Pcm is beyond the last column of the table: the method does not cover this steel.']
        : [`Restraint taken as ${restraint}.`]),
      ...(result.none
        ? [
            say`The table asks for less than ${amountOf(291.483, 'temperature')}: a plate at room temperature needs no preheat.`,
          ]
        : []),
      'The tables were recalled, not read, but for one cell each: look the temperature up in the code.',
    ],
    source: { text: 'AWS D1.1, annex on preheat, hydrogen control', provenance: 'memory' },
  };
}

function prequalified({ plate, reweld }: Job): PreheatRow {
  const low = reweld.hydrogen_mL_per_100g <= LOW_HYDROGEN;
  return {
    method: 'AWS D1.1, prequalified table, category B',
    temperature: low ? preheatPrequalified(plate.thickness) : null,
    parts: [{ name: 'thickness', value: inUnit(plate.thickness, 'mm'), unit: 'mm' }],
    insideRange: low && metalOf(plate.material).prequalified,
    remarks: [
      'Only for the structural carbon steels that the code lists, welded with low hydrogen: see whether this plate is one of them.',
      ...(low ? [] : ['The filler’s hydrogen is too high for the low-hydrogen category.']),
    ],
    source: {
      text: 'US Army Corps of Engineers TI 809-26, table 3-1, after AWS D1.1',
      provenance: 'confirmed',
    },
  };
}

function differencesOf(
  methods: readonly PreheatRow[],
  { reweld, plate }: Job,
  composition: Composition,
): Sentence[] {
  const [b, control] = methods;
  const two = (value: number): string => value.toFixed(2);
  const told: Sentence[] = [
    `They measure the steel differently: CET ${two(carbonEquivalentCET(composition))} % counts carbon most, Pcm ${two(crackingParameterPcm(composition))} % is made for low carbon; beside them CEV ${two(carbonEquivalentIIW(composition))} % and CEN ${two(carbonEquivalentCEN(composition))} %. A limit for one is never compared with a value of another.`,
    say`Method B counts the heat input of the weld (${amountOf(fromUnit(reweld.heat_input_kJ_per_mm, 'kJ/mm'), 'heat_per_length')}); hydrogen control does not, and counts the restraint (${reweld.restraint}), which method B takes as usual throughout.`,
    `Hydrogen enters method B smoothly (${reweld.hydrogen_mL_per_100g} mL/100 g); hydrogen control knows three levels, up to 5, up to 10 and above.`,
    say`Thickness enters method B smoothly and levels off past about ${amountOf(0.06, 'length')}; hydrogen control has five rows, and ${amountOf(plate.thickness, 'depth')} falls into one of them whole.`,
  ];
  if (typeof b?.temperature === 'number' && typeof control?.temperature === 'number') {
    const gap = b.temperature - control.temperature;
    const higher = gap > 0 ? 'method B' : 'hydrogen control';
    told.unshift(
      Math.abs(gap) < SAME
        ? say`Here the two agree within ${amountOf(SAME, 'temperature_difference')}.`
        : say`Here ${higher} asks for ${amountOf(Math.abs(gap), 'temperature_difference')} more than the other.`,
    );
  }
  return told;
}
