import type { Job } from '../job/index.ts';
import type { Source } from '../limit/index.ts';
import { metalOf } from '../material/index.ts';
import { fromUnit } from '../quantity/index.ts';
import { preheatMethodB } from './preheat-method-b.ts';

/** Temperature of the plate when gouging begins, and why it is that. */
export interface GougingStart {
  /** Temperature of the plate [K]. */
  readonly temperature: number;
  /** Whether the job states it. */
  readonly stated: boolean;
  /** Whether it is known what the plate asks for: not without the composition of a steel that can harden. */
  readonly known: boolean;
  readonly source: Source;
}

/**
 * Temperature of the plate when gouging begins: as the job states it, or else that of the re-weld.
 *
 * No code has a formula for a preheat for gouging; shops gouge at the preheat for welding the same joint. Without
 * a composition, for other metals, and where none is asked for, it is the ambient one.
 *
 * @param job - the job [record], from `readJob`
 * @returns temperature, whether it is stated, and its source [record]
 * @source common practice, no source; EN 1011-2 method B (memory)
 * @example
 * gougingStart({ heat: { ambient: 293.15, preheat: 373.15 }, reweld: {}, plate: {} }).temperature // => 373.15
 * gougingStart({ heat: { ambient: 293.15 }, reweld: {}, plate: { material: 'nickel_alloy' } }).temperature // => 293.15
 */
export function gougingStart(job: Pick<Job, 'heat' | 'reweld' | 'plate'>): GougingStart {
  const { heat, plate, reweld } = job;
  if (heat.preheat !== undefined) {
    return {
      temperature: heat.preheat,
      stated: true,
      known: true,
      source: { text: 'the job', provenance: 'job file' },
    };
  }
  const ambient = (text: string, known = true): GougingStart => ({
    temperature: heat.ambient,
    stated: false,
    known,
    source: { text, provenance: 'common practice' },
  });
  if (!metalOf(plate.material).hardens)
    return ambient('this metal is gouged without preheat unless the job says so');
  if (plate.composition?.C === undefined || plate.composition.Mn === undefined)
    return ambient(
      'the ambient temperature: without carbon and manganese no preheat can be worked out, which does not mean that none is needed',
      false,
    );
  const { temperature } = preheatMethodB({
    composition: plate.composition,
    thickness: plate.thickness,
    hydrogen: reweld.hydrogen_mL_per_100g,
    heatInput: fromUnit(reweld.heat_input_kJ_per_mm, 'kJ/mm'),
  });
  if (temperature <= heat.ambient) return ambient('the ambient temperature: the re-weld asks for no preheat');
  return {
    temperature,
    stated: false,
    known: true,
    source: {
      text: 'that of the re-weld by EN 1011-2 method B; common practice, no code formula for gouging',
      provenance: 'common practice',
    },
  };
}
