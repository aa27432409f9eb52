import { type DocumentPath, inUnit, parseAmount, shownNumber, type UnitSystem } from '@furrow/engine';
import { Document, isCollection, isScalar } from 'yaml';
import { jobFieldAt } from '../../sheet/document/index.ts';
import { boxUnit, typedValue } from '../../sheet/form/index.ts';
import { withoutEmpty } from '../../sheet/questions/index.ts';

/** What a groove is made for, with what the job file says for it. */
export const WORKS = [
  { id: 'back_gouge', title: 'Back-gouge a weld', purpose: 'back-gouge to sound metal', shape: 'u' },
  { id: 'weld_removal', title: 'Take a weld out', purpose: 'take the weld out', shape: 'u' },
  { id: 'pocket', title: 'Clear a defect', purpose: 'clear a defect', shape: 'pocket' },
  { id: 'preparation', title: 'Prepare an edge or joint', purpose: 'prepare the joint', shape: 'u' },
  { id: 'wash', title: 'Wash a surface down', purpose: 'wash the surface down', shape: 'wash' },
] as const;

/** Electrodes that are sold for gouging, by diameter (common practice, no source). */
export const ELECTRODES = [
  '5/32 in',
  '3/16 in',
  '1/4 in',
  '5/16 in',
  '3/8 in',
  '1/2 in',
  '5/8 in',
  '3/4 in',
] as const;

/** What depth is read with: what one reading is good to, its seating included (judgement, no source). */
export const GAUGES = [
  { id: 'bridge', title: 'Bridge gauge or depth gauge', sd: { metric: '0.4 mm', inch: '1/64 in' } },
  { id: 'rule', title: 'Rule and straight edge', sd: { metric: '0.8 mm', inch: '1/32 in' } },
  { id: 'fine', title: 'Dial gauge or scanner', sd: { metric: '0.1 mm', inch: '0.004 in' } },
] as const;

/** What a new job is asked. Amounts stand as typed; a number alone is meant in the unit of its box. */
export interface NewJob {
  readonly title: string;
  readonly work: (typeof WORKS)[number]['id'];
  readonly length: string;
  readonly metal: string;
  readonly thickness: string;
  readonly depth: string;
  readonly plus: string;
  readonly minus: string;
  readonly widthLeast: string;
  readonly widthMost: string;
  readonly electrodes: readonly (typeof ELECTRODES)[number][];
  readonly most: string;
  readonly gauge: (typeof GAUGES)[number]['id'];
}

/** A new job as nothing is answered yet. */
export const UNANSWERED: NewJob = {
  title: '',
  work: 'back_gouge',
  length: '',
  metal: 'carbon_steel',
  thickness: '',
  depth: '',
  plus: '',
  minus: '',
  widthLeast: '',
  widthMost: '',
  electrodes: ['3/8 in', '1/2 in', '5/8 in'],
  most: '',
  gauge: 'bridge',
};

/** Unit of the length of a seam typed without one. */
export const SEAM_UNIT: Readonly<Record<UnitSystem, string>> = { metric: 'm', inch: 'ft' };

/** How much wider than its electrode a groove can be counted on to come out, and room for it [m] (common practice, no source). */
const WIDER = { usual: 3.2e-3, room: 3.2e-3 };

/** Least and greatest width that the electrodes at hand cut in one track, as the file writes it. */
export function usualWidth(
  { electrodes }: Pick<NewJob, 'electrodes'>,
  system: UnitSystem,
): {
  readonly least: string;
  readonly most: string;
} {
  const sizes = electrodes.map((text) => {
    const read = parseAmount(text, 'length');
    return read.ok ? read.value : Number.NaN;
  });
  const least = Math.min(...sizes);
  const most = Math.max(...sizes) + WIDER.usual + WIDER.room;
  if (!Number.isFinite(least) || !Number.isFinite(most)) return { least: '', most: '' };
  // a sixteenth or a whole millimetre, to the side that leaves room
  return system === 'inch'
    ? {
        least: sixteenths(Math.floor(shownNumber(least, 'length', 'inch') * 16)),
        most: sixteenths(Math.ceil(shownNumber(most, 'length', 'inch') * 16)),
      }
    : { least: `${Math.floor(inUnit(least, 'mm'))} mm`, most: `${Math.ceil(inUnit(most, 'mm'))} mm` };
}

function sixteenths(count: number): string {
  const whole = Math.floor(count / 16);
  let [part, of] = [count % 16, 16];
  while (part > 0 && part % 2 === 0) [part, of] = [part / 2, of / 2];
  return [...(whole > 0 ? [String(whole)] : []), ...(part > 0 ? [`${part}/${of}`] : []), 'in'].join(' ');
}

/** The job file of what was answered; what was left open is left out, for the reader of the file to ask for. */
export function newJobText(job: NewJob, system: UnitSystem): string {
  const work = WORKS.find(({ id }) => id === job.work) ?? WORKS[0];
  const gauge = GAUGES.find(({ id }) => id === job.gauge) ?? GAUGES[0];
  const at = (path: string, text: string, unit?: string): string | number | undefined => {
    const field = jobFieldAt(path);
    return field === undefined ? text : typedValue(field, text, unit ?? boxUnit(field, system));
  };
  const usual = usualWidth(job, system);
  const least = at('groove.width.least', job.widthLeast);
  const widths = { least: least ?? usual.least, most: at('groove.width.most', job.widthMost) ?? usual.most };
  const document = new Document({
    furrow: 1,
    title:
      job.title.trim() === '' ? `${work.title}, ${job.length.trim()}`.replace(/, $/u, '') : job.title.trim(),
    seam: { length: at('seam.length', job.length, SEAM_UNIT[system]) },
    plate: { material: job.metal, thickness: at('plate.thickness', job.thickness) },
    groove: {
      purpose: work.purpose,
      shape: work.shape,
      depth: {
        wanted: at('groove.depth.wanted', job.depth),
        plus: at('groove.depth.plus', job.plus),
        minus: at('groove.depth.minus', job.minus),
      },
      width: widths,
      ...(work.shape === 'wash' ? { floor_width: at('groove.floor_width', floorOfWash(widths.least)) } : {}),
    },
    kit: {
      electrodes: job.electrodes.map((diameter) => ({ diameter })),
      current: { least: '100 A', most: at('kit.current.most', job.most) },
      travel:
        system === 'inch'
          ? { least: '6 in/min', most: '100 in/min' }
          : { least: '150 mm/min', most: '2500 mm/min' },
      gauge: { reading_sd: gauge.sd[system] },
    },
  });
  withoutEmpty(document);
  const taken = (path: DocumentPath, words: string): void => {
    const node = document.getIn(path, true);
    if (isCollection(node) || isScalar(node)) node.commentBefore = ` ${words}`;
  };
  if (job.widthLeast.trim() === '' && job.widthMost.trim() === '')
    taken(
      ['groove', 'width'],
      'What the electrodes at hand cut in one track; state the drawing’s own where it has one.',
    );
  taken(['kit', 'travel'], 'Usual for a carriage (common practice, no source); state your own.');
  return document.toString({ lineWidth: 0 });
}

/** The floor of a wash that must reach its depth: its least width without the flare of both walls (judgement, no source). */
function floorOfWash(least: string | number): string {
  const read = parseAmount(String(least), 'length');
  return read.ok ? `${Math.floor(inUnit(read.value * 0.8, 'mm'))} mm` : '';
}
