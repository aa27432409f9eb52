import { formatAmount, formatBound, gougingStart, type ReadJob, type UnitSystem } from '@furrow/engine';
import { type Figure, valueAndUnit } from './figure.ts';

/** What the plate is brought to before the first arc, and may be at before each further pass, as big numbers. */
export function plateFigures(read: ReadJob, units: UnitSystem): Figure[] {
  const { job } = read;
  const start = gougingStart(job);
  const shown = (kelvin: number): string => formatAmount(kelvin, 'temperature', units);
  const warm = start.temperature > job.heat.ambient;
  return [
    start.stated
      ? {
          label: 'Preheat',
          ...valueAndUnit(formatBound(start.temperature, 'temperature', units, 'least')),
          note: 'at least, beside the seam',
        }
      : {
          label: 'Preheat',
          // figures for a warm plate, or for one whose steel is not known, must not be read as leave to gouge it cold
          value: warm || !start.known ? 'ask' : 'none',
          note: `not stated; ${shown(start.temperature)} assumed`,
        },
    {
      label: 'Interpass',
      ...valueAndUnit(formatBound(job.heat.interpass_most, 'temperature', units, 'most')),
      note: interpassStated(read) ? 'at most, before a pass' : 'at most; not stated, usual',
    },
  ];
}

/** The same in one sentence, for the papers that stand beside the card. */
export function plateWords(read: ReadJob, units: UnitSystem): string {
  const { job } = read;
  const start = gougingStart(job);
  const shown = (kelvin: number): string => formatAmount(kelvin, 'temperature', units);
  const least = start.stated
    ? `Plate beside the seam before the first arc: at least ${formatBound(start.temperature, 'temperature', units, 'least')}`
    : `Preheat: none stated; the figures assume a plate at ${shown(start.temperature)}${start.temperature > job.heat.ambient ? ', as for the re-weld' : ''}`;
  const usual = interpassStated(read) ? '' : ' (not stated: what is usual for this metal)';
  return `${least}. Before each further pass: at most ${formatBound(job.heat.interpass_most, 'temperature', units, 'most')}${usual}.`;
}

function interpassStated({ defaultsUsed }: ReadJob): boolean {
  return defaultsUsed.every(({ path }) => path !== 'heat.interpass_most');
}
