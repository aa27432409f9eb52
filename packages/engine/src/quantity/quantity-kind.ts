/** What an amount measures; each kind has one SI unit inside the engine. */
export type QuantityKind =
  | 'length'
  | 'speed'
  | 'pressure'
  | 'current'
  | 'voltage'
  | 'time'
  | 'angle'
  | 'area'
  | 'temperature'
  | 'air_flow'
  | 'power'
  | 'share'
  | 'volume'
  | 'resistance';

/** The units a shop reads and writes: inch or metric. */
export type UnitSystem = 'inch' | 'metric';

/** Every kind, in the order forms list them. */
export const QUANTITY_KINDS: readonly QuantityKind[] = [
  'length',
  'speed',
  'pressure',
  'current',
  'voltage',
  'time',
  'angle',
  'area',
  'temperature',
  'air_flow',
  'power',
  'share',
  'volume',
  'resistance',
];

/** How a kind is called in a sentence. */
export const KIND_NAMES: Readonly<Record<QuantityKind, string>> = {
  length: 'a length',
  speed: 'a travel speed',
  pressure: 'a pressure',
  current: 'a current',
  voltage: 'a voltage',
  time: 'a time',
  angle: 'an angle',
  area: 'an area',
  temperature: 'a temperature',
  air_flow: 'an air flow',
  power: 'a power',
  share: 'a share',
  volume: 'a volume',
  resistance: 'a resistance',
};
