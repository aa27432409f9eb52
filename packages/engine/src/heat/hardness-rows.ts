import type { Job } from '../job/index.ts';
import { fullComposition, metalOf } from '../material/index.ts';
import { hardnessBand, QUENCH_TIME, skinHardness } from './hardness-band.ts';
import { hardnessByFormulas, martensiteHardness } from './hardness-formulas.ts';
import type { HeatSpan } from './kept-heat.ts';
import type { HardnessOutcome } from './outcome.ts';
import { rounded } from './span.ts';

/** Cooling times that the formulas are stated for, about [s]. */
const STATED = [2, 30] as const;
/** Carbon contents that the formulas are stated for, about [%]. */
const CARBON = [0.02, 0.3] as const;

/** The hardness beside the groove as a band, or why there is none. */
export function hardnessOutcome({ plate }: Job, cooling: HeatSpan | null): HardnessOutcome | string {
  const { material, composition } = plate;
  if (!metalOf(material).hardens) {
    return 'The formulas are for carbon and low-alloy steel that turns to austenite and back.';
  }
  if (composition?.C === undefined || composition.Mn === undefined) {
    return 'The formulas need the composition, with carbon and manganese at least: state it from the certificate.';
  }
  if (cooling === null) {
    return 'The groove’s surface does not pass both 800 and 500 degC in all three runs, so there is no cooling time to take.';
  }
  const times = Object.values(cooling);
  const [quickest, slowest] = [Math.min(...times), Math.max(...times)];
  const { C: carbon } = fullComposition(composition);
  const band = hardnessBand(composition, quickest, slowest);
  const by = {
    slow: hardnessByFormulas(composition, slowest),
    quick: hardnessByFormulas(composition, quickest),
  };
  return {
    least: band.least,
    most: band.most,
    formulas: hardnessByFormulas(composition, cooling.middle).map(
      ({ name, hardness: middle, source }, index) => ({
        name,
        value: { least: by.slow[index]!.hardness, middle, most: by.quick[index]!.hardness },
        source: { text: source, provenance: 'memory' },
      }),
    ),
    skin: skinHardness(),
    note: [
      'Four formulas over the cooling times of the field, widened by their published scatter of 28 HV: a band, never one number.',
      ...(quickest < QUENCH_TIME
        ? [
            `Below ${QUENCH_TIME} s the plate’s martensite, ${rounded(martensiteHardness(Math.min(0.8, carbon)))} HV, is taken as the upper end at least.`,
          ]
        : []),
      ...(quickest < STATED[0] || slowest > STATED[1]
        ? [
            `The formulas are stated for about ${STATED[0]} to ${STATED[1]} s; the times here reach from ${rounded(quickest)} to ${rounded(slowest)} s.`,
          ]
        : []),
      ...(carbon < CARBON[0] || carbon > CARBON[1]
        ? [
            `The formulas are stated for about ${CARBON[0]} to ${CARBON[1]} % carbon; this plate has ${carbon} %.`,
          ]
        : []),
      'They are for the plate’s own composition: the carbon-rich film on the gouged face is harder, whatever the plate, until it is ground off. The re-weld melts or tempers this zone again.',
    ].join(' '),
  };
}
