import {
  type DocumentPath,
  formatAmount,
  parseAmount,
  type QuantityKind,
  type UnitSystem,
} from '@furrow/engine';
import { Document, isCollection, isScalar } from 'yaml';
import { kitFieldAt } from '../../sheet/document/index.ts';
import { boxUnit, typedValue } from '../../sheet/form/index.ts';
import { withoutEmpty } from '../../sheet/questions/index.ts';

/** Where the air comes from. */
export const AIRS = [
  { id: 'compressor', title: 'A compressor with its receiver' },
  { id: 'shop', title: 'An outlet of the shop’s air' },
] as const;

/** What a torch takes, by what it is made for (common practice, no source). */
export const TORCHES = [
  { id: 'hand', electrodes: '3/8 in', flow: '28 scfm', at: '80 psi' },
  { id: 'carriage', electrodes: undefined, flow: '46 scfm', at: '80 psi' },
  { id: 'stated', electrodes: undefined, flow: '', at: '' },
] as const;

/** Where things stand: not told, or in a bay that is drawn from a few distances. */
export const PLACES = [
  { id: 'none', title: 'Not told: nothing is drawn' },
  { id: 'bay', title: 'In a bay of this size' },
] as const;

/** What a kit is asked first. Amounts stand as typed; a number alone is meant in the unit of its box. */
export interface NewKit {
  readonly title: string;
  readonly noLoad: string;
  readonly ratedCurrent: string;
  readonly ratedVoltage: string;
  readonly duty: string;
  readonly sources: string;
  readonly leadSize: string;
  readonly leadParallels: string;
  readonly electrodeLead: string;
  readonly workLead: string;
  readonly hoseSize: string;
  readonly hoseLength: string;
  readonly regulator: string;
  readonly air: (typeof AIRS)[number]['id'];
  readonly outlet: string;
  readonly delivery: string;
  readonly pressure: string;
  readonly receiver: string;
  readonly torch: (typeof TORCHES)[number]['id'];
  readonly torchFlow: string;
  readonly torchAt: string;
  readonly temperature: string;
  readonly place: (typeof PLACES)[number]['id'];
  readonly bayName: string;
  readonly bayLength: string;
  readonly bayWidth: string;
  readonly powerX: string;
  readonly powerY: string;
  readonly airX: string;
  readonly airY: string;
  readonly seamX: string;
  readonly seamY: string;
  readonly seamLength: string;
}

/** A kit as nothing is answered yet. */
export const NO_ANSWERS: NewKit = {
  title: '',
  noLoad: '',
  ratedCurrent: '',
  ratedVoltage: '',
  duty: '',
  sources: '1',
  leadSize: '',
  leadParallels: '1',
  electrodeLead: '',
  workLead: '',
  hoseSize: '',
  hoseLength: '',
  regulator: '',
  air: 'compressor',
  outlet: '',
  delivery: '',
  pressure: '',
  receiver: '',
  torch: 'carriage',
  torchFlow: '',
  torchAt: '',
  temperature: '',
  place: 'none',
  bayName: '',
  bayLength: '',
  bayWidth: '',
  powerX: '',
  powerY: '',
  airX: '',
  airY: '',
  seamX: '',
  seamY: '',
  seamLength: '',
};

/** What stands in where a question is left open, as the box shows it. */
export const USUAL = {
  title: 'Kit of the shop',
  bay: 'Bay 1',
  /** Load voltage of a rating from 600 A on (IEC 60974-1, from memory). */
  ratedVoltage: { metric: '44 V', inch: '44 V' },
  duty: { metric: '100 %', inch: '100 %' },
  regulator: { metric: '5.9 bar', inch: '85 psi' },
  receiver: { metric: '500 L', inch: '120 gal' },
  temperature: { metric: '30 °C', inch: '86 °F' },
} as const;

/** How far a compressor lets its receiver fall below what it delivers at [Pa] (common practice, no source). */
const BAND = 1.4e5;
/** Flow that an outlet of the shop's air is taken to give: more than any torch takes. */
const AMPLE = '10 m3/min';

/** Unit of the long things of a kit typed without one. */
export const LONG_UNIT: Readonly<Record<UnitSystem, string>> = { metric: 'm', inch: 'ft' };
/** Unit of the size of a lead typed without one. */
export const LEAD_UNIT: Readonly<Record<UnitSystem, string>> = { metric: 'mm2', inch: 'AWG' };

/** The kit file of what was answered; what was left open without a usual value is left out, for its reader to ask for. */
export function newKitText(kit: NewKit, system: UnitSystem): string {
  const at = (path: string, text: string, unit?: string): string | number | undefined => {
    const field = kitFieldAt(path);
    return field === undefined ? text : typedValue(field, text, unit ?? boxUnit(field, system));
  };
  const long = (path: string, text: string) => at(path, text, LONG_UNIT[system]);
  const noLoad = at('sources.*.no_load_voltage', kit.noLoad);
  const ratedCurrent = at('sources.*.rating.*.current', kit.ratedCurrent);
  const ratedVoltage = at('sources.*.rating.*.voltage', kit.ratedVoltage) ?? USUAL.ratedVoltage[system];
  const torch = TORCHES.find(({ id }) => id === kit.torch) ?? TORCHES[0];
  const lead = (name: string, side: 'electrode' | 'work', length: string) => ({
    name,
    side,
    size: at('leads.*.size', kit.leadSize, LEAD_UNIT[system]),
    parallels: at('leads.*.parallels', kit.leadParallels),
    length: long('leads.*.length', length),
  });
  const document = new Document({
    furrow_kit: 1,
    title: kit.title.trim() === '' ? USUAL.title : kit.title.trim(),
    ambient: { temperature: at('ambient.temperature', kit.temperature) },
    sources: [
      {
        name: 'Source',
        count: at('sources.*.count', kit.sources),
        characteristic: 'drooping',
        no_load_voltage: noLoad,
        slope: slopeText(noLoad, ratedVoltage, ratedCurrent),
        rating: [
          {
            current: ratedCurrent,
            voltage: ratedVoltage,
            duty: at('sources.*.rating.*.duty', kit.duty) ?? USUAL.duty[system],
          },
        ],
      },
    ],
    leads: [lead('Electrode lead', 'electrode', kit.electrodeLead), lead('Work lead', 'work', kit.workLead)],
    air: {
      ...sourceOfAir(kit, at, system),
      path: [
        {
          name: 'Regulator',
          kind: 'regulator',
          set: at('air.path.*.set', kit.regulator) ?? USUAL.regulator[system],
        },
        {
          name: 'Hose to the torch',
          kind: 'hose',
          size: at('air.path.*.size', kit.hoseSize.trim() === '' ? '' : sizeText(kit.hoseSize, system)),
          length: long('air.path.*.length', kit.hoseLength),
        },
      ],
      torch: {
        flow: at('air.torch.flow', torch.id === 'stated' ? kit.torchFlow : torch.flow),
        flow_at: at('air.torch.flow_at', torch.id === 'stated' ? kit.torchAt : torch.at),
      },
    },
    ...(kit.place === 'bay' && { bay: bayOf(kit, (text) => long('bay.power.x', text)) }),
  });
  withoutEmpty(document);
  const taken = (path: DocumentPath, words: string): void => {
    const node = document.getIn(path, true);
    if (isCollection(node) || isScalar(node)) node.commentBefore = ` ${words}`;
  };
  taken(
    ['sources', 0, 'rating'],
    'The slope is that of a straight line from no load to this rating; state the curve of the plate where it has one.',
  );
  taken(['air', 'torch'], 'Usual for such a torch (common practice, no source); state what its maker asks.');
  if (kit.air === 'shop')
    taken(
      ['air', 'compressor'],
      'The outlet is taken to hold its pressure whatever the torch takes: read it with the air flowing.',
    );
  if (kit.place === 'bay')
    taken(
      ['bay', 'workpiece'],
      'Taken around the seam: draw it as it is, with obstacles and walkways, where they matter.',
    );
  return document.toString({ lineWidth: 0 });
}

/** How far the work is taken to reach beyond the seam to each side [m] (judgement, no source). */
const AROUND_SEAM = 0.5;

/** The bay of a few distances from its front left corner, the seam along its length. */
function bayOf(kit: NewKit, long: (text: string) => string | number | undefined): unknown {
  const point = (x: unknown, y: unknown) => ({ x, y });
  const metres = (text: string): number => amountOf(long(text), 'length');
  const [x, y, length] = [metres(kit.seamX), metres(kit.seamY), metres(kit.seamLength)];
  const told = (value: number): string | undefined =>
    Number.isFinite(value) ? `${Number(value.toFixed(3))} m` : undefined;
  const [left, right] = [told(x - AROUND_SEAM), told(x + length + AROUND_SEAM)];
  const [front, back] = [told(y - AROUND_SEAM), told(y + AROUND_SEAM)];
  const [wide, deep] = [long(kit.bayLength), long(kit.bayWidth)];
  return {
    name: kit.bayName.trim() === '' ? USUAL.bay : kit.bayName.trim(),
    outline: [point('0 m', '0 m'), point(wide, '0 m'), point(wide, deep), point('0 m', deep)],
    workpiece: {
      name: 'Work',
      outline: [point(left, front), point(right, front), point(right, back), point(left, back)],
    },
    seam: [point(told(x), told(y)), point(told(x + length), told(y))],
    power: point(long(kit.powerX), long(kit.powerY)),
    air: point(long(kit.airX), long(kit.airY)),
  };
}

type At = (path: string, text: string, unit?: string) => string | number | undefined;

/** Compressor and receiver, or what stands for them where the shop's air comes out of a wall. */
function sourceOfAir(
  kit: NewKit,
  at: At,
  system: UnitSystem,
): { readonly compressor: unknown; readonly receiver: unknown } {
  const shop = kit.air === 'shop';
  const pressure = at('air.compressor.delivery.*.pressure', shop ? kit.outlet : kit.pressure);
  const held = amountOf(pressure, 'pressure');
  const bar = (pascal: number): string | undefined =>
    Number.isFinite(pascal)
      ? formatAmount(pascal, 'pressure', system, { unit: 'bar', decimals: 2 })
      : undefined;
  const volume = at('air.receiver.volume', kit.receiver) ?? USUAL.receiver[system];
  if (shop) {
    // the outlet is told at its lowest, the pressure that the compressor cuts in at
    const top = bar(held + BAND);
    return {
      compressor: { name: 'Shop air', delivery: [{ pressure: top, flow: AMPLE }] },
      receiver: { volume, cut_in: bar(held), cut_out: top },
    };
  }
  const flow = at('air.compressor.delivery.*.flow', kit.delivery);
  return {
    compressor: { name: 'Compressor', delivery: [{ pressure, flow }] },
    receiver: { volume, cut_in: bar(Math.max(held - BAND, held / 2)), cut_out: pressure },
  };
}

/** Fall of a source's voltage per hundred amperes, from no load to its rating. */
function slopeText(noLoad: unknown, rated: unknown, current: unknown): string | undefined {
  const fall = amountOf(noLoad, 'voltage') - amountOf(rated, 'voltage');
  const slope = (fall / amountOf(current, 'current')) * 100;
  return Number.isFinite(slope) && slope > 0 ? `${slope.toFixed(2)} V/100A` : undefined;
}

/** Size of a hose as the trade writes it: a number alone is millimetres or inches of bore. */
function sizeText(text: string, system: UnitSystem): string {
  return /^[\d./ -]+$/u.test(text.trim()) ? `${text.trim()} ${system === 'inch' ? 'in' : 'mm'}` : text.trim();
}

function amountOf(text: unknown, kind: QuantityKind): number {
  const read = parseAmount(String(text ?? ''), kind);
  return read.ok ? read.value : Number.NaN;
}
