import type { Job } from '../job/index.ts';
import { metalOf } from '../material/index.ts';
import { fromUnit } from '../quantity/index.ts';
import { gougingStart } from './gouging-start.ts';
import { preheatHydrogenControl } from './preheat-hydrogen-control.ts';
import { preheatMethodB } from './preheat-method-b.ts';

/** Temperatures at which a mend of a groove is asked about, beside that of the job; SI. */
export interface RepairPreheat {
  /** Temperature at which the groove was to be gouged and welded [K]. */
  readonly planned: number;
  /** Of a weld on the plate that is left alone; undefined where the methods do not tell [K]. */
  readonly plateLeft?: number;
  /** Of a short weld that the whole plate holds fast; undefined where the methods do not tell [K]. */
  readonly heldFast?: number;
  /** The highest of them, of the plate as it is included; undefined where the methods do not tell [K]. */
  readonly asked?: number;
}

/**
 * Preheat for mending a stretch of a groove: cutting it again, or welding back what is too deep.
 *
 * The formula asks less of the thin plate that is left, and heat runs off into the whole plate beside it: the plate as it
 * is counts, and the thin one is told for comparison. A short weld deep in a plate is held from all sides, so restraint
 * is taken as high. Nothing is taken below the temperature of the job.
 *
 * @param job - the job [record], from `readJob`
 * @param left - plate left under the groove [m], > 0
 * @returns the temperatures [record]; those of the methods only for a steel that hardens, with carbon and manganese stated
 * @source EN 1011-2 method B and AWS D1.1 hydrogen control (memory); high restraint of a repair: common practice, no source
 * @example
 * const plate = { material: 'carbon_steel', thickness: 0.04, composition: { C: 0.17, Mn: 1.4 } };
 * const job = { plate, reweld: { hydrogen_mL_per_100g: 5, heat_input_kJ_per_mm: 1.2, restraint: 'medium' }, heat: { ambient: 293.15 } };
 * repairPreheat(job, 0.012).plateLeft // => 304.240949
 */
export function repairPreheat(job: Pick<Job, 'heat' | 'plate' | 'reweld'>, left: number): RepairPreheat {
  const { plate, reweld, heat } = job;
  const planned = gougingStart(job).temperature;
  const { composition, material, thickness } = plate;
  if (!metalOf(material).hardens || composition?.C === undefined || composition.Mn === undefined)
    return { planned };
  const hydrogen = reweld.hydrogen_mL_per_100g;
  const ofThickness = (each: number): number =>
    Math.max(
      heat.ambient,
      preheatMethodB({
        composition,
        thickness: each,
        hydrogen,
        heatInput: fromUnit(reweld.heat_input_kJ_per_mm, 'kJ/mm'),
      }).temperature,
    );
  const control = preheatHydrogenControl(composition, hydrogen, thickness, 'high').temperature;
  const heldFast = control === null ? undefined : Math.max(heat.ambient, control);
  return {
    planned,
    plateLeft: ofThickness(left),
    ...(heldFast === undefined ? {} : { heldFast }),
    asked: Math.max(planned, ofThickness(thickness), heldFast ?? 0),
  };
}
