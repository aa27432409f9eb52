/** Units that papers write after a number. */
const UNITS = [
  'mm/min',
  'in/min',
  'm/min',
  'mm2',
  'mm²',
  'in²',
  'mm',
  'mV',
  'mT',
  'm',
  'in',
  'ft',
  'kA',
  'A',
  'kVA',
  'V',
  'kWh',
  'kW',
  'kPa',
  'bar',
  'psi',
  'L/min',
  'scfm',
  'L',
  'gal',
  'min',
  's',
  'h',
  'kg',
  'lb',
  'HV',
  'dBA',
  'dB',
  '°C',
  '°F',
  '%',
  'K',
  'mohm',
];

const BEFORE_UNIT = new RegExp(
  `(?<=[\\d)]) (?=(?:${UNITS.map((unit) => unit.replaceAll('/', '\\/')).join('|')})(?![\\p{L}\\d]))`,
  'gu',
);
/** The space within 1 1/4. */
const WITHIN_FRACTION = /(?<=\d) (?=\d+\/\d)/gu;

/** Binds units to their numbers with spaces at which no line is broken. */
export function boundUnits(text: string): string {
  return text.replace(WITHIN_FRACTION, '\u00a0').replace(BEFORE_UNIT, '\u00a0');
}
